/** The scan against brute force: the same places pass the musts, the same best, the same figures; and what geometry says beforehand. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { nearestOnLine } from '#core/geo/shape.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import type { KeepOut } from '#core/record/keep-out.ts'
import { assess } from '#core/plan/assess.ts'
import { bestOf } from '#core/scan/best-of.ts'
import { planOfCandidate } from '#core/scan/candidate-spot.ts'
import { judge } from '#core/scan/judge-candidate.ts'
import type { ScanRequest } from '#core/scan/scan-request.ts'
import { type Tried, picturesAt } from '#core/scan/place-pictures.ts'
import { type ScanPlace, keptOutOf, scanPlaces } from '#core/scan/scan-places.ts'
import { scanTable } from '#core/scan/scan-table.ts'
import { stopPlace } from '#core/scan/stand-place.ts'
import type { Spot } from '#core/record/spot.ts'
import { scanWhole } from '#core/scan/scan.ts'
import { turnBetween, wrapBearing } from '#core/units/angle.ts'
import { ZOOM } from '#test/help/plans.ts'
import {
  type AskParts,
  type Brute,
  CENTRE,
  LONG_ZOOM,
  MUST,
  MUST_FILLS,
  WISH,
  requestOf,
  byBruteForce,
  judgedBy,
  lineThrough,
  towerAt,
} from '#test/help/scans.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

const PROBLEMS: Readonly<Record<string, AskParts>> = {
  'fills alone': { wishes: MUST_FILLS },
  'two lenses, crops, view as a wish': {
    lenses: [ZOOM, LONG_ZOOM],
    wishes: {
      ...MUST_FILLS,
      landmarkWhole: { ...MUST, crops: true },
      subjectView: { ...WISH, least: 60, most: 120 },
    },
  },
  'a place in the frame': {
    wishes: { ...MUST_FILLS, landmarkPlace: { ...MUST, where: 'beside', gap: 0.02 } },
    shot: { placement: { across: 0.05, up: -0.2 } },
  },
  'view and softness as musts, upright': {
    lenses: [LONG_ZOOM],
    wishes: {
      ...MUST_FILLS,
      subjectView: { ...MUST, least: 30, most: 100 },
      softness: { ...MUST, least: 0, most: 0.03 },
    },
    shot: { orientation: 'upright', placement: { across: 0, up: -0.2 } },
  },
  'free headings, parking, wishes alone': {
    ground: [lineThrough(90, 40, { turn: 'free' })],
    parkings: [destination(CENTRE, 90, 100)],
    wishes: {
      landmarkFill: { ...WISH, axis: 'height', least: 0.2, most: 0.4 },
      parking: { ...WISH, within: 120 },
      lensHeight: { least: 1, most: 1 },
    },
  },
  'ground that hides': {
    terrain: groundOf(201, 10, (east, north) => (north > 200 && north < 260 ? 12 + east / 10 : east / 50), CENTRE),
    landmark: towerAt(0, 500, { baseElevation: null }),
    wishes: { ...MUST_FILLS, landmarkShown: { ...MUST, least: 0.5 } },
  },
  'a lens that focuses no nearer than 5 m, the landmark in the way of some': {
    lenses: [{ ...ZOOM, closestFocus: 5 }],
    landmark: towerAt(0, 14, { height: 4, width: 1 }),
    wishes: { subjectFill: MUST_FILLS.subjectFill, landmarkFill: { ...WISH, axis: 'height', least: 0.1, most: 0.5 } },
    steps: { place: 20 },
  },
  'a post that is larger from before than from behind': {
    landmark: towerAt(0, 6, { height: 2.5, width: 0.4 }),
    wishes: { subjectFill: MUST_FILLS.subjectFill, landmarkFill: { ...MUST, axis: 'height', least: 0.4, most: 0.9 } },
    steps: { bearing: 15 },
  },
  'a landmark anywhere in a wide frame': {
    lenses: [{ ...ZOOM, focalMin: 18, focalMax: 35 }],
    landmark: towerAt(0, 300, { width: 40 }),
    wishes: { subjectFill: MUST_FILLS.subjectFill, landmarkFill: { ...MUST, axis: 'height', least: 0.05, most: 0.6 } },
    shot: { placement: { across: 0.2, up: -0.25 } },
    steps: { bearing: 5, place: 160 },
  },
  'ground partly unknown': {
    terrain: groundOf(
      201,
      10,
      (east, north) => ((east > 15 && north < 40) || north > 700 ? Number.NaN : 3 * Math.sin(east / 30) + north / 60),
      CENTRE,
    ),
    landmark: towerAt(0, 500, { baseElevation: null }),
    wishes: {
      subjectFill: MUST_FILLS.subjectFill,
      landmarkFill: { ...WISH, axis: 'width', least: 0.02, most: 0.05 },
      landmarkShown: { ...WISH, least: 0.9 },
      light: { ...WISH },
      hours: { from: 300, until: 1290 },
    },
    shoot: { light: { ...NO_WISHES, subject: 'in-shade', landmark: 'lit', soft: 'evening', sun: 'in-frame' } },
    steps: { minutes: 240, focalLengths: 1 },
  },
  'a foot on unknown ground': {
    terrain: groundOf(61, 10, (east) => 8 + 4 * Math.sin(east / 20), CENTRE),
    landmark: towerAt(0, 500, { baseElevation: null }),
    wishes: { ...MUST_FILLS, landmarkWhole: { ...WISH, crops: true }, light: { ...MUST } },
    shoot: { light: { ...NO_WISHES, landmark: 'lit' } },
    steps: { minutes: 240 },
  },
  'light over the day, as a must': {
    wishes: { subjectFill: MUST_FILLS.subjectFill, landmarkWhole: MUST_FILLS.landmarkWhole, light: { ...MUST } },
    shoot: { light: { ...NO_WISHES, subject: 'lit', landmark: 'lit', altitude: { least: 5, most: 60 } } },
    steps: { minutes: 90 },
  },
  'light among mountains, as a wish': {
    terrain: mountains(301, 20),
    landmark: towerAt(0, 500, { baseElevation: null }),
    wishes: {
      subjectFill: MUST_FILLS.subjectFill,
      landmarkFill: { ...WISH, axis: 'height', least: 0.1, most: 0.3 },
      light: { ...WISH },
      days: { from: '2026-05-01', until: '2026-06-10' },
      hours: { from: 300, until: 1290 },
    },
    shoot: {
      light: {
        ...NO_WISHES,
        subject: 'back-lit',
        landmark: 'raking',
        sun: 'out-of-frame',
        moonUp: true,
        hours: { from: 400, until: 1200 },
      },
    },
    steps: { minutes: 180, focalLengths: 1, place: 80 },
  },
}

/** Brute force takes its time: once for each problem. */
const brute = new Map<string, Brute[]>()

function bruteOf(name: string): Brute[] {
  const known = brute.get(name) ?? byBruteForce(requestOf(PROBLEMS[name]))
  brute.set(name, known)
  return known
}

function bests(found: readonly Brute[]): Map<number, number> {
  const best = new Map<number, number>()
  for (const { place, score } of found) best.set(place, Math.max(best.get(place) ?? 0, score))
  return best
}

/** What tells two combinations of lens, way and fill apart. */
function nameOf(spot: Spot): string {
  const { stop, standpoint, shot } = spot
  const way = wrapBearing(Math.round(geodesicLine(stop.at, standpoint.at).bearing ?? 0)) % 360
  const share = shot.subjectFill.share.toFixed(3)
  return [
    stop.heading.toFixed(1),
    way,
    shot.lensId,
    shot.focalLength,
    standpoint.lensHeight,
    shot.placement.across,
    share,
  ].join(' ')
}

/** All pictures of a place that the scan holds to be good, not the best alone. */
function namesOfGood(request: ScanRequest, place: ScanPlace): string[] {
  const table = scanTable(request)
  const tried: Tried = { pictures: [], count: 0, work: 0 }
  const work = picturesAt(table, stopPlace(table, place.at), place.headings, null, tried)
  while (work.next().done !== true);
  return tried.pictures.map(({ subject, stood, focal, setting, measured }) =>
    nameOf({
      ...request.spot,
      stop: { at: place.at, heading: subject.heading, elevation: null, slope: null, aspect: null },
      standpoint: { at: stood.at, lensHeight: stood.lensHeight, elevation: null, slope: null, aspect: null },
      shot: {
        ...request.spot.shot,
        focalLength: focal.focalLength,
        lensId: focal.lens.id,
        placement: setting.placement,
        subjectFill: {
          ...request.spot.shot.subjectFill,
          share: measured.find(({ kind }) => kind === 'subjectFill')?.value ?? request.spot.shot.subjectFill.share,
        },
      },
    }),
  )
}

const DARK = Object.keys(PROBLEMS).filter((name) => PROBLEMS[name]?.wishes?.light === undefined)

describe.each(DARK)('every picture, not the best alone: %s', (name) => {
  it('is good where brute force says so', () => {
    const request = requestOf(PROBLEMS[name])
    for (const place of scanPlaces(request)) {
      const expected = bruteOf(name)
        .filter((one) => one.place === place.index)
        .map(({ spot }) => nameOf(spot))
      expect(namesOfGood(request, place).toSorted()).toEqual(expected.toSorted())
    }
  })
})

describe('any small scan with light', () => {
  const picked = fc.record({
    bearing: fc.integer({ min: 0, max: 359 }),
    distance: fc.integer({ min: 150, max: 900 }),
    subject: fc.constantFrom(null, 'lit', 'in-shade', 'back-lit'),
    landmark: fc.constantFrom(null, 'lit', 'raking', 'in-shade'),
    sun: fc.constantFrom(null, 'in-frame', 'out-of-frame'),
    least: fc.integer({ min: -5, max: 40 }),
    must: fc.boolean(),
    hills: fc.boolean(),
  })

  it('has the best of brute force', () => {
    fc.assert(
      fc.property(picked, ({ bearing, distance, subject, landmark, sun, least, must, hills }) => {
        const request = requestOf({
          landmark: towerAt(bearing, distance, { baseElevation: null }),
          terrain: hills
            ? groundOf(201, 20, (east, north) => 30 * Math.sin(east / 400) ** 2 + north / 40, CENTRE)
            : null,
          ground: [lineThrough(bearing + 70, 40, { turn: 'along' })],
          wishes: {
            subjectFill: MUST_FILLS.subjectFill,
            landmarkFill: { ...WISH, axis: 'height', least: 0.1, most: 0.3 },
            light: { must, weight: 5 },
            lensHeight: { least: 1.2, most: 1.2 },
          },
          shoot: { light: { ...NO_WISHES, subject, landmark, sun, altitude: { least, most: least + 30 } } },
          steps: { place: 80, bearing: 60, minutes: 60 },
        })
        const expected = bests(byBruteForce(request))
        const found = scanWhole(request).filter(({ score }) => score !== null)
        expect(found.map(({ place }) => place)).toEqual([...expected.keys()])
        for (const { place, score } of found) expect(score).toBeCloseTo(expected.get(place) ?? NaN, 7)
      }),
      { numRuns: 12 },
    )
  })
})

describe('keep-outs for the camera', () => {
  const near = (bearing: number, metres: number): LatLon => destination(CENTRE, bearing, metres)
  const track: KeepOut = {
    id: 'track',
    name: '',
    kind: 'rail',
    form: 'line',
    points: [near(260, 100), near(80, 100)],
    width: 10,
    whom: 'camera',
    noCrossing: false,
  }
  const fence: KeepOut = { ...track, id: 'fence', points: [near(200, 70), near(10, 70)], width: 0.1, noCrossing: true }
  const parts: AskParts = { wishes: { subjectFill: MUST_FILLS.subjectFill }, shoot: { keepOuts: [track, fence] } }

  /** Told by the nearest point of the line and by sides of it, as the scan does not. */
  function mayStand(stop: LatLon, camera: LatLon): boolean {
    const off = nearestOnLine(track.points, camera)?.distance ?? Infinity
    const along = geodesicLine(near(10, 70), near(200, 70)).bearing ?? 0
    const side = (at: LatLon): number => Math.sign(turnBetween(along, geodesicLine(near(10, 70), at).bearing ?? 0))
    const from = nearestOnLine(fence.points, camera)?.distance ?? Infinity
    return off > 5 && from > 0.05 && side(stop) === side(camera)
  }

  it('leave the same as by brute force, and less than without', () => {
    const request = requestOf(parts)
    const free = requestOf({ ...parts, shoot: {} })
    const allowed = byBruteForce(request, mayStand)
    const best = bests(allowed)
    const found = scanWhole(request).filter(({ score }) => score !== null)
    expect(found.map(({ place }) => place)).toEqual([...best.keys()])
    for (const { place, score } of found) expect(score).toBeCloseTo(best.get(place) ?? NaN, 8)
    expect(allowed.length).toBeLessThan(0.9 * byBruteForce(free).length)
    for (const { at, standpoint } of found.flatMap((place) => place.best)) expect(mayStand(at, standpoint)).toBe(true)
  })
})

describe.each(Object.keys(PROBLEMS))('against brute force: %s', (name) => {
  const request = requestOf(PROBLEMS[name])
  const found = scanWhole(request)
  const expected = bests(bruteOf(name))

  it('the same places meet the musts, with the same best score', () => {
    const scored = found.filter(({ score }) => score !== null)
    expect(scored.length).toBeGreaterThan(0)
    expect(scored.map(({ place }) => place)).toEqual([...expected.keys()])
    for (const { place, score } of scored) expect(score).toBeCloseTo(expected.get(place) ?? NaN, 8)
  })

  it('each candidate is what its spot is assessed to be', () => {
    const out = keptOutOf(request)
    for (const candidate of found.flatMap(({ best }) => best)) {
      const judged = judgedBy(request, planOfCandidate(request, candidate).spot)
      expect(judged).not.toBeNull()
      candidate.met.forEach(({ kind, value, degree }, index) => {
        const truth = judged?.measured[index]
        expect(truth?.kind).toBe(kind)
        if (value === null) expect(truth?.value).toBeNull()
        else expect(truth?.value).toBeCloseTo(value, 8)
        expect(truth?.degree).toBeCloseTo(degree, 6)
      })
      expect(judged?.score).toBeCloseTo(candidate.score, 7)
      expect(judge(request, out, candidate)).toMatchObject({ limits: [], score: judged?.score })
      expect(assess(planOfCandidate(request, candidate)).focalLength).toBe(candidate.focalLength)
    }
  })

  it('finds the same in any number of parts', () => {
    for (const of of [2, 3, 4]) expect(scanWhole(request, of)).toEqual(found)
    expect(bestOf(found.toReversed())).toEqual(bestOf(found))
  })
})
