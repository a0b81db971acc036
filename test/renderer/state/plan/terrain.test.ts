/** The ground around the board: fine windows first, wide ones together, none beyond where nothing lies, those left behind given up. */
import { eventually } from '#test/help/eventually.ts'
import { put } from '#test/help/put.ts'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { destination } from '#core/geo/geodesic.ts'
import { GROUND_REACH, ringsOf } from '#core/ground/rings.ts'
import type { GroundWindowFound } from '#renderer/host/ground-windows.ts'
import { examplePlan } from '#test/help/plans.ts'

interface Asked {
  readonly cell: number
  readonly reach: number
  readonly signal: AbortSignal
  readonly answer: (told?: Partial<GroundWindowFound>) => void
}

let asked: Asked[] = []
let leave = (): void => undefined

vi.mock('#renderer/host/host.ts', () => ({
  ask: async () => ({ ok: false, fault: { reason: 'none', message: '' } }),
}))

vi.mock('#renderer/host/ground-windows.ts', async () => {
  const { signal } = await import('@preact/signals')
  const groundVersion = signal(0)
  return {
    groundVersion,
    groundChanged: () => (groundVersion.value += 1),
    fetchWindow: (
      centre: LatLon,
      cell: number,
      half: number,
      wanted: AbortSignal,
      on: { east: number; north: number },
    ) =>
      new Promise((resolve) => {
        const [columns, rows] = [3, 3]
        const wide = half * cell
        const grid = {
          centre,
          cell: wide,
          columns,
          rows,
          west: on.east - wide,
          north: on.north + wide,
          heights: new Float32Array(9).fill(cell),
          step: cell,
          sea: false,
        }
        const found = {
          grid,
          sources: [],
          resolution: cell,
          known: 1,
          sea: 0,
          whole: false,
          seaBeyond: false,
          trouble: null,
        }
        const answer = (told = {}): void => resolve({ ok: true, value: { ...found, ...told } })
        asked.push({ cell, reach: wide, signal: wanted, answer })
      }),
  }
})

const { shoot, spot } = examplePlan()

async function session() {
  vi.resetModules()
  const terrain = await import('#renderer/state/plan/terrain.ts')
  const library = await import('#renderer/state/library/library.ts')
  put(library.shoot, shoot)
  put(library.spots, [spot])
  put(library.spotId, spot.id)
  terrain.followTerrain()
  // Its effects live on: with no spot they ask for nothing.
  leave = () => put(library.spots, [])
  const cells = (): number[] => {
    const grid = terrain.terrain.value
    return grid === null ? [] : ringsOf(grid).map(({ heights }) => heights[0] ?? 0)
  }
  const moveTo = (at: LatLon): void => put(library.spots, [{ ...spot, stop: { ...spot.stop, at } }])
  return { ...terrain, cells, moveTo }
}

/** So many windows have been asked for. */
async function soMany(count: number): Promise<void> {
  await eventually(() => {
    if (asked.length < count) throw new Error(`${asked.length} asked`)
  })
}

/** Whatever was going on without a clock is over. */
async function calm(): Promise<void> {
  for (let turn = 0; turn < 20; turn++) await Promise.resolve()
}

beforeEach(() => {
  asked = []
  vi.useFakeTimers()
  return () => {
    leave()
    vi.useRealTimers()
  }
})

describe('the ground around a stop', () => {
  test('is asked for finely near by, then coarsely out to its reach, one wide window after the other', async () => {
    await session()
    await soMany(2)
    expect(asked.map(({ cell }) => cell)).toEqual([6, 18])
    for (const one of asked) one.answer()
    await soMany(3)
    expect(asked[2]?.cell).toBe(60)
    asked[2]?.answer()
    await soMany(4)
    expect(asked[3]?.reach).toBeGreaterThan(GROUND_REACH)
  })

  test('is shown as soon as its fine windows are there, and once more when both wide ones are', async () => {
    const { cells, boardGround } = await session()
    await soMany(2)
    asked[0]?.answer()
    asked[1]?.answer()
    await soMany(3)
    expect(cells()).toEqual([6, 18])
    asked[2]?.answer()
    await soMany(4)
    expect(cells()).toEqual([6, 18])
    asked[3]?.answer()
    await calm()
    expect(cells()).toEqual([6, 18, 60, 200])
    expect(boardGround.value.settled).toBe(true)
  })

  test('does not wait for a window that takes its time', async () => {
    const { cells } = await session()
    await soMany(2)
    asked[1]?.answer()
    await calm()
    vi.advanceTimersByTime(500)
    expect(cells()).toEqual([18])
    asked[0]?.answer()
    await soMany(3)
    expect(cells()).toEqual([6, 18])
    asked[2]?.answer()
    await calm()
    vi.advanceTimersByTime(5_000)
    expect(cells()).toEqual([6, 18, 60])
  })

  test('ends where the sources end: of a window that is the whole nothing wider is asked for', async () => {
    const { cells, boardGround } = await session()
    await soMany(2)
    asked[0]?.answer()
    asked[1]?.answer({ whole: true })
    await calm()
    vi.advanceTimersByTime(5_000)
    await calm()
    expect(asked).toHaveLength(2)
    expect(cells()).toEqual([6, 18])
    expect(boardGround.value.settled).toBe(true)
  })

  test('goes on as the sea where all around its whole is open sea', async () => {
    const { cells, terrain } = await session()
    await soMany(2)
    asked[0]?.answer()
    asked[1]?.answer({ whole: true, seaBeyond: true })
    await calm()
    expect(cells()).toEqual([6, 18, 0])
    const last = terrain.value === null ? undefined : ringsOf(terrain.value).at(-1)
    expect(last === undefined ? 0 : last.west).toBeLessThan(-GROUND_REACH)
    expect(last?.heights.every((height) => height === 0)).toBe(true)
  })

  test('that was left for another place is given up; what serves there is kept', async () => {
    const { moveTo, cells } = await session()
    await soMany(2)
    for (const one of asked) one.answer()
    await soMany(3)
    asked[2]?.answer()
    await soMany(4)
    moveTo(destination(spot.stop.at, 90, 60_000))
    await soMany(6)
    expect(asked[3]?.signal.aborted).toBe(true)
    expect(asked.slice(4).some(({ signal }) => signal.aborted)).toBe(false)
    moveTo(spot.stop.at)
    await calm()
    expect(cells().slice(0, 2)).toEqual([6, 18])
  })

  test('is asked for again when the sources change, also before anything has come', async () => {
    const { askTerrainAgain } = await session()
    await soMany(2)
    askTerrainAgain()
    await soMany(4)
    expect(asked.map(({ signal }) => signal.aborted)).toEqual([true, true, false, false])
  })

  test('stays at hand for the board and four spots side by side, far from each other: none drives out another', async () => {
    const { groundFor, boardGround } = await session()
    const places = [1, 2, 3, 4].map((step) => destination(spot.stop.at, 90, step * 40_000))
    const settle = async (): Promise<void> => {
      for (let round = 0; round < 60; round++) {
        for (const one of asked) one.answer()
        await calm()
        vi.advanceTimersByTime(3_000)
        for (const place of places) groundFor(place, null)
        await calm()
      }
    }
    await settle()
    const before = asked.length
    expect(before).toBe(5 * 4)
    await settle()
    expect(asked).toHaveLength(before)
    expect([boardGround.value, ...places.map((place) => groundFor(place, null))].every(({ settled }) => settled)).toBe(
      true,
    )
  })

  test('is left as it is by lists that only look', async () => {
    const { cells, terrainAtHand, boardGround } = await session()
    await soMany(2)
    for (const one of asked) one.answer()
    await soMany(3)
    asked[2]?.answer()
    await soMany(4)
    asked[3]?.answer()
    await calm()
    for (let step = 1; step < 20; step++)
      expect(terrainAtHand(destination(spot.stop.at, 0, step * 40_000), null)).toBeNull()
    expect(asked).toHaveLength(4)
    expect(boardGround.value.settled).toBe(true)
    expect(cells()).toEqual([6, 18, 60, 200])
  })
})
