/** Tolerances against geometry done by hand, against the day's windows, and against a plain walk over whole assessments. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import { dayWindows } from '#core/light/light-window.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import { sunAt } from '#core/light/sky.ts'
import { type Assessment, assess } from '#core/plan/assess.ts'
import { lightSceneOf } from '#core/plan/day-light.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import { NO_DEMANDS, type ScanWishes, USUAL_SCAN_WISHES } from '#core/record/scan-wishes.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { MOVES, PLACE_MOVES, type PlaceMove, moveLine, movedBy } from '#core/tolerance/moves.ts'
import { type PlanTolerances, planTolerances } from '#core/tolerance/plan-tolerances.ts'
import type { Upright } from '#core/scene/landmark.ts'
import { civilDayOf } from '#core/time/civil.ts'
import { type PlanParts, ZOOM, examplePlan } from '#test/help/plans.ts'
import { groundOf } from '#test/help/terrain.ts'
import { lineThrough } from '#test/help/scans.ts'

const ZONE = 'UTC'
/** At the example's place (12.4 east) the sun is down, so that no light is asked. */
const NIGHT = Date.UTC(2026, 5, 14, 0)
const DAY = Date.UTC(2026, 5, 14, 11)

const NOTHING_WISHED: ScanWishes = { ...USUAL_SCAN_WISHES, ...NO_DEMANDS }
const PRIME = { ...ZOOM, id: 'prime', name: '50 f/1.8', focalMin: 50, focalMax: 50 }

/** Axis level: the lens as high as the subject's middle, which is in the middle of the frame. */
function levelPlan(parts: PlanParts & { readonly wishes?: Partial<ScanWishes> } = {}): Plan {
  const { wishes, shoot, shot, spot, ...rest } = parts
  const plain = examplePlan({
    lenses: [PRIME],
    distance: 10,
    landmark: null,
    ...rest,
    shoot: {
      scanWishes: { ...NOTHING_WISHED, ...wishes },
      stoppingGround: [lineThrough(90, 80)],
      crops: [],
      ...shoot,
    },
    shot: {
      placement: { across: 0, up: 0 },
      focus: { on: 'middle', behindFront: 0 },
      aperture: 16,
      focalLength: 50,
      ...shot,
    },
  })
  const { standpoint } = plain.spot
  const own: Spot = {
    ...plain.spot,
    hold: 'focal-length',
    when: NIGHT,
    standpoint: { ...standpoint, lensHeight: 0.6 },
    ...spot,
  }
  return planOf(plain.shoot, own, plain.terrain)
}

function found(plan: Plan, zone = ZONE): PlanTolerances {
  const tolerances = planTolerances({ plan, zone, parkings: [] })
  if (tolerances === null) throw new Error('nothing is framed')
  return tolerances
}

function thinTower(from: Plan, bearing: number, distance: number, height: number): Upright {
  const at = destination(from.spot.standpoint.at, bearing, distance)
  return {
    id: 'tower',
    name: 'Tower',
    kind: 'upright',
    at,
    height,
    width: 0.01,
    baseElevation: 12,
    baseSlope: null,
    baseAspect: null,
  }
}

function withTower(plan: Plan, tower: Upright): Plan {
  const shoot: Shoot = { ...plan.shoot, landmarks: [tower] }
  return planOf(shoot, { ...plan.spot, landmarkId: tower.id }, plan.terrain)
}

/** The offset told holds and 1 cm more does not, so the edge lies between. */
function expectEdge(offset: number | null, edge: number): void {
  expect(offset).toBeGreaterThan(edge - 0.0105)
  expect(offset).toBeLessThan(edge + 0.0005)
}

describe('by geometry', () => {
  test('nearer and farther until the subject fills more and less than is demanded', () => {
    const band = { must: true, weight: 3, axis: 'width', least: 0.3, most: 0.6 } as const
    const plan = levelPlan({ wishes: { subjectFill: band }, shot: { focus: { on: 'near', behindFront: 0 } } })
    // Side on, the near side of 2.5 m fills f L / ((u - f) 36 mm) when the focus u is on it, half a width before the centre.
    const near = (fill: number): number => (50 * 2.5) / (36 * fill) + 0.05
    const { tolerances } = found(plan)
    for (const thing of ['subject', 'camera'] as const) {
      const [nearer, farther] = [tolerances[`${thing}-nearer`], tolerances[`${thing}-farther`]]
      expectEdge(nearer.offset, 10 - 0.325 - near(0.6))
      expect(nearer.fails).toEqual({ kind: 'subjectFill', how: 'too-much' })
      expectEdge(farther.offset, near(0.3) + 0.325 - 10)
      expect(farther.fails).toEqual({ kind: 'subjectFill', how: 'too-little' })
    }
  })

  test('what is merely wished is not asked', () => {
    const band = { must: false, weight: 3, axis: 'width', least: 0.3, most: 0.6 } as const
    const { held, tolerances } = found(levelPlan({ wishes: { subjectFill: band } }))
    expect(held).not.toContain('subjectFill')
    expect(tolerances['camera-farther'].offset).toBeNull()
  })

  test('sideways until the pinhole puts the landmark on the border of the frame', () => {
    const bare = levelPlan()
    const plan = withTower(bare, thinTower(bare, 40, 1000, 100))
    // Off by s to the right, the axis turns left to the subject, 10 m away, and the tower, 1000 m away, leaves at the right.
    const across = (s: number): number => {
      const focus = Math.hypot(10, s)
      const image = (50 * focus) / (focus - 0.05)
      return image * Math.tan(Math.atan(s / 10) - Math.atan(s / 1000))
    }
    let [low, high] = [0, 10]
    for (let round = 0; round < 60; round++) {
      const middle = (low + high) / 2
      if (across(middle) < 18) low = middle
      else high = middle
    }
    const { tolerances } = found(plan)
    expectEdge(tolerances['camera-right'].offset, low)
    expect(tolerances['camera-right'].fails).toEqual({ kind: 'landmark-whole', how: 'cut-right' })
    expectEdge(tolerances['camera-left'].offset, low)
    expect(tolerances['camera-left'].fails).toEqual({ kind: 'landmark-whole', how: 'cut-left' })
  })

  test('with the lens higher until the tower’s top is cut', () => {
    const bare = levelPlan()
    const plan = withTower(bare, thinTower(bare, 40, 1000, 150))
    // The axis falls to the subject's middle 0.6 m up; the top stands 12 mm above it on the sensor at the border.
    const up = (rise: number): number => {
      const focus = Math.hypot(10, rise)
      const image = (50 * focus) / (focus - 0.05)
      // The curve of the earth, less refraction, takes (1 - k) D² / 2R from the top.
      const drop = (0.87 * 1000 ** 2) / (2 * 6_371_000)
      return image * Math.tan(Math.atan(rise / 10) + Math.atan((150 - drop - 0.6 - rise) / 1000))
    }
    let [low, high] = [0, 10]
    for (let round = 0; round < 60; round++) {
      const middle = (low + high) / 2
      if (up(middle) < 12) low = middle
      else high = middle
    }
    const { tolerances } = found(plan)
    expectEdge(tolerances['lens-higher'].offset, low)
    expect(tolerances['lens-higher'].fails).toEqual({ kind: 'landmark-whole', how: 'cut-top' })
  })

  test('with the lens lower until a wall takes five points more of the tower', () => {
    const bare = levelPlan()
    const { at } = bare.spot.standpoint
    const wall = [-20, 20].map((metres) => destination(destination(at, 40, 100), 130, metres))
    const tower = { ...thinTower(bare, 40, 1000, 50), baseElevation: 0 }
    const flat = groundOf(301, 10, () => 0, at)
    const base = withTower(bare, tower)
    const spot: Spot = {
      ...base.spot,
      stop: { ...base.spot.stop, elevation: 0 },
      standpoint: { ...base.spot.standpoint, elevation: 0, lensHeight: 1.5 },
    }
    const shoot: Shoot = {
      ...base.shoot,
      obstructions: [{ id: 'wall', name: 'Wall', line: wall, height: 3 }],
    }
    const { tolerances } = found(planOf(shoot, spot, flat))
    // Over a wall of 3 m at 100 m the line from the lens z meets the tower ten times as far at z + 10 (3 - z): 9 times the fall.
    expectEdge(tolerances['lens-lower'].offset, (0.05 * 50) / 9)
    expect(tolerances['lens-lower'].fails).toEqual({ kind: 'landmark-shown', how: 'hidden' })
  })

  test('sideways until trees stand before the tower, though beyond them it shows again', () => {
    const bare = levelPlan()
    const { at } = bare.spot.standpoint
    const base = withTower(bare, { ...thinTower(bare, 40, 1000, 50), baseElevation: 0 })
    const spot: Spot = {
      ...base.spot,
      stop: { ...base.spot.stop, elevation: 0 },
      standpoint: { ...base.spot.standpoint, elevation: 0 },
    }
    // From 2 to 3 m right of the line, 100 m out: the line from s to the right of it passes there at 0.9 s.
    const trees = [2, 3].map((metres) => destination(destination(at, 40, 100), 130, metres))
    const obstructions = [{ id: 'trees', name: 'Trees', line: trees, height: 20 }]
    const { tolerances } = found(
      planOf(
        { ...base.shoot, obstructions },
        spot,
        groundOf(301, 10, () => 0, at),
      ),
    )
    expectEdge(tolerances['camera-right'].offset, 2 / 0.9)
    expect(tolerances['camera-right'].fails).toEqual({ kind: 'landmark-shown', how: 'hidden' })
    expect(tolerances['camera-left'].fails).toEqual({ kind: 'landmark-whole', how: 'cut-left' })
  })

  test('turned until the sun is square to the seen side’s edge', () => {
    const { azimuth } = sunAt(levelPlan().spot.stop.at, DAY)
    // The camera looks along the sun's bearing plus 140: the seen side looks back, 40 degrees off the sun.
    const plan = levelPlan({ bearing: azimuth + 140, spot: { when: DAY } })
    const { tolerances, held } = found(plan)
    expect(held).toContain('subject-light')
    // Clockwise the side's normal, at the sun's bearing less 40, comes nearer to the sun; the other way it leaves it after 50 degrees.
    const tolerance = tolerances['subject-counter-clockwise']
    expect(tolerance.fails).toEqual({ kind: 'subject-light', how: 'in-shade' })
    expect(tolerance.offset).toBeGreaterThan(49.9 - 0.02)
    expect(tolerance.offset).toBeLessThan(50.02)
    expect(tolerances['subject-clockwise'].offset).toBeNull()
  })

  test('alike on both sides of what is alike on both sides', () => {
    const bare = levelPlan()
    const { tolerances } = found(withTower(bare, thinTower(bare, 40, 800, 60)))
    for (const [one, other] of [
      ['subject-left', 'subject-right'],
      ['camera-left', 'camera-right'],
      ['subject-clockwise', 'subject-counter-clockwise'],
    ] as const) {
      expect(tolerances[one].offset).not.toBeUndefined()
      if (tolerances[one].offset === null) expect(tolerances[other].offset).toBeNull()
      else expect(Math.abs(tolerances[one].offset - (tolerances[other].offset ?? Infinity))).toBeLessThan(0.011)
    }
    expect(tolerances['camera-left'].offset).not.toBeNull()
  })
})

test('the focal length and the aperture in use are those of the day, whatever was to follow before', () => {
  const shot = { focalLength: 31, aperture: null, subjectFill: { share: 0.45, axis: 'width' } } as const
  const free = levelPlan({ lenses: [ZOOM], shot: { ...shot, focus: { on: 'best', behindFront: 0 } }, turned: 40 })
  const solved = { ...free, spot: { ...free.spot, hold: 'standpoint' } as const }
  const { focalLength, sharp } = assess(solved)
  const set: Plan = {
    ...solved,
    spot: {
      ...solved.spot,
      hold: 'focal-length',
      shot: { ...solved.spot.shot, focalLength: focalLength ?? 0, aperture: sharp?.used.mark ?? 0 },
    },
  }
  const { tolerances } = found(solved)
  expect(tolerances).toEqual(found(set).tolerances)
  // As the camera comes nearer the depth of field shrinks, and no aperture follows.
  expect(tolerances['camera-nearer'].fails).toEqual({ kind: 'sharp', how: 'not-sharp' })
})

describe('the clock', () => {
  const light = { ...NO_WISHES, subject: 'lit', altitude: { least: 5, most: 80 } } as const

  test('may be off to the ends of the day’s windows, to the second', () => {
    const { azimuth } = sunAt(levelPlan().spot.stop.at, DAY)
    const plan = levelPlan({
      bearing: azimuth + 150,
      spot: { when: DAY },
      shoot: { scanWishes: NOTHING_WISHED, light },
    })
    const day = civilDayOf(DAY, ZONE)
    const { common } = dayWindows(lightSceneOf(plan, assess(plan)), light, day, ZONE)
    const window = common.find(({ from, until }) => from <= DAY && DAY <= until)
    const { tolerances } = found(plan)
    expect(window).toBeDefined()
    expect(tolerances.later.offset).toBe(Math.floor(((window?.until ?? 0) - DAY) / 1000))
    expect(tolerances.earlier.offset).toBe(Math.floor((DAY - (window?.from ?? 0)) / 1000))
    expect(tolerances.later.offset).toBeLessThan(6 * 3600)
  })

  test('tells what ends the window: the hours, the sun’s height, the sun gone', () => {
    const at = (part: Partial<Shoot['light']>, when = DAY): PlanTolerances =>
      found(levelPlan({ spot: { when }, shoot: { scanWishes: NOTHING_WISHED, light: { ...NO_WISHES, ...part } } }))
    const hours = at({ hours: { from: 10 * 60, until: 11 * 60 + 20 } }).tolerances
    expect(hours.earlier).toMatchObject({ offset: 3600, fails: { kind: 'hours', how: 'outside-hours' } })
    expect(hours.later).toMatchObject({ offset: 1200, fails: { kind: 'hours', how: 'outside-hours' } })
    const { altitude } = sunAt(levelPlan().spot.stop.at, DAY)
    const height = at({ altitude: { least: altitude - 1, most: altitude + 1 } }).tolerances
    expect(['sun-too-low', 'sun-too-high']).toContain(height.later.fails?.how)
    expect(height.later.offset).toBeGreaterThan(0)
  })

  test('never leaves the civil day, and a sun that never sets gives it all of that', () => {
    const when = Date.UTC(2026, 5, 21, 20)
    const place = { lat: 80, lon: 0 }
    const { azimuth } = sunAt(place, when)
    // Looking into the sun the seen side is in shade, but the sun is on the subject all day long.
    const plan = levelPlan({ at: place, bearing: azimuth, spot: { when } })
    const { tolerances, held } = found(plan)
    expect(held).toContain('subject-sun')
    expect(tolerances.earlier).toEqual({ offset: null, limit: 6 * 3600, fails: null })
    expect(tolerances.later).toEqual({ offset: null, limit: 4 * 3600, fails: null })
  })
})

/** What is asked of every picture and of the fill, told from a whole assessment without this program's own conditions. */
function wellParts(
  { subject, landmark, sharp, problems, ground }: Assessment,
  plan: Plan,
  shownNow: number | null,
): boolean[] {
  const band = plan.shoot.scanWishes.subjectFill
  const width = subject?.widthFill ?? -1
  const shown = ground?.landmarkShown ?? null
  return [
    subject?.whole === true,
    landmark?.whole === true,
    sharp?.endToEnd === true && !problems.includes('focus-too-near'),
    band !== null && width >= band.least && width <= band.most,
    shownNow === null || (shown !== null && shown >= shownNow - 0.05),
  ]
}

describe('against a plain walk over whole assessments', () => {
  test('nothing fails up to the offset told, and something does 1 cm beyond, on level ground and on a slope', () => {
    const fill = { must: true, weight: 3, axis: 'width', least: 0.3, most: 0.6 } as const
    fc.assert(
      fc.property(
        fc.constantFrom(...PLACE_MOVES),
        fc.record({
          bearing: fc.integer({ min: 0, max: 359 }),
          distance: fc.double({ min: 5, max: 14, noNaN: true }),
          turned: fc.integer({ min: 30, max: 150 }),
          across: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
          up: fc.double({ min: -0.25, max: 0.1, noNaN: true }),
          aperture: fc.constantFrom(2.8, 5.6, 11),
          away: fc.integer({ min: 150, max: 3000 }),
          slope: fc.constantFrom(null, -0.15, 0.08),
        }),
        (move: PlaceMove, { bearing, distance, turned, across, up, aperture, away, slope }) => {
          const bare = levelPlan({
            bearing,
            distance,
            turned,
            wishes: { subjectFill: fill },
            shot: { placement: { across, up }, aperture, focus: { on: 'best', behindFront: 0 } },
          })
          const level = withTower(bare, thinTower(bare, bearing, away, away / 8))
          const { stop, standpoint } = level.spot
          const plan: Plan =
            slope === null
              ? level
              : {
                  ...level,
                  spot: {
                    ...level.spot,
                    stop: { ...stop, elevation: null },
                    standpoint: { ...standpoint, elevation: null },
                  },
                  terrain: groundOf(41, 10, (east, north) => 12 + slope * (east + north / 2), standpoint.at),
                }
          const line = moveLine(plan)
          if (line === null) throw new Error('one place')
          const now = assess(plan)
          const shownNow = now.ground?.landmarkShown ?? null
          const asked = wellParts(now, plan, shownNow)
          const { offset, limit } = found(plan).tolerances[move]
          const at = (by: number): boolean =>
            wellParts(assess(movedBy(plan, move, by, line)), plan, shownNow).every(
              (holds, part) => holds || asked[part] !== true,
            )
          const end = offset ?? limit
          const step = Math.max(end / 150, 0.01)
          for (let by = 0; by <= end; by += step) expect(at(by), `${move} by ${by} of ${end}`).toBe(true)
          if (offset !== null && offset + 0.11 < limit) {
            const close = move === 'subject-clockwise' || move === 'subject-counter-clockwise' ? 0.1 : 0.01
            expect(at(offset + close + 1e-6), `${move} by more than ${offset}`).toBe(false)
          }
        },
      ),
      { numRuns: 60 },
    )
  })
})

describe('what does not hold now', () => {
  test('is named, left out, and ends nothing', () => {
    const bare = levelPlan({ wishes: { subjectFill: { must: true, weight: 3, axis: 'width', least: 0.9, most: 1 } } })
    const { held, failing, tolerances } = found(withTower(bare, thinTower(bare, 40, 1000, 900)))
    expect(failing).toEqual([
      { kind: 'landmark-whole', how: 'cut-top' },
      { kind: 'subjectFill', how: 'too-little' },
    ])
    expect(held).not.toContain('landmark-whole')
    for (const move of MOVES) expect(['landmark-whole', 'subjectFill']).not.toContain(tolerances[move].fails?.kind)
  })

  test('is named on every side where it is cut', () => {
    // 100 m wide at 100 m, and at 50 mm a frame of 72 x 48 m there: lost on the left and on the right alike, and the top with them.
    const bare = levelPlan({})
    const broad = { ...thinTower(bare, 40, 100, 90), width: 100 }
    expect(found(withTower(bare, broad)).failing).toEqual([{ kind: 'landmark-whole', how: 'cut-left-right-top' }])
    const low = { ...thinTower(bare, 40, 100, 3), width: 100 }
    expect(found(withTower(bare, low)).failing).toEqual([{ kind: 'landmark-whole', how: 'cut-left-right' }])
  })

  test('names light wishes and hours too', () => {
    const light = { ...NO_WISHES, subject: 'lit', hours: { from: 600, until: 700 } } as const
    const { failing } = found(levelPlan({ shoot: { scanWishes: NOTHING_WISHED, light } }))
    expect(failing).toEqual([
      { kind: 'subject-light', how: 'sun-down' },
      { kind: 'hours', how: 'outside-hours' },
    ])
  })

  test('musts as every shoot begins with them count once there is ground to scan, others at once', () => {
    const wishes = USUAL_SCAN_WISHES
    const kinds = (shoot: Partial<Shoot>): string[] => {
      const { held, failing } = found(levelPlan({ wishes, shoot }))
      return [...held, ...failing.map(({ kind }) => kind)]
    }
    expect(kinds({})).toContain('subjectFill')
    expect(kinds({ stoppingGround: [] })).not.toContain('subjectFill')
    const { subjectFill } = wishes
    const own = { ...wishes, subjectFill: subjectFill && { ...subjectFill, most: 0.7 } }
    expect(kinds({ stoppingGround: [], scanWishes: own })).toContain('subjectFill')
  })

  test('nothing framed has no tolerances; no landmark asks nothing of one', () => {
    expect(planTolerances({ plan: levelPlan({ distance: 0 }), zone: ZONE, parkings: [] })).toBeNull()
    const asked = {
      landmarkWhole: { must: true, weight: 3, crops: true },
      softness: { must: true, weight: 3, least: 0, most: 1 },
    } as const
    const { held, failing } = found(levelPlan({ wishes: { ...USUAL_SCAN_WISHES, ...asked } }))
    expect([...held, ...failing.map(({ kind }) => kind)].toSorted()).toEqual(['sharp', 'subject-whole', 'subjectFill'])
  })
})

describe('unknown ground', () => {
  const bare = levelPlan({ spot: { when: DAY }, wishes: USUAL_SCAN_WISHES })
  const plan = withTower(bare, thinTower(bare, 40, 700, 60))
  const { at } = plan.spot.standpoint

  /** The moves whose figures are none. */
  function holes({ tolerances }: PlanTolerances): string[] {
    return MOVES.filter((move) => {
      const { offset, limit } = tolerances[move]
      return !Number.isFinite(limit) || (offset !== null && !(offset >= 0 && offset <= limit))
    })
  }

  test('everywhere gives what level ground gives', () => {
    const unknown = found({ ...plan, terrain: groundOf(201, 10, () => Number.NaN, at) })
    expect(holes(unknown)).toEqual([])
    const level = found(plan)
    for (const move of MOVES) expect(unknown.tolerances[move].offset, move).toEqual(level.tolerances[move].offset)
  })

  test('close by gives figures, no holes', () => {
    const unmeasured: Spot = {
      ...plan.spot,
      stop: { ...plan.spot.stop, elevation: null },
      standpoint: { ...plan.spot.standpoint, elevation: null },
    }
    const half = groundOf(201, 10, (east) => (east > 3 ? Number.NaN : 12), at)
    expect(holes(found({ ...plan, spot: unmeasured, terrain: half }))).toEqual([])
  })
})

test('a hill that takes the sun as the subject comes nearer to it is told as that', () => {
  const { azimuth } = sunAt(levelPlan().spot.stop.at, DAY)
  const plan = levelPlan({ bearing: azimuth + 140, spot: { when: DAY } })
  const { stop } = plan.spot
  const { altitude } = sunAt(stop.at, DAY)
  const radians = (degrees: number): number => (degrees * Math.PI) / 180
  // A table hill across the sun's bearing, from 41 m on half a degree lower than the sun as the subject's middle sees it.
  const top = 12.6 + 41 * Math.tan(radians(altitude - 0.5))
  const height = (east: number, north: number): number => {
    const toward = east * Math.sin(radians(azimuth)) + north * Math.cos(radians(azimuth))
    return toward > 40.5 && toward < 60 ? top : 12
  }
  const { tolerances } = found({ ...plan, terrain: groundOf(401, 1, height, stop.at) })
  // Nearer to the camera is 40 degrees off the sun's bearing; the sun's upper edge, 0.27 degrees over its middle, is the last to go.
  const gone = 41 - (top - 12.6) / Math.tan(radians(altitude + 0.27))
  expect(tolerances['subject-nearer'].fails).toEqual({ kind: 'subject-light', how: 'behind-ground' })
  // The hill's edge lies between two cells of 1 m.
  expect(Math.abs((tolerances['subject-nearer'].offset ?? 0) - gone / Math.cos(radians(40)))).toBeLessThan(1)
  expect(tolerances['camera-nearer'].fails?.how).not.toBe('behind-ground')
})
