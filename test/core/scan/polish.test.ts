/** Polishing: never to the worse, always within ground, keep-outs, lens and hours, and to the middle of what is wished. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination, geodesicDistance } from '#core/geo/geodesic.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import { assess } from '#core/plan/assess.ts'
import type { KeepOut } from '#core/record/keep-out.ts'
import { bestOf } from '#core/scan/best-of.ts'
import { planOfCandidate } from '#core/scan/candidate-spot.ts'
import { clearSpace } from '#core/scan/demands.ts'
import { judge } from '#core/scan/judge-candidate.ts'
import { cameraKeptOut, subjectKeptOut } from '#core/scan/kept-out.ts'
import { polish } from '#core/scan/polish.ts'
import type { ScanRequest } from '#core/scan/scan-request.ts'
import type { Candidate } from '#core/scan/scan-found.ts'
import { holdsPlace, keptOutOf, measuredLine, alongAt, pointAlong } from '#core/scan/scan-places.ts'
import { scanWhole } from '#core/scan/scan.ts'
import { civilTime } from '#core/time/civil.ts'
import { ZOOM } from '#test/help/plans.ts'
import { type AskParts, CENTRE, MUST, WISH, requestOf, judgedBy, lineThrough, towerAt } from '#test/help/scans.ts'

const FILLS = {
  subjectFill: { ...MUST, axis: 'width', least: 0.3, most: 0.5 },
  landmarkFill: { ...WISH, axis: 'height', least: 0.1, most: 0.3 },
  landmarkWhole: { ...MUST, crops: false },
} as const

const FENCE: KeepOut = {
  id: 'fence',
  name: '',
  kind: 'fence',
  form: 'line',
  points: [destination(CENTRE, 180, 60), destination(CENTRE, 0, 60)],
  width: 6,
  whom: 'both',
  noCrossing: true,
}

const AREA = {
  id: 'area',
  name: '',
  form: 'area',
  turn: 'free',
  points: [20, 110, 200, 290].map((bearing) => destination(CENTRE, bearing, 50)),
} as const

const asks = fc.record({
  bearing: fc.integer({ min: 0, max: 359 }),
  distance: fc.integer({ min: 150, max: 900 }),
  area: fc.boolean(),
  view: fc.integer({ min: 20, max: 120 }),
  light: fc.boolean(),
  fence: fc.boolean(),
})

function parts(picked: typeof asks extends fc.Arbitrary<infer One> ? One : never): AskParts {
  return {
    landmark: towerAt(picked.bearing, picked.distance),
    ground: [picked.area ? AREA : lineThrough(90, 70)],
    wishes: {
      ...FILLS,
      subjectView: { ...WISH, least: picked.view, most: picked.view + 60 },
      light: picked.light ? WISH : null,
      hours: { from: 480, until: 1080 },
    },
    shoot: {
      light: { ...NO_WISHES, subject: 'lit', altitude: { least: 10, most: 40 } },
      keepOuts: picked.fence ? [FENCE] : [],
    },
    steps: { place: 60, bearing: 45, minutes: 180, heights: 2, heading: 120 },
  }
}

/** Share of the frame's side that is clear beside the subject. */
function clearOf(request: ScanRequest, candidate: Candidate): number {
  const { subject } = assess(planOfCandidate(request, candidate))
  return subject === null ? NaN : clearSpace(subject)
}

describe('polishing', () => {
  it('never worsens, and keeps to ground, musts, keep-outs, lens and hours', () => {
    fc.assert(
      fc.property(asks, (picked) => {
        const request = requestOf(parts(picked))
        const out = keptOutOf(request)
        const [ground] = request.shoot.stoppingGround
        for (const candidate of bestOf(scanWhole(request), 2)) {
          const polished = polish(request, candidate)
          expect(polished.score).toBeGreaterThanOrEqual(candidate.score)
          expect(clearOf(request, polished)).toBeGreaterThanOrEqual(Math.min(0.02, clearOf(request, candidate)) - 1e-9)
          const judged = judgedBy(request, planOfCandidate(request, polished).spot)
          expect(judged?.score).toBeCloseTo(polished.score, 8)
          if (ground === undefined) throw new Error('there is ground')
          if (ground.form === 'area') expect(holdsPlace(ground, polished.at)).toBe(true)
          else {
            const line = measuredLine(ground.points)
            const on = pointAlong(line, alongAt(line, polished.at))
            expect(geodesicDistance(on?.at ?? CENTRE, polished.at)).toBeLessThan(1e-3)
          }
          expect(subjectKeptOut(out, polished.at)).toBe(false)
          expect(cameraKeptOut(out, polished.at, polished.standpoint)).toBe(false)
          expect(polished.focalLength).toBeGreaterThanOrEqual(ZOOM.focalMin)
          expect(polished.focalLength).toBeLessThanOrEqual(ZOOM.focalMax)
          expect(polished.lensHeight).toBeGreaterThanOrEqual(1)
          expect(polished.lensHeight).toBeLessThanOrEqual(1.5)
          if (picked.light) {
            const { hour, minute } = civilTime(polished.instant, request.zone)
            expect(hour * 60 + minute).toBeGreaterThanOrEqual(480)
            expect(hour * 60 + minute).toBeLessThanOrEqual(1080)
          }
          expect(polish(request, candidate)).toEqual(polished)
        }
      }),
      { numRuns: 12 },
    )
  })

  it('finds the middle of the bands where nothing stands in the way', () => {
    const request = requestOf({
      ground: [lineThrough(90, 70, { turn: 'free' })],
      wishes: { ...FILLS, subjectView: { ...WISH, least: 70, most: 90 } },
    })
    const [best] = bestOf(scanWhole(request))
    if (best === undefined) throw new Error('nothing was found')
    const values = new Map(polish(request, best).met.map(({ kind, value }) => [kind, value]))
    const before = best.met.find(({ kind }) => kind === 'subjectFill')?.value ?? NaN
    expect(Math.abs(before - 0.4)).toBeCloseTo(0.1, 6)
    expect(values.get('subjectFill')).toBeCloseTo(0.4, 2)
    expect(values.get('landmarkFill')).toBeCloseTo(0.2, 2)
    expect(values.get('subjectView')).toBeCloseTo(80, 0)
  })

  it('leaves room for the day: it stops short of cutting the subject and of the end of the light', () => {
    const request = requestOf({
      ground: [lineThrough(90, 70)],
      wishes: { subjectFill: { ...WISH, axis: 'width', least: 0.2, most: 1.6 }, light: { ...MUST } },
      shoot: { light: { ...NO_WISHES, subject: 'lit', hours: { from: 480, until: 1080 } } },
      steps: { fills: 5, minutes: 60 },
    })
    const found = bestOf(scanWhole(request))
    expect(found.length).toBeGreaterThan(0)
    for (const candidate of found) {
      const polished = polish(request, candidate)
      expect(clearOf(request, polished)).toBeGreaterThanOrEqual(Math.min(0.02, clearOf(request, candidate)) - 1e-9)
      const light = (one: Candidate): number =>
        judge(request, keptOutOf(request), one).measured.find(({ kind }) => kind === 'light')?.margin ?? NaN
      expect(light(polished)).toBeGreaterThanOrEqual(Math.min(0.1, light(candidate)) - 1e-9)
    }
  })

  it('leaves the shot’s own fill where none is wished', () => {
    const request = requestOf({
      wishes: { landmarkFill: { ...WISH, axis: 'height', least: 0.1, most: 0.3 } },
      shot: { subjectFill: { share: 0.35, axis: 'width' } },
    })
    const [best] = bestOf(scanWhole(request))
    if (best === undefined) throw new Error('nothing was found')
    const polished = polish(request, best)
    expect(polished.score).toBeGreaterThan(best.score)
    const plan = planOfCandidate(request, polished)
    expect(judgedBy(request, plan.spot)).not.toBeNull()
  })

  it('is stopped by a fence', () => {
    const open = requestOf({
      ground: [lineThrough(90, 70)],
      landmark: towerAt(0, 200),
      wishes: FILLS,
      steps: { place: 70 },
    })
    const fenced = { ...open, shoot: { ...open.shoot, keepOuts: [FENCE] } }
    const west = scanWhole(fenced).find(({ best }) => best.length > 0)?.best[0]
    if (west === undefined) throw new Error('nothing was found')
    expect(subjectKeptOut(keptOutOf(fenced), polish(fenced, west).at)).toBe(false)
    expect(polish(fenced, west).at.lon).toBeLessThan(CENTRE.lon)
  })
})
