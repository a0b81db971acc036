/** The way to the landmark: what a ridge hides by similar triangles, which crest comes near, obstructions on the line, the earth's curve. */
import { describe, expect, it } from 'vitest'
import { destination, geodesicDistance } from '#core/geo/geodesic.ts'
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { type GroundProfile, groundHeight, groundProfile, lineHeight, placeAlong } from '#core/plan/ground-profile.ts'
import { groundReading } from '#core/plan/ground-reading.ts'
import { type Plan, levelsOf } from '#core/plan/plan.ts'
import type { ObstructionRecord } from '#core/record/shoot.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { examplePlan } from '#test/help/plans.ts'
import { groundOf } from '#test/help/terrain.ts'

const AT = { lat: 46.9, lon: 10.3 }
const AWAY = 1_000
const TOWER: Landmark = {
  id: 'tower',
  name: 'Tower',
  kind: 'upright',
  at: destination(AT, 0, AWAY),
  height: 40,
  width: 6,
  baseElevation: null,
  baseSlope: null,
  baseAspect: null,
}

/** Level ground at 100 m with a ridge across the way, 400 m out. */
function ridge(height: number): ElevationGrid {
  return groundOf(241, 10, (_, north) => 100 + Math.max(0, height - Math.abs(north - 400) * 0.5))
}

interface Wanted {
  readonly refraction?: number
  readonly obstructions?: readonly ObstructionRecord[]
  readonly landmark?: Landmark | null
}

function over(grid: ElevationGrid | null, { refraction = 1, obstructions = [], landmark = TOWER }: Wanted = {}): Plan {
  const plan = examplePlan({ at: AT, bearing: 0, landmark, shoot: { refraction, obstructions } })
  const { spot } = plan
  return {
    ...plan,
    spot: {
      ...spot,
      stop: { ...spot.stop, elevation: null },
      standpoint: { ...spot.standpoint, elevation: null, lensHeight: 2 },
    },
    terrain: grid,
  }
}

function lineOf(plan: Plan): GroundProfile {
  const line = groundProfile(plan, levelsOf(plan))
  if (line === null) throw new Error('the plan has a way to its landmark')
  return line
}

describe('a ridge on the way', () => {
  // Refraction of 1 takes back all of the curve: similar triangles, 12 m of ridge from an eye 2 m up.
  const line = lineOf(over(ridge(12)))

  it('hides what similar triangles say, and is the tightest point', () => {
    const hidden = 2 + ((12 - 2) * line.length) / 400
    expect(line.sight.hidden).toBeCloseTo(hidden, 3)
    expect(line.tightest?.distance).toBeCloseTo(400, 2)
    expect(line.tightest?.obstruction).toBeNull()
  })

  it('is touched by the line to the lowest part that shows', () => {
    const share = (line.tightest?.distance ?? 0) / line.length
    const sill = line.low + (line.sight.hidden ?? 0)
    const grazing = line.eye.elevation + (sill - line.eye.elevation) * share
    expect(groundHeight(line, line.tightest?.distance ?? 0)).toBeCloseTo(grazing, 4)
    expect(grazing).toBeCloseTo(112, 3)
  })

  it('lies on the map where the reading says', () => {
    const plan = over(ridge(12))
    const by = groundReading(plan, levelsOf(plan))?.toLandmark?.hiddenBy
    const at = placeAlong(line, line.tightest?.distance ?? 0)
    expect(geodesicDistance(at, by?.at ?? AT)).toBeLessThan(0.01)
    expect(geodesicDistance(at, destination(AT, 0, 400))).toBeLessThan(0.1)
  })

  it('that cuts the line to the foot deepest is the tightest, also where another hides more', () => {
    // 10 m at 200 m out hide 42 m of what stands 1 km off; 14 m at 800 m out hide but 17 m, though they cut 13.6 m into the line.
    const both = groundOf(241, 10, (_, north) =>
      Math.max(100, 110 - Math.abs(north - 200) * 0.5, 114 - Math.abs(north - 800) * 0.5),
    )
    const line = lineOf(over(both))
    expect(line.sight.hiddenBy?.distance).toBeCloseTo(200, 1)
    expect(line.tightest?.distance).toBeCloseTo(800, 1)
    // The line falls from 2 m to 0 over the way: 0.4 m at 800 m, where 14 m of ridge stand.
    expect(line.tightest?.clearance).toBeCloseTo(2 * (1 - 800 / line.length) - 14, 2)
  })

  it('that stays below the line is told as the crest nearest to it', () => {
    const low = lineOf(over(ridge(1)))
    expect(low.sight.hidden).toBe(0)
    // The line falls from 2 m to 0 over the way: 1.2 m at the crest's 400 m, where 1 m of ridge stands.
    expect(low.tightest?.distance).toBeCloseTo(400, 1)
    expect(low.tightest?.clearance).toBeCloseTo(2 * (1 - 400 / low.length) - 1, 3)
  })
})

describe('without a crest', () => {
  it('nothing is told as tight where the line comes down to its own ends', () => {
    expect(lineOf(over(ridge(0))).tightest).toBeNull()
    expect(lineOf(over(groundOf(241, 10, (_, north) => 100 - north * 0.02))).tightest).toBeNull()
  })
})

describe('the earth’s curve', () => {
  it('bends the line down in heights above the sea by d (D - d) (1 - k) / 2R', () => {
    const line = lineOf(over(ridge(0), { refraction: 0.13 }))
    const [d, whole] = [300, line.length]
    const straight = line.eye.elevation + ((line.high - line.eye.elevation) * d) / whole
    expect(lineHeight(line, 'high', d)).toBeCloseTo(straight - (d * (whole - d) * 0.87) / (2 * MEAN_EARTH_RADIUS), 9)
    expect(lineHeight(line, 'low', 0)).toBeCloseTo(line.eye.elevation, 9)
    expect(lineHeight(line, 'low', whole)).toBeCloseTo(line.low, 9)
  })
})

describe('trees on the way', () => {
  const middle = destination(AT, 0, 600)
  const trees: ObstructionRecord = {
    id: 'trees',
    name: 'Poplars',
    line: [destination(middle, 270, 20), destination(middle, 90, 20)],
    height: 15,
  }

  it('stand on the line with foot and top, and hide by their height', () => {
    const line = lineOf(over(ridge(0), { obstructions: [trees] }))
    expect(line.obstructions).toHaveLength(1)
    expect(line.obstructions[0]?.distance).toBeCloseTo(600, 1)
    expect(line.obstructions[0]?.foot).toBeCloseTo(100, 6)
    expect(line.obstructions[0]?.top).toBeCloseTo(115, 6)
    expect(line.tightest?.obstruction).toBe(0)
    expect(line.sight.hidden).toBeCloseTo(2 + (13 * line.length) / 600, 1)
  })

  it('too low to hide are still the tightest point', () => {
    const line = lineOf(over(ridge(0), { obstructions: [{ ...trees, height: 0.5 }] }))
    expect(line.sight.hidden).toBe(0)
    expect(line.tightest?.obstruction).toBe(0)
    expect(line.tightest?.clearance).toBeCloseTo(2 * (1 - 600 / line.length) - 0.5, 2)
  })
})

describe('no way to be drawn', () => {
  it('is there without elevations, and without a landmark', () => {
    for (const plan of [over(null), over(ridge(0), { landmark: null })])
      expect(groundProfile(plan, levelsOf(plan))).toBeNull()
  })

  it('unknown ground breaks the line off and is no crest', () => {
    const hole = groundOf(241, 10, (_, north) => (Math.abs(north - 400) < 55 ? Number.NaN : 100))
    const line = lineOf(over(hole))
    expect(groundHeight(line, 400)).toBeNull()
    expect(groundHeight(line, 200)).toBeCloseTo(100, 4)
    expect(line.tightest).toBeNull()
    expect(line.sight.ground).toBe('partly-known')
  })
})

describe('a bridge between rising banks', () => {
  it('is not called hidden for what of its ends is buried', () => {
    // Square to the look, ends 170 m aside in banks that rise above the deck's own foot; nothing stands before it.
    const banks = groundOf(241, 10, (east) => 100 + Math.max(0, (Math.abs(east) - 130) * 0.4))
    const bridge = examplePlan({ at: AT, bearing: 0 }).landmark
    const plan = over(banks, { landmark: bridge === null ? null : { ...bridge, baseElevation: 100 } })
    expect(groundReading(plan, levelsOf(plan))?.landmarkShown).toBeCloseTo(1, 6)
  })
})
