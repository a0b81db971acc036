/** On the board's map stand the makers of what its window shows: the island where it is, elevations where the ground is shaded. */
import { put } from '#test/help/put.ts'
import { signal } from '@preact/signals'
import { beforeEach, expect, test, vi } from 'vitest'
import type { WindowPart } from '#app/contract/ground.ts'
import { destination } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { groundOf } from '#test/help/terrain.ts'

const drawnGrid = signal<ElevationGrid | null>(null)
const terrainSource = signal<{ readonly sources: readonly WindowPart[] } | null>(null)
vi.stubGlobal('matchMedia', () => Object.assign(new EventTarget(), { matches: false }))
vi.mock('#renderer/host/host.ts', () => ({ ask: () => Promise.resolve({ ok: false, fault: { message: 'nobody' } }) }))
vi.mock('#renderer/state/plan/terrain.ts', () => ({ terrainSource }))
vi.mock('#renderer/view/ground/shown-relief.ts', () => ({ drawnGrid }))

const { attribution } = await import('#renderer/view/map/base-shown.ts')
const { tellMapLook } = await import('#renderer/view/drawing/map-look.ts')
const { settings } = await import('#renderer/state/library/settings.ts')
const { GROUND_MAP } = await import('#renderer/state/session/ground-overlay.ts')
const { SKETCH_MAP } = await import('#renderer/state/session/map-source.ts')
const { windowAround } = await import('#renderer/view/sketch/world.ts')

const ISLAND = { lat: 46.4, lon: -33.6 }
const VALLEY = { lat: 46.9, lon: 10.9 }
const SURVEY: WindowPart = { id: 'web', name: 'Tiles', resolution: 10, share: 1, attribution: 'Survey of the valley' }

function lookAt(at: LatLon, zoom = 14): void {
  const { left, top, width, height } = windowAround(at, zoom, 800, 600)
  tellMapLook({
    zoom,
    originX: left,
    originY: top,
    middleLon: at.lon,
    box: { left: 0, top: 0, right: width, bottom: height },
  })
}

function show(mapSource: string, ground: LatLon | null, part = SURVEY): void {
  put(settings, { ...settings.peek(), mapSource })
  drawnGrid.value = ground === null ? null : groundOf(101, 20, () => 100, ground)
  terrainSource.value = ground === null ? null : { sources: [part] }
}

/** The first words of each. */
function named(): string[] {
  return attribution.value.map(({ text }) => text.split(/[: ]/u)[0] ?? '')
}

beforeEach(() => lookAt(VALLEY))

test('away from the island, without elevations, only the coasts’', () => {
  show(SKETCH_MAP, null)
  expect(named()).toEqual(['Coast'])
})

test('on the island the island’s, once', () => {
  show(SKETCH_MAP, ISLAND, { ...SURVEY, id: 'demo' })
  lookAt(ISLAND)
  expect(named()).toEqual(['Orlavay', 'Coast'])
})

test('where the ground is shaded the elevations’, as long as any of it is in sight', () => {
  for (const source of [SKETCH_MAP, GROUND_MAP]) {
    show(source, VALLEY)
    lookAt(VALLEY)
    expect(named()).toEqual(['Survey', 'Coast'])
    lookAt({ ...VALLEY, lat: VALLEY.lat + 1 })
    expect(named()).toEqual(['Coast'])
    lookAt(VALLEY, 7)
    expect(named()).toEqual(['Coast'])
  }
})

test('where the ground lies just outside the window, not', () => {
  show(GROUND_MAP, VALLEY)
  // The ground is 2 km across, the window 800 pixels: so many metres east of the ground's edge its own edge lies.
  const half = (400 * 40_075_017 * Math.cos((VALLEY.lat * Math.PI) / 180)) / (256 * 2 ** 14)
  const lookBeside = (metres: number): void => lookAt(destination(VALLEY, 90, 1_010 + half + metres))
  lookBeside(-100)
  expect(named()).toEqual(['Survey', 'Coast'])
  lookBeside(100)
  expect(named()).toEqual(['Coast'])
})

test('the island that comes into sight from another place’s shoot is named, but not on the map of the ground alone', () => {
  show(SKETCH_MAP, VALLEY)
  lookAt(ISLAND)
  expect(named()).toEqual(['Orlavay', 'Coast'])
  show(GROUND_MAP, VALLEY)
  expect(named()).toEqual(['Coast'])
})
