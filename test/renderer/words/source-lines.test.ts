/** A source stands in lists and credits by its name and by what it is: neither says again what the other has said. */
import { expect, test } from 'vitest'
import { DEFAULT_SETTINGS } from '#app/contract/default-settings.ts'
import { webTileSource } from '#main/ground/web-tiles.ts'
import { groundMapWords } from '#renderer/words/en-ground-map.ts'
import { groundSourceWords } from '#renderer/words/en-ground-sources.ts'

const { kinds } = groundSourceWords

/** Words that stand in a line more than once. */
function twice(line: string): string[] {
  const words = line.toLowerCase().match(/\p{L}{3,}/gu) ?? []
  return words.filter((word, at) => words.findIndex((other) => other.startsWith(word) || word.startsWith(other)) < at)
}

const tiles = webTileSource(DEFAULT_SETTINGS.elevationTiles).name

test.each([
  `${tiles} ${kinds.tiles}`,
  `N46W034.hgt ${kinds.hgt}`,
  `valley.tif ${kinds.geotiff}`,
  `Demo island ${kinds.demo}`,
  groundMapWords.elevationsFrom(tiles),
])('%s', (line) => {
  expect(twice(line)).toEqual([])
})
