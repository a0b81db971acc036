/** What must hold of any scan: more ground and more lenses never cost anything, keep-outs never gain, and known answers come out. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination, geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import { sunAt } from '#core/light/sky.ts'
import type { KeepOut } from '#core/record/keep-out.ts'
import { wayToCamera } from '#core/scan/apart.ts'
import { bestOf } from '#core/scan/best-of.ts'
import { candidateWindow } from '#core/scan/candidate-spot.ts'
import { polish } from '#core/scan/polish.ts'
import type { ScanRequest } from '#core/scan/scan-request.ts'
import { scanPart, scanWhole } from '#core/scan/scan.ts'
import { turnBetween } from '#core/units/angle.ts'
import { ZOOM } from '#test/help/plans.ts'
import {
  type AskParts,
  CENTRE,
  LONG_ZOOM,
  MUST,
  MUST_FILLS,
  WISH,
  requestOf,
  lineThrough,
  towerAt,
} from '#test/help/scans.ts'

const PRIME = { ...ZOOM, id: 'prime', focalMin: 35, focalMax: 35 }

function bestScore(request: ScanRequest): number {
  return bestOf(scanWhole(request), 1)[0]?.score ?? -1
}

const around = fc.record({
  bearing: fc.integer({ min: 0, max: 359 }),
  distance: fc.integer({ min: 100, max: 1500 }),
  along: fc.integer({ min: 0, max: 359 }),
  extra: fc.integer({ min: 0, max: 359 }),
})

function partsOf({ bearing, distance, along }: { bearing: number; distance: number; along: number }): AskParts {
  return {
    landmark: towerAt(bearing, distance),
    ground: [lineThrough(along, 60)],
    wishes: { ...MUST_FILLS, subjectView: { ...WISH, least: 60, most: 120 } },
    steps: { place: 30, bearing: 30 },
  }
}

describe('of any scan', () => {
  it('more stopping ground never lowers the best score', () => {
    fc.assert(
      fc.property(around, (picked) => {
        const parts = partsOf(picked)
        const more = lineThrough(picked.extra, 50, { id: 'more', turn: 'along' })
        const before = bestScore(requestOf(parts))
        expect(bestScore(requestOf({ ...parts, ground: [more, ...(parts.ground ?? [])] }))).toBeGreaterThanOrEqual(
          before,
        )
      }),
      { numRuns: 25 },
    )
  })

  it('more lenses never lower it', () => {
    fc.assert(
      fc.property(around, (picked) => {
        const parts = partsOf(picked)
        const before = bestScore(requestOf({ ...parts, lenses: [ZOOM] }))
        expect(bestScore(requestOf({ ...parts, lenses: [PRIME, ZOOM, LONG_ZOOM] }))).toBeGreaterThanOrEqual(before)
      }),
      { numRuns: 25 },
    )
  })

  it('a keep-out never raises it', () => {
    fc.assert(
      fc.property(around, fc.boolean(), (picked, noCrossing) => {
        const parts = partsOf(picked)
        const keepOut: KeepOut = {
          id: 'out',
          name: '',
          kind: 'rail',
          form: 'line',
          points: [destination(CENTRE, picked.extra, 40), destination(CENTRE, picked.extra + 170, 40)],
          width: 8,
          whom: 'both',
          noCrossing,
        }
        const before = bestScore(requestOf(parts))
        expect(bestScore(requestOf({ ...parts, shoot: { keepOuts: [keepOut] } }))).toBeLessThanOrEqual(before)
      }),
      { numRuns: 25 },
    )
  })

  it('the arrangements kept at a place are apart in bearing or time, best first', () => {
    const light = { ...NO_WISHES, subject: 'lit' } as const
    const request = requestOf({ wishes: { ...MUST_FILLS, light: WISH }, shoot: { light }, steps: { minutes: 30 } })
    const several = scanWhole(request).filter(({ best }) => best.length > 1)
    expect(several.length).toBeGreaterThan(0)
    for (const { best, score } of several) {
      expect(score).toBe(best[0]?.score)
      best.forEach((one, index) =>
        best.slice(index + 1).forEach((other) => {
          expect(one.score).toBeGreaterThanOrEqual(other.score)
          const between = Math.abs(one.instant - other.instant)
          const minutes = Math.min(between, 86_400_000 - between) / 60_000
          const turn = Math.abs(turnBetween(wayToCamera(one), wayToCamera(other)))
          expect(minutes >= 120 || turn >= 20 - 1e-6).toBe(true)
        }),
      )
    }
  })

  it('gives word at once and often, and tells how far it is', () => {
    const request = requestOf({ wishes: MUST_FILLS, ground: [lineThrough(90, 400)], steps: { place: 10, bearing: 10 } })
    const steps = [...scanPart(request)]
    const shares = steps.map(({ share }) => share)
    expect(steps.length).toBeGreaterThan(5)
    expect(shares).toEqual(shares.toSorted((one, other) => one - other))
    expect(shares.at(-1)).toBe(1)
    expect(steps.flatMap(({ found }) => found)).toHaveLength(81)
  })
})

describe('known answers', () => {
  it('on a straight track past a tower the best place has it square behind', () => {
    const request = requestOf({
      landmark: towerAt(20, 400),
      ground: [lineThrough(110, 200, { turn: 'along' })],
      wishes: {
        subjectFill: MUST_FILLS.subjectFill,
        landmarkPlace: { ...MUST, where: 'behind', gap: 0 },
        subjectView: { ...MUST, least: 80, most: 100 },
      },
      steps: { place: 20, bearing: 5 },
    })
    const [best] = bestOf(scanWhole(request), 1)
    if (best === undefined) throw new Error('nothing was found')
    const polished = polish(request, best)
    expect(geodesicDistance(best.at, CENTRE)).toBeLessThan(20)
    expect(geodesicDistance(polished.at, CENTRE)).toBeLessThan(5)
    expect(turnBetween(wayToCamera(polished), 200)).toBeCloseTo(0, 0)
  })

  it('with the sun on one side only that side of the tower is proposed', () => {
    const when = Date.UTC(2026, 5, 14, 7)
    const { azimuth } = sunAt(CENTRE, when)
    const ring = lineThrough(0, 1, {
      points: Array.from({ length: 25 }, (_, index) => destination(CENTRE, index * 15, 300)),
    })
    const request = requestOf({
      landmark: towerAt(0, 0),
      ground: [ring],
      wishes: {
        ...MUST_FILLS,
        landmarkFill: { ...WISH, axis: 'height', least: 0.1, most: 0.5 },
        light: MUST,
        hours: { from: 9 * 60, until: 9 * 60 + 10 },
      },
      spot: { when },
      shoot: { light: { ...NO_WISHES, landmark: 'lit' } },
      steps: { minutes: 10 },
    })
    const found = scanWhole(request)
    const lit = found.filter(({ score }) => score !== null)
    const off = (at: typeof CENTRE): number => Math.abs(turnBetween(azimuth, geodesicLine(CENTRE, at).bearing ?? 0))
    expect(lit.length).toBeGreaterThan(5)
    expect(lit.length).toBeLessThan(found.length - 5)
    for (const { at } of lit) expect(off(at)).toBeLessThan(105)
    const dark = found.filter(({ score }) => score === null)
    for (const { at } of dark) expect(off(at)).toBeGreaterThan(75)
  })

  it('a candidate’s window holds its instant, and the wishes all through it', () => {
    const light = { ...NO_WISHES, subject: 'lit', altitude: { least: 20, most: 60 } } as const
    const request = requestOf({ wishes: { ...MUST_FILLS, light: MUST }, shoot: { light }, steps: { minutes: 20 } })
    const [best] = bestOf(scanWhole(request), 1)
    if (best === undefined) throw new Error('nothing was found')
    const window = candidateWindow(request, best)
    if (window === null) throw new Error('there is no window')
    expect(best.instant).toBeGreaterThanOrEqual(window.from)
    expect(best.instant).toBeLessThanOrEqual(window.until)
    expect(candidateWindow(request, { ...best, instant: window.until + 10 * 60_000 })).toBeNull()
  })
})
