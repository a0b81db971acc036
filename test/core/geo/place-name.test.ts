/** Names as searched for, and the list of towns as written and read. */
import { describe, expect, it } from 'vitest'
import { foldPlaceName, foldWrittenOut } from '#core/geo/place-name.ts'
import { readTownList, townAt, writeTownList } from '#core/geo/town-list.ts'

describe('folding', () => {
  it.each([
    ['Gießen', 'giessen'],
    ['GIESSEN', 'giessen'],
    ['ẞtadt', 'sstadt'],
    ['São Paulo', 'sao paulo'],
    ['Łódź', 'lodz'],
    ['Tromsø', 'tromso'],
    ['İstanbul', 'istanbul'],
    ['Saint John’s', 'saint johns'],
    ["Saint John's", 'saint johns'],
    ['Stratford-upon-Avon', 'stratford upon avon'],
    ['  Two   Words ', 'two words'],
    ['東京', '東京'],
    ['Ｔｏｋｙｏ', 'tokyo'],
    ['";--', ''],
    ['', ''],
  ])('%s is %s', (name, folded) => {
    expect(foldPlaceName(name)).toBe(folded)
  })

  it('writes umlauts out where there are any', () => {
    expect(foldWrittenOut('Köln')).toBe('koeln')
    expect(foldWrittenOut('Tromsø')).toBe('tromsoe')
    expect(foldWrittenOut('Łódź')).toBeNull()
    expect(foldWrittenOut('Cologne')).toBeNull()
  })
})

describe('the list of towns', () => {
  const towns = [
    { name: 'Little\tTown', country: 'DE', admin: '', population: 1000, lat: 50.1, lon: 10.2, otherNames: [] },
    {
      name: 'Großstadt',
      country: 'DE',
      admin: 'BE',
      population: 2_000_000,
      lat: -50.1,
      lon: -10.2,
      otherNames: ['Metropolis'],
    },
  ]
  const text = writeTownList(towns)

  it('puts the largest first and gives every field back', () => {
    const list = readTownList(text)
    if (list === null) throw new Error('not read')
    expect(list.spellings).toBe('\tgrossstadt\tmetropolis\t\n\tlittle town\t\n')
    expect(townAt(list.details, list.detailStarts[0] ?? 0)).toEqual({
      name: 'Großstadt',
      country: 'DE',
      admin: 'BE',
      population: 2_000_000,
      lat: -50.1,
      lon: -10.2,
    })
    expect(townAt(list.details, list.detailStarts[1] ?? 0).name).toBe('Little Town')
  })

  it.each([
    ['empty', ''],
    ['something else', 'hello\n'],
    ['another version', text.replace('towns 1', 'towns 2')],
    ['cut short', text.slice(0, -20)],
    ['cut at a line', text.slice(0, text.lastIndexOf('Little'))],
    ['without its second half', text.slice(0, text.indexOf('\f'))],
  ])('is refused when %s', (_name, damaged) => {
    expect(readTownList(damaged)).toBeNull()
  })
})
