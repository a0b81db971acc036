/** The island is known to be seen or not before it is fetched: by the box around all that is drawn of it. */
import { readFileSync } from 'node:fs'
import type { FeatureCollection } from 'geojson'
import { expect, test } from 'vitest'
import { showsIsland } from '#renderer/view/sketch/island-box.ts'
import { windowAround, worldPixels } from '#renderer/view/sketch/world.ts'

const island = JSON.parse(
  readFileSync(new URL(import.meta.resolve('#app/demo/island.geojson')), 'utf8'),
) as FeatureCollection

/** Every place of every feature. */
const places = island.features.flatMap(({ geometry }) => {
  if (geometry.type === 'Point') return [geometry.coordinates]
  if (geometry.type === 'LineString') return geometry.coordinates
  return geometry.type === 'Polygon' ? geometry.coordinates.flat() : []
})

test('a window on any of its features shows it, on whichever turn of the world', () => {
  expect(places.length).toBeGreaterThan(1_000)
  for (const [lon = 0, lat = 0] of places) {
    const window = windowAround({ lat, lon }, 18, 4, 4)
    expect(showsIsland(window)).toBe(true)
    expect(showsIsland({ ...window, left: window.left + worldPixels(18) })).toBe(true)
  }
})

test('one that is far enough off all of them shows none', () => {
  const [lons, lats] = [places.map(([lon = 0]) => lon), places.map(([, lat = 0]) => lat)]
  const [west, north] = [Math.min(...lons), Math.max(...lats)]
  const beside = (off: number): boolean => {
    const { left, ...window } = windowAround({ lat: 46.4, lon: west }, 14, 0, 0)
    return showsIsland({ ...window, left: left - off })
  }
  // Its waters are drawn 60 pixels out.
  expect([beside(59), beside(61)]).toEqual([true, false])
  expect(showsIsland(windowAround({ lat: north + 0.1, lon: -33.6 }, 14, 400, 400))).toBe(false)
  expect(showsIsland(windowAround({ lat: 46.9, lon: 10.9 }, 12, 400, 400))).toBe(false)
})

test('seen from too far it is not painted', () => {
  const at = { lat: 46.4, lon: -33.6 }
  expect([7.5, 8].map((zoom) => showsIsland(windowAround(at, zoom, 400, 400)))).toEqual([false, true])
})
