/** The order in which towns are found. */
import { describe, expect, it } from 'vitest'
import { readTownList, writeTownList } from '#core/geo/town-list.ts'
import { indexTowns } from '#main/places/town-index.ts'

function town(
  name: string,
  population: number,
  country = 'GB',
  admin = '',
): Parameters<typeof writeTownList>[0][number] {
  return { name, country, admin, population, lat: 50, lon: population / 1e6, otherNames: [] }
}

const list = readTownList(
  writeTownList([
    town('Oberwick', 900_000),
    town('Wickford', 30_000),
    town('Wick', 7000),
    town('Wickham', 80_000),
    town('New Wick', 500_000),
    town('Wick', 9000, 'US', 'AL'),
    town('Wick-am-Damm', 2000, 'DE'),
    town('Elsewhere', 1_000_000),
  ]),
)
if (list === null) throw new Error('the list was not read')
const index = indexTowns(list)
const names = (text: string, limit = 50): string[] => index.find(text, limit).map((found) => found.name)

describe('the order of towns', () => {
  it('is whole names, beginnings, later words, parts, and in each the largest first', () => {
    expect(index.find('wick', 50).map((found) => [found.name, found.population])).toEqual([
      ['Wick', 9000],
      ['Wick', 7000],
      ['Wickham', 80_000],
      ['Wickford', 30_000],
      ['Wick-am-Damm', 2000],
      ['New Wick', 500_000],
      ['Oberwick', 900_000],
    ])
  })

  it('keeps to the limit', () => {
    expect(names('wick', 3)).toEqual(['Wick', 'Wick', 'Wickham'])
  })

  it('takes hyphens and spaces alike', () => {
    expect(names('wick am')).toEqual(['Wick-am-Damm'])
    expect(names('am-damm')).toEqual(['Wick-am-Damm'])
  })

  it('never joins two towns, or a name and a border between names', () => {
    expect(names('wick wickford')).toEqual([])
    expect(names('wick\twickford')).toEqual([])
    expect(names('wick\nelsewhere')).toEqual([])
  })

  it('narrows by the region after a comma', () => {
    expect(names('wick, al')).toEqual(['Wick'])
    expect(index.find('wick, united kingdom', 50).every((found) => found.country === 'United Kingdom')).toBe(true)
    expect(names('wick, united')).toHaveLength(6)
    expect(names('wick, us, al')).toEqual(['Wick'])
    expect(names('wick,')).toHaveLength(7)
  })
})
