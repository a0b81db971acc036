/** The profile as it is drawn: easily said scales and ticks, and lines that touch what the sightline says they touch. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import { groundProfile } from '#core/plan/ground-profile.ts'
import { levelsOf } from '#core/plan/plan.ts'
import { METRES_PER_FOOT, METRES_PER_MILE } from '#core/units/length.ts'
import { drawProfile, easyBelow, tickStep } from '#renderer/view/profile/profile-geometry.ts'
import { examplePlan } from '#test/help/plans.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

const ROOM = { width: 344, height: 158, left: 42, right: 9, top: 12, bottom: 18 }
const AT = { lat: 46.9, lon: 10.3 }

function lineOver(terrain: ReturnType<typeof groundOf>, away: number, height = 40) {
  const plan = examplePlan({
    at: AT,
    bearing: 0,
    landmark: {
      id: 'tower',
      name: 'Tower',
      kind: 'upright',
      at: destination(AT, 0, away),
      height,
      width: 6,
      baseElevation: null,
      baseSlope: null,
      baseAspect: null,
    },
  })
  const { spot } = plan
  const free = {
    ...plan,
    terrain,
    spot: {
      ...spot,
      stop: { ...spot.stop, elevation: null },
      standpoint: { ...spot.standpoint, elevation: null },
    },
  }
  const line = groundProfile(free, levelsOf(free))
  if (line === null) throw new Error('there is a way to the tower')
  return line
}

function heightAt(points: readonly { readonly x: number; readonly y: number }[], x: number): number {
  const next = points.findIndex((point) => point.x >= x)
  const [from, to] = [points[Math.max(0, next - 1)], points[next]]
  if (from === undefined || to === undefined) throw new Error('no such place on the line')
  return to.x === from.x ? to.y : from.y + ((to.y - from.y) * (x - from.x)) / (to.x - from.x)
}

describe('scales', () => {
  it('are the largest easily said figure that still fits, never less than four fifths of it', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 1e4, noNaN: true }), (figure) => {
        const easy = easyBelow(figure)
        expect(easy).toBeLessThanOrEqual(figure * (1 + 1e-6))
        expect(easy).toBeGreaterThan(figure * 0.8)
        expect(easy.toPrecision(2)).toBe(Number(easy.toPrecision(12)).toPrecision(2))
        expect(easyBelow(easy)).toBeCloseTo(easy, 10)
      }),
    )
  })

  it('have ticks of 1, 2 or 5 in the unit that is read', () => {
    expect(tickStep(1_000, 4, 1)).toBe(500)
    expect(tickStep(800, 4, 1)).toBe(200)
    expect(tickStep(45, 3, METRES_PER_FOOT)).toBeCloseTo(50 * METRES_PER_FOOT, 9)
    expect(tickStep(9_000, 4, METRES_PER_MILE)).toBeCloseTo(2 * METRES_PER_MILE, 6)
  })
})

describe('a profile with a ridge', () => {
  const line = lineOver(
    groundOf(241, 10, (_, north) => 100 + Math.max(0, 12 - Math.abs(north - 400) * 0.5)),
    1_000,
  )
  const picture = drawProfile(line, ROOM, 'metric')

  it('has its grazing line on the ridge where the sightline says, and ending at the sill', () => {
    const { tightest, grazingLine } = picture
    if (tightest === null || grazingLine === null) throw new Error('the ridge hides a part')
    expect(tightest.x).toBeCloseTo(picture.toX(400), 1)
    expect(tightest.y).toBeCloseTo(picture.toY(112), 2)
    expect(heightAt(grazingLine, tightest.x)).toBeCloseTo(tightest.y, 1)
    expect(grazingLine.at(-1)?.y).toBeCloseTo(picture.landmark.sill, 6)
    expect(picture.landmark.sill).toBeLessThan(picture.landmark.foot)
    expect(picture.landmark.top).toBeLessThan(picture.landmark.sill)
  })

  it('marks the line to the foot below the ridge', () => {
    // Down the page is down: the line passes under the ground that cuts it.
    expect(picture.tightest?.line).toBeGreaterThan(picture.tightest?.y ?? Infinity)
  })

  it('draws heights so many times as it says', () => {
    const [across, up] = [picture.toX(1) - picture.toX(0), picture.toY(0) - picture.toY(1)]
    expect(up / across).toBeCloseTo(picture.exaggeration, 9)
  })

  it('reads a pixel back as the distance drawn there, held to the line', () => {
    expect(picture.toDistance(picture.toX(321))).toBeCloseTo(321, 6)
    expect(picture.toDistance(0)).toBe(0)
    expect(picture.toDistance(1e6)).toBe(line.length)
  })

  it('has ticks in the user’s own unit', () => {
    const feet = drawProfile(line, ROOM, 'imperial')
    for (const { metres } of feet.along.slice(1)) expect((metres / METRES_PER_FOOT) % 100).toBeCloseTo(0, 6)
    for (const { metres } of picture.up) expect(metres % 10).toBeCloseTo(0, 6)
  })
})

describe('any mountains', () => {
  it('stay within the drawing but for deep valleys, landmark and lens wholly', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 60, max: 1_400 }), (seed, away) => {
        const picture = drawProfile(lineOver(mountains(301, 10, seed), away), ROOM, 'metric')
        const highest = Math.min(...picture.ground.flat().map(({ y }) => y))
        const [top, foot] = [ROOM.top - 1e-6, ROOM.height - ROOM.bottom + 1e-6]
        expect(highest).toBeGreaterThanOrEqual(top)
        for (const y of [picture.landmark.top, picture.landmark.foot, picture.lens.y]) {
          expect(y).toBeGreaterThanOrEqual(top)
          expect(y).toBeLessThanOrEqual(foot)
        }
      }),
      { numRuns: 10 },
    )
  })
})

describe('unknown ground', () => {
  it('breaks the ground in two', () => {
    const hole = groundOf(241, 10, (_, north) => (Math.abs(north - 400) < 55 ? Number.NaN : 100))
    expect(drawProfile(lineOver(hole, 1_000), ROOM, 'metric').ground).toHaveLength(2)
  })
})
