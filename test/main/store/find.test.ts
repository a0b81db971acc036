/** Spots are found by parts of words in any script and by boxes on the globe; what is typed is never a query language. */
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Change } from '#app/contract/library.ts'
import type { Bounds } from '#core/geo/bounds.ts'
import { fold } from '#main/store/search-text.ts'
import { removed, saved, shootRecord, type SpotRecord, spotRecord } from '#test/help/library-records.ts'
import { openedLibrary, valueOf } from '#test/help/open-library.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'

type Found = { ids: string[]; total: number; more: boolean }
type Find = (words: string, within?: Bounds | null, limit?: number) => Promise<Found>

async function library(spots: readonly SpotRecord[], shootName = 'Autumn'): Promise<{ find: Find; apply: Apply }> {
  const { handlers } = await openedLibrary(temporaryFolder())
  const apply: Apply = async (changes) => {
    valueOf(await handlers['library.apply']({ changes }))
  }
  await apply([saved(shootRecord('a', { name: shootName })), ...spots.map((spot) => saved(spot))])
  const find: Find = async (words, within = null, limit = 500) => {
    const found = valueOf(await handlers['library.find']({ words, within, limit }))
    return { ...found, ids: found.spots.map(({ id }) => id) }
  }
  return { find, apply }
}
type Apply = (changes: Change[]) => Promise<void>

function named(id: string, name: string, parts: Partial<SpotRecord> = {}): SpotRecord {
  return spotRecord(id, 'a', { name, ...parts })
}

describe('words', () => {
  test.each([
    ['a part of a word', 'Alter Leuchtturmweg', 'turm'],
    ['two letters', 'Leuchtturm', 'rm'],
    ['one letter', 'Xanten', 'x'],
    ['another case', 'LIGHTHOUSE', 'lightHouse'],
    ['ss for ß', 'Große Straße', 'strasse'],
    ['ß for ss', 'Strasse am Fluss', 'Fluß'],
    ['capital ß', 'STRAẞE', 'straße'],
    ['without the accent', 'Café Évian', 'cafe evian'],
    ['with an accent that is stored bare', 'Cafe', 'café'],
    ['an accent written as two characters', 'Caf\u0065\u0301', 'caf\u00e9'],
    ['letters that nothing decomposes', 'Øresund Łódź æble', 'oresund lodz aeble'],
    ['full-width letters', 'Ｂｒｉｄｇｅ １２', 'bridge 12'],
    ['one character of a script without spaces', '東京大橋の下', '橋'],
    ['two characters of it', '東京大橋の下', '大橋'],
    ['three characters of it', '東京大橋の下', '京大橋'],
    ['Korean inside a word', '한강다리에서', '다리'],
    ['Thai inside a line', 'สะพานพระราม', 'พาน'],
    ['Cyrillic', 'Старый Мост', 'мост'],
    ['Greek with another sigma', 'ΓΕΦΥΡΟΣ', 'γεφυρος'],
    ['Hebrew without points', 'גֶּשֶׁר', 'גשר'],
    ['an emoji beside a word', 'Sunset🌉bay', '🌉'],
    ['several words in any order', 'Old pier by the harbour', 'harb pier'],
    ['a hyphen', 'Zugspitze-Süd', 'Zugspitze-Süd'],
    ['a hyphen left out', 'Zugspitze-Süd', 'sud zugspitze'],
    ['an apostrophe', 'O’Brien’s yard', "O'Brien"],
    ['a number', 'Pier 39', '39'],
    ['a word of the query language', 'Sand and near not or', 'AND NOT NEAR OR'],
    ['an address', 'see https://example.org/a_b?c=1', 'example.org/a_b'],
  ])('finds %s', async (_, name, typed) => {
    const { find } = await library([named('it', name), named('other', 'ZZZ')])
    expect((await find(typed)).ids).toEqual(['it'])
  })

  test.each([
    ['one of two words', 'Old pier', 'pier harbour'],
    ['the words of an apostrophe apart', 'Brien and O', "O'Brien"],
    ['characters that stand apart', '大きい橋', '大橋'],
    ['a piece that runs across two fields', 'O', "O'Autumn"],
  ])('does not find %s', async (_, name, typed) => {
    const { find } = await library([named('it', name)], 'Autumn')
    expect((await find(typed)).ids).toEqual([])
  })

  // P77: all of these throw when handed to FTS5 as they stand.
  test.each([
    '"',
    'AND',
    'NEAR(',
    '*',
    'name:x',
    "'",
    '(',
    '-',
    '^a',
    '\\',
    '%',
    '{x} : y',
    '""" OR 1',
    '\u0000',
    'a"b',
  ])('answers %j without an error', async (typed) => {
    const { find } = await library([named('it', 'Old pier')])
    const { total } = await find(typed)
    expect(total === 0 || total === 1).toBe(true)
  })

  test('answers anything at all without an error, and finds a spot by any piece of its name', async () => {
    const { find, apply } = await library([])
    let count = 0
    await fc.assert(
      fc.asyncProperty(
        fc.string({ unit: 'grapheme', maxLength: 40 }),
        fc.nat(),
        fc.nat(),
        async (name, from, length) => {
          count += 1
          await apply([saved(named(`s${count}`, name))])
          await find(name.slice(0, 1_000))
          // A letter and its marks are one: a piece of a name never parts them.
          const letters: readonly string[] = fold(name).match(/\P{M}\p{M}*|\p{M}+/gu) ?? []
          const piece = letters.slice(from % 10, (from % 10) + (length % 12)).join('')
          if (piece.trim() !== '') expect((await find(piece)).ids).toContain(`s${count}`)
        },
      ),
      { numRuns: 150 },
    )
    expect(count).toBeGreaterThan(100)
  })

  test('looks in name, notes, whom, surface, hazard note and the name of the shoot', async () => {
    const base = named('it', 'first')
    const { find } = await library(
      [
        {
          ...base,
          notes: 'second',
          hazardNote: 'third',
          permission: { ...base.permission, whom: 'fourth' },
          access: { ...base.access, surface: 'fifth' },
        },
      ],
      'sixth',
    )
    for (const word of ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'first sixth third']) {
      expect((await find(word)).ids, word).toEqual(['it'])
    }
  })

  test('follows a renamed shoot, a changed note, a spot moved to another shoot and a delete', async () => {
    const { find, apply } = await library([named('it', 'Pier', { notes: 'granite' })], 'Autumn')
    await apply([saved(shootRecord('a', { name: 'Winter' }), 1), saved(shootRecord('b', { name: 'Spring' }))])
    expect([(await find('autumn')).total, (await find('winter')).total]).toEqual([0, 1])
    await apply([saved(named('it', 'Pier', { notes: 'basalt' }), 1)])
    expect([(await find('granite')).total, (await find('basalt')).total]).toEqual([0, 1])
    await apply([saved({ ...named('it', 'Pier'), shootId: 'b' }, 2)])
    expect([(await find('winter')).total, (await find('spring')).total]).toEqual([0, 1])
    await apply([removed('spot', 'it', 3)])
    expect((await find('pier')).total).toBe(0)
  })

  test('puts hits in the name before hits in the notes, newest first', async () => {
    const { find } = await library([named('a', 'Quarry'), named('b', 'x', { notes: 'quarry' }), named('c', 'Quarry')])
    expect((await find('quarry')).ids).toEqual(['c', 'a', 'b'])
  })

  test('finds by a part that stands in more words than are asked for singly', async () => {
    const spots = Array.from({ length: 450 }, (_, count) => named(`s${count}`, `${count}bridge${count}`))
    const { find } = await library(spots)
    expect((await find('bridge')).total).toBe(450)
    expect((await find('bridge 17')).total).toBe(spots.filter(({ name }) => name.includes('17')).length)
  })

  test('all there is, when nothing is typed; nothing, when nothing of it can be sought', async () => {
    const { find } = await library([named('a', 'x'), named('b', 'y')])
    expect(await find('  ')).toMatchObject({ ids: ['b', 'a'], total: 2, more: false })
    expect(await find('', null, 1)).toMatchObject({ ids: ['b'], total: 2, more: true })
    expect(await find('"')).toMatchObject({ ids: [], total: 0 })
  })
})

describe('boxes', () => {
  const at = (id: string, lat: number, lon: number, name = 'x'): SpotRecord =>
    spotRecord(id, 'a', { name, at: { lat, lon } })

  test.each<[string, Bounds, string[]]>([
    ['inside', { south: -10, north: 10, west: 0, east: 20 }, ['in']],
    ['across the antimeridian', { south: -20, north: -10, west: 170, east: -170 }, ['fiji-east', 'fiji-west']],
    ['up to 180 from the west', { south: -20, north: -10, west: 170, east: 180 }, ['fiji-west']],
    ['the meridian itself from the west', { south: 0, north: 5, west: 170, east: 180 }, ['meridian']],
    ['the meridian itself from the east', { south: 0, north: 5, west: -180, east: -170 }, ['meridian']],
    [
      'the whole globe',
      { south: -90, north: 90, west: -180, east: 180 },
      ['pole', 'meridian', 'fiji-east', 'fiji-west', 'in'],
    ],
    ['a box of no size, at a spot', { south: 5, north: 5, west: 10, east: 10 }, ['in']],
    ['a pole', { south: 89, north: 90, west: -180, east: 180 }, ['pole']],
  ])('finds what lies %s', async (_, within, ids) => {
    const { find } = await library([
      at('in', 5, 10),
      at('fiji-west', -17, 178),
      at('fiji-east', -17, -179),
      at('meridian', 2, -180),
      at('pole', 90, 33),
    ])
    expect((await find('', within)).ids).toEqual(ids)
    expect((await find('x', within)).ids).toEqual(ids)
    expect((await find('y', within)).ids).toEqual([])
  })

  test('is exact to the last decimal, though the tree rounds to 32 bits', async () => {
    const { find } = await library([at('just-west', 50, 8.000_000_1), at('just-east', 50, 8.000_000_3)])
    expect((await find('', { south: 49, north: 51, west: 8.000_000_2, east: 9 })).ids).toEqual(['just-east'])
  })

  test('follows a spot that moves', async () => {
    const { find, apply } = await library([at('s', 5, 10)])
    await apply([saved(at('s', -40, 100), 1)])
    expect((await find('', { south: 0, north: 10, west: 0, east: 20 })).ids).toEqual([])
    expect((await find('', { south: -41, north: -39, west: 99, east: 101 })).ids).toEqual(['s'])
  })

  test('refuses south above north with a sentence', async () => {
    const { handlers } = await openedLibrary(temporaryFolder())
    const answer = await handlers['library.find']({
      words: '',
      within: { south: 2, north: 1, west: 0, east: 1 },
      limit: 9,
    })
    expect(answer).toMatchObject({ ok: false, fault: { reason: 'invalid' } })
  })

  test('agrees with looking at every spot, whichever way in is taken', async () => {
    const spots = Array.from({ length: 300 }, (_, n) =>
      at(
        `s${n}`,
        ((n * 37) % 181) - 90,
        ((n * 73) % 360) - 180,
        n % 3 === 0 ? `mill ${n}` : n % 50 === 1 ? 'weir' : 'x',
      ),
    )
    const { find } = await library(spots)
    const box = fc.record({
      south: fc.integer({ min: -90, max: 90 }),
      tall: fc.nat(180),
      west: fc.integer({ min: -180, max: 180 }),
      east: fc.integer({ min: -180, max: 180 }),
    })
    const holds = (west: number, east: number, lon: number): boolean =>
      west <= east ? lon >= west && lon <= east : lon >= west || lon <= east
    await fc.assert(
      fc.asyncProperty(box, fc.constantFrom('', 'mill', 'weir', 'mi', '1', 'mill 12'), async (bounds, words) => {
        const { south, west, east } = bounds
        const north = Math.min(90, south + bounds.tall)
        const expected = spots.filter(({ stop, name }) => {
          const { lat, lon } = stop.at
          const inside = holds(west, east, lon) || (lon === -180 && holds(west, east, 180))
          return lat >= south && lat <= north && inside && words.split(' ').every((word) => name.includes(word))
        })
        const found = await find(words, { south, north, west, east })
        expect(found.ids.toSorted()).toEqual(expected.map(({ id }) => id).toSorted())
        expect(found.total).toBe(expected.length)
      }),
      { numRuns: 200 },
    )
  })
})

test('counts no further than 10,000 and says that there is more', async () => {
  const { handlers } = await openedLibrary(temporaryFolder())
  const spots = Array.from({ length: 10_050 }, (_, n) => spotRecord(`s${n}`, 'a', { name: `Pier ${n}` }))
  valueOf(await handlers['library.apply']({ changes: [saved(shootRecord('a')), ...spots.map((spot) => saved(spot))] }))
  const globe = { south: -90, north: 90, west: -180, east: 180 }
  for (const [words, within] of [
    ['', null],
    ['', globe],
    ['pier', null],
    ['pier', globe],
    ['p', null],
  ] as const) {
    const { total, more, spots: shown } = valueOf(await handlers['library.find']({ words, within, limit: 5 }))
    expect([words, total, more, shown.length]).toEqual([words, 10_000, true, 5])
  }
})
