/** The proportion ring: the circle of Apollonius on the level and on the ellipsoid, and the ratio that it is drawn for. */
import { assert, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination, geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { Plan } from '#core/plan/plan.ts'
import { proportionRing, ratioForProportion, ringDistance, wishedProportion } from '#core/plan/proportion-ring.ts'
import type { Upright } from '#core/scene/landmark.ts'
import { examplePlan } from '#test/help/plans.ts'
import { number } from '#test/help/arbitrary.ts'

const STOP: LatLon = { lat: 46.9, lon: 10.3 }

function tower(at: LatLon): Upright {
  const lean = { baseElevation: 0, baseSlope: null, baseAspect: null }
  return { id: 't', name: '', kind: 'upright', at, height: 60, width: 10, ...lean }
}

/** The camera in the south of the subject, a tower so many metres from it toward a bearing. */
function planWith(bearing: number, gap: number, distance = 10): Plan {
  const at = destination(STOP, 180, distance)
  return examplePlan({ at, bearing: 0, distance, landmark: tower(destination(STOP, bearing, gap)) })
}

describe('the wished proportion', () => {
  it('is of millimetres: shares by the frame’s own sides', () => {
    const wished = (subject: 'width' | 'height', landmark: 'width' | 'height', orientation: 'lying' | 'upright') =>
      wishedProportion(
        examplePlan({
          shot: {
            orientation,
            subjectFill: { share: 0.5, axis: subject },
            landmarkFill: { share: 0.3, axis: landmark },
          },
        }),
      )
    expect(wished('width', 'height', 'lying')).toBeCloseTo((0.3 * 24) / (0.5 * 36), 12)
    expect(wished('height', 'width', 'lying')).toBeCloseTo((0.3 * 36) / (0.5 * 24), 12)
    expect(wished('width', 'width', 'upright')).toBeCloseTo(0.6, 12)
    expect(wished('width', 'height', 'upright')).toBeCloseTo((0.3 * 36) / (0.5 * 24), 12)
  })
})

describe('the ratio of distances', () => {
  it('is the present one where the wish is what is seen, and goes with the wish', () => {
    const plan = planWith(0, 990)
    const wish = wishedProportion(plan)
    expect(ratioForProportion(plan, wish)).toBeCloseTo(10 / 1000, 6)
    expect(ratioForProportion(plan, wish / 2)).toBeCloseTo(20 / 1000, 6)
    expect(ratioForProportion(plan, wish * 4)).toBeCloseTo(2.5 / 1000, 6)
  })

  it('is none without a landmark, at either thing, and for nothing seen', () => {
    expect(ratioForProportion({ ...planWith(0, 990), landmark: null }, 1)).toBeNull()
    expect(ratioForProportion(planWith(0, 990, 0), 1)).toBeNull()
    const plan = planWith(0, 990)
    expect(ratioForProportion({ ...plan, landmark: tower(plan.spot.standpoint.at) }, 1)).toBeNull()
    expect([ratioForProportion(plan, 0), ratioForProportion(plan, -1)]).toEqual([null, null])
  })
})

describe('the ring', () => {
  it('has on every bearing distances to both things in its ratio', () => {
    assert(
      property(
        number(0, 359),
        number(0, 359),
        number(50, 60_000),
        number(0.001, 0.95),
        (toTower, bearing, gap, ratio) => {
          const plan = planWith(toTower, gap)
          const distance = ringDistance(plan, bearing, ratio)
          if (distance === null || plan.landmark?.kind !== 'upright') throw new Error('a ratio below 1 has a ring')
          const there = destination(STOP, bearing, distance)
          const found = geodesicDistance(there, STOP) / geodesicDistance(there, plan.landmark.at)
          expect(Math.abs(found / ratio - 1)).toBeLessThan(1e-7)
        },
      ),
    )
  })

  it('lies on the line of the two as the division of that line has it', () => {
    // Between them d / (g - d) = r, so d = g r / (1 + r); beyond the subject d / (g + d) = r, so d = g r / (1 - r).
    const plan = planWith(30, 600)
    for (const ratio of [0.01, 0.2, 0.5, 0.9]) {
      expect(ringDistance(plan, 30, ratio)).toBeCloseTo((600 * ratio) / (1 + ratio), 3)
      expect(ringDistance(plan, 210, ratio)).toBeCloseTo((600 * ratio) / (1 - ratio), 2)
    }
  })

  it('is none from a ratio of 1 on, for none, and without a landmark', () => {
    const plan = planWith(30, 600)
    for (const ratio of [1, 1.5, 0, -0.5, Number.NaN]) expect(ringDistance(plan, 0, ratio)).toBeNull()
    expect(ringDistance({ ...plan, landmark: null }, 0, 0.5)).toBeNull()
  })

  it('is closed and has as many stretches as asked for, near by and far off', () => {
    for (const [gap, distance] of [
      [990, 10],
      [40_000, 9000],
    ] as const) {
      const plan = planWith(0, gap, distance)
      const middle = plan.landmark?.kind === 'upright' ? plan.landmark.at : STOP
      const ring = proportionRing(plan, wishedProportion(plan), 24) ?? []
      expect(ring).toHaveLength(25)
      expect(ring.at(-1)).toEqual(ring[0])
      for (const place of ring) {
        const found = geodesicDistance(place, STOP) / geodesicDistance(place, middle)
        expect(Math.abs(found / (distance / (gap + distance)) - 1)).toBeLessThan(1e-4)
      }
      // Evenly round: the quarters lie north, east, south and west.
      const [, east, , west] = [0, 6, 12, 18].map((index) => ring[index] ?? STOP)
      expect([(east?.lon ?? 0) > STOP.lon, (west?.lon ?? 0) < STOP.lon]).toEqual([true, true])
      // The camera itself stands on it.
      expect(geodesicDistance(ring[12] ?? STOP, plan.spot.standpoint.at)).toBeLessThan(distance * 1e-3)
    }
    expect(proportionRing(planWith(0, 990), wishedProportion(planWith(0, 990)))).toHaveLength(73)
  })

  it('is none where the camera would have to stand nearer to the landmark than to the subject', () => {
    const plan = planWith(0, 990)
    // Seen a hundredth as large as wished, the camera must be a hundred times as near to the landmark, in proportion.
    expect(proportionRing(plan, wishedProportion(plan) / 101)).toBeNull()
    expect(proportionRing(plan, wishedProportion(plan) / 99)).not.toBeNull()
    expect(proportionRing({ ...plan, landmark: null }, 1)).toBeNull()
  })
})
