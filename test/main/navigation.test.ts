/** The list of credited sites holds exactly what the program credits. */
import { expect, test } from 'vitest'
import { DEFAULT_SETTINGS } from '#app/contract/default-settings.ts'
import { CREDITED_SITES, mayOpenOutside } from '#main/navigation.ts'
import { webTileSource } from '#main/ground/web-tiles.ts'
import { tileSourcesOf } from '#main/tiles/source.ts'

test('every attribution of a built-in tile source can be followed', () => {
  const sources = [...tileSourcesOf(DEFAULT_SETTINGS), webTileSource(DEFAULT_SETTINGS.elevationTiles)]
  const links = sources.map((source) => source.attributionLink)
  expect(links.length).toBeGreaterThan(3)
  expect(links.filter((link) => !mayOpenOutside(link))).toEqual([])
})

test('sites are exact https origins', () => {
  for (const site of CREDITED_SITES) expect(new URL(site).origin).toBe(site)
  expect(CREDITED_SITES.filter((site) => !site.startsWith('https://'))).toEqual([])
})
