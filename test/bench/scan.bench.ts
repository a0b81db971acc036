/** The scan against an assessment for every combination: pictures alone, a million with light and line of sight, and the first word. */
import { destination } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import { assess } from '#core/plan/assess.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import { USUAL_SCAN_WISHES } from '#core/record/scan-wishes.ts'
import { standForFill } from '#core/plan/stand.ts'
import { type ScanRequest, USUAL_STEPS } from '#core/scan/scan-request.ts'
import { scanPlaces } from '#core/scan/scan-places.ts'
import { focalSamples } from '#core/scan/scan-samples.ts'
import { scanPart } from '#core/scan/scan.ts'
import { examplePlan, ZOOM } from '#test/help/plans.ts'
import { groundOf } from '#test/help/terrain.ts'
import { type BenchRow, against, cpu, median } from './measure.ts'

const CENTRE: LatLon = { lat: 46.9, lon: 10.3 }
const LONG = { ...ZOOM, id: 'long', focalMin: 70, focalMax: 200, closestFocus: 1.1 }

/** Rolling ground, 5 km of it in cells of 10 m: low enough that a tower shows from most places. */
const HILLS = groundOf(
  501,
  10,
  (east, north) => 20 + 4 * Math.sin(east / 310) * Math.cos(north / 270) + Math.sin((east + north) / 90),
  CENTRE,
)

/** A bicycle on so many metres of track, two zooms, a tower 900 m off, the usual wishes and steps. */
function askAlong(metres: number, lit: boolean): ScanRequest {
  const tower = destination(CENTRE, 40, 900)
  const plan = examplePlan({
    at: CENTRE,
    lenses: [ZOOM, LONG],
    landmark: {
      id: 'tower',
      name: '',
      kind: 'upright',
      at: tower,
      height: 60,
      width: 10,
      baseElevation: null,
      baseSlope: null,
      baseAspect: null,
    },
    shoot: {
      stoppingGround: [
        {
          id: 'track',
          name: '',
          form: 'line',
          turn: 'either-way',
          points: [destination(CENTRE, 310, metres / 2), destination(CENTRE, 130, metres / 2)],
        },
      ],
      light: lit ? { ...NO_WISHES, subject: 'lit', landmark: 'lit', altitude: { least: 3, most: 40 } } : NO_WISHES,
      scanWishes: { ...USUAL_SCAN_WISHES, light: { must: true, weight: 3 }, hours: { from: 360, until: 1260 } },
    },
  })
  const { shoot, spot } = plan
  return {
    shoot,
    spot,
    terrain: HILLS,
    pins: [],
    zone: 'Europe/Berlin',
    parkings: [],
    steps: { ...USUAL_STEPS, minutes: 20 },
  }
}

function run(request: ScanRequest): { readonly evaluated: number; readonly good: number } {
  let evaluated = 0
  let good = 0
  for (const step of scanPart(request)) {
    evaluated += step.evaluated
    good += step.found.filter(({ score }) => score !== null).length
  }
  if (good === 0) throw new Error('nothing was found')
  return { evaluated, good }
}

/** Some of the same combinations as plans, the camera already standing where the subject fills as wished. */
function plansOf(request: ScanRequest): Plan[] {
  const focals = focalSamples(request.shoot.bag.lenses, request.steps.focalLengths)
  return scanPlaces(request).flatMap(({ at, headings }, index) => {
    const focal = focals[index % focals.length]
    if (focal === undefined) return []
    const spot = {
      ...request.spot,
      stop: { at, heading: headings[index % headings.length] ?? 0, elevation: null, slope: null, aspect: null },
      standpoint: { at: destination(at, index * 70, 20), lensHeight: 1.2, elevation: null, slope: null, aspect: null },
      hold: 'focal-length' as const,
      shot: { ...request.spot.shot, focalLength: focal.focalLength, lensId: focal.lens.id },
    }
    const plan = planOf(request.shoot, spot, request.terrain)
    const stood = standForFill(plan)
    return stood.ok ? [{ ...plan, spot: stood.value }] : []
  })
}

/** Times that the plans are assessed: few of them, yet as warm as the scan. */
const ROUNDS = 20

function perCombination(request: ScanRequest, name: string): BenchRow {
  const plans = plansOf(request)
  const { evaluated } = run(request)
  let sink = 0
  const measured = against(
    () => (sink += run(request).good),
    () => {
      for (let round = 0; round < ROUNDS; round++) for (const plan of plans) sink += assess(plan).problems.length + 1
    },
    1,
    5,
  )
  if (sink === 0) throw new Error('nothing was assessed')
  const each = measured.ours / evaluated
  const assessed = measured.anchor / (ROUNDS * plans.length)
  const ratio = (measured.ratio * ROUNDS * plans.length) / evaluated
  return {
    name: `${name}: ${evaluated} combinations, each / assess() for each`,
    ours: `${(each * 1000).toFixed(3)} µs, ${(1 / each).toFixed(0)} a ms`,
    anchor: `${(assessed * 1000).toFixed(1)} µs`,
    ratio,
    aim: 'ratio 0.02 (1/50)',
  }
}

const MILLION = 1_000_000

function million(): BenchRow {
  const request = askAlong(300, true)
  run(request)
  const rounds = Array.from({ length: 5 }, () => {
    let evaluated = 0
    const spent = cpu(() => (evaluated = run(request).evaluated))
    return { spent: (spent * MILLION) / evaluated, whole: spent, evaluated }
  })
  const { evaluated = 0 } = rounds[0] ?? {}
  return {
    name: `a million combinations with light and line of sight (of ${(evaluated / MILLION).toFixed(2)} million, to scale)`,
    ours: `${median(rounds.map(({ spent }) => spent)).toFixed(0)} ms`,
    anchor: `${median(rounds.map(({ whole }) => whole)).toFixed(0)} ms for all`,
    ratio: median(rounds.map(({ spent }) => spent)) / 2000,
    aim: '2 s of CPU',
  }
}

/** From the request to the first word, and the longest wait between two words. */
function words(): BenchRow {
  const request = askAlong(2000, true)
  const rounds = Array.from({ length: 3 }, () => {
    const begun = performance.now()
    let first = 0
    let [last, longest] = [begun, 0]
    for (const step of scanPart(request)) {
      const now = performance.now()
      if (first === 0 && step.found.length > 0) first = now - begun
      longest = Math.max(longest, now - last)
      last = now
      if (now - begun > 2000) break
    }
    return { first, longest }
  })
  return {
    name: 'first places found / longest wait between two words (by the clock, both)',
    ours: `${median(rounds.map(({ first }) => first)).toFixed(0)} ms`,
    anchor: `${median(rounds.map(({ longest }) => longest)).toFixed(0)} ms`,
    ratio: median(rounds.map(({ first }) => first)) / 150,
    aim: '150 ms; 100 ms',
  }
}

/** The same without a must: nothing is given up before its end. */
function asWishes(request: ScanRequest): ScanRequest {
  const { scanWishes } = request.shoot
  const wish = { must: false, weight: 3 } as const
  return {
    ...request,
    shoot: {
      ...request.shoot,
      scanWishes: {
        ...scanWishes,
        subjectFill: scanWishes.subjectFill && { ...scanWishes.subjectFill, ...wish },
        landmarkWhole: { crops: false, ...wish },
        landmarkShown: { least: 0.8, ...wish },
        light: { ...wish },
      },
    },
  }
}

export function benchScan(): BenchRow[] {
  return [
    perCombination(asWishes(askAlong(100, false)), 'pictures without a must, each worked out to its end'),
    perCombination(askAlong(300, false), 'pictures alone, one instant'),
    perCombination(askAlong(300, true), 'pictures and instants'),
    million(),
    words(),
  ]
}
