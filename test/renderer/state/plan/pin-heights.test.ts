/** Heights at the board's places: asked for once things rest, never while one is dragged, kept by place, forgotten with the sources. */
import { eventually } from '#test/help/eventually.ts'
import { put } from '#test/help/put.ts'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { destination } from '#core/geo/geodesic.ts'
import type { Spot } from '#core/record/spot.ts'
import { examplePlan } from '#test/help/plans.ts'

let asked: LatLon[][] = []
let answers = true
let trouble: string | null = null

vi.mock('#renderer/host/host.ts', () => ({
  ask: async (name: string, input: { places: LatLon[] }) => {
    if (name !== 'ground.heights') return { ok: false, fault: { reason: 'none', message: '' } }
    asked.push(input.places)
    if (!answers) return { ok: false, fault: { reason: 'no-host', message: 'nobody answers' } }
    const heights = input.places.map(({ lat }) =>
      lat > 80 || trouble !== null ? null : { height: lat * 10, source: 'Hills', resolution: 30, sea: false },
    )
    return { ok: true, value: { heights, trouble } }
  },
  readBytes: async () => ({ ok: false, fault: { reason: 'none', message: '' } }),
}))

const { shoot, spot } = examplePlan()
const PLACES = 3

async function session() {
  vi.resetModules()
  const pins = await import('#renderer/state/plan/pin-heights.ts')
  const library = await import('#renderer/state/library/library.ts')
  const { groundChanged } = await import('#renderer/host/ground-windows.ts')
  put(library.shoot, shoot)
  put(library.spots, [spot])
  put(library.spotId, spot.id)
  pins.followPins()
  return { ...pins, ...library, groundChanged }
}

/** All that was asked has been answered. */
async function answered(): Promise<void> {
  await eventually(() => Promise.resolve())
  await Promise.resolve()
}

function standing(at: LatLon): Spot {
  return { ...spot, standpoint: { ...spot.standpoint, at } }
}

beforeEach(() => {
  asked = []
  answers = true
  trouble = null
})

describe('the board’s places', () => {
  test('are asked for together, once, and told with their source', async () => {
    const page = await session()
    await answered()
    expect(asked.map(({ length }) => length)).toEqual([PLACES])
    expect(page.boardPins.value).toHaveLength(PLACES)
    expect(page.boardPins.value[0]).toEqual({
      at: spot.standpoint.at,
      height: spot.standpoint.at.lat * 10,
      step: 30,
      source: 'Hills',
      sea: false,
    })
    put(page.spots, [{ ...spot, notes: 'another word' }])
    await answered()
    expect(asked).toHaveLength(1)
  })

  test('are not asked for while a thing is dragged; those of before stay beside it, the same object', async () => {
    const page = await session()
    await answered()
    const before = page.boardPins.value
    for (let step = 1; step < 20; step++) {
      put(page.liveSpot, standing(destination(spot.standpoint.at, 90, step)))
      expect(new Set(page.boardPins.value)).toEqual(new Set(before))
      if (step > 1) expect(page.boardPins.value).toBe(page.boardPins.peek())
    }
    await answered()
    expect(asked).toHaveLength(1)
  })

  test('where a thing comes to rest is asked for then alone; until the answer those of before stay', async () => {
    const page = await session()
    await answered()
    expect(page.boardPins.value).toHaveLength(PLACES)
    const there = destination(spot.standpoint.at, 90, 40)
    put(page.liveSpot, standing(there))
    put(page.liveSpot, null)
    put(page.spots, [standing(there)])
    expect(page.boardPins.value).toHaveLength(PLACES)
    await answered()
    expect(asked[1]).toEqual([there])
    expect(page.boardPins.value.map(({ at }) => at)).toContainEqual(there)
    expect(page.boardPins.value).toHaveLength(PLACES)
  })

  test('are asked for again when the sources change, and an answer of the old ones counts for nothing', async () => {
    const page = await session()
    page.groundChanged()
    await answered()
    expect(asked.map(({ length }) => length)).toEqual([PLACES, PLACES])
    expect(page.boardPins.value).toHaveLength(PLACES)
  })

  test('that nobody answers for are given up until the sources change', async () => {
    answers = false
    const page = await session()
    await answered()
    expect(page.boardPins.value).toEqual([])
    expect(page.pinsFor(page.pinPlaces(shoot, spot)).settled).toBe(true)
    expect(asked).toHaveLength(1)
    answers = true
    trouble = 'a tile could not be had'
    page.groundChanged()
    await answered()
    expect(page.boardPins.value).toEqual([])
    trouble = null
    page.groundChanged()
    await answered()
    expect(page.boardPins.value).toHaveLength(PLACES)
  })
})

test('a place that no source knows is answered for, without a height', async () => {
  const page = await session()
  const pole = [{ lat: 85, lon: 0 }]
  expect(page.pinsFor(pole)).toEqual({ pins: [], settled: false })
  await answered()
  expect(page.pinsFor(pole)).toEqual({ pins: [], settled: true })
})
