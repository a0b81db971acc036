/** Every trouble of a request, which of them refuse, and what a scan will cost, told before it starts. */
import { describe, expect, it } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import type { KeepOut } from '#core/record/keep-out.ts'
import type { StoppingGround } from '#core/record/stopping-ground.ts'
import { MOST_COMBINATIONS, MOST_PICTURES, coarser, scanTroubles } from '#core/scan/scan-troubles.ts'
import { scanCost } from '#core/scan/scan-cost.ts'
import { scanPart } from '#core/scan/scan.ts'
import { scanPlaces } from '#core/scan/scan-places.ts'
import { USUAL_STEPS } from '#core/scan/scan-request.ts'
import { type AskParts, CENTRE, MUST, WISH, requestOf, lineThrough } from '#test/help/scans.ts'
import { groundOf } from '#test/help/terrain.ts'

function corner(east: number, north: number): LatLon {
  return destination(destination(CENTRE, 90, east), 0, north)
}

function area(corners: readonly (readonly [number, number])[]): StoppingGround {
  return { id: 'area', name: '', form: 'area', turn: 'free', points: corners.map(([x, y]) => corner(x, y)) }
}

const WATER: KeepOut = {
  id: 'water',
  name: '',
  kind: 'water',
  form: 'area',
  points: [corner(-500, -500), corner(500, -500), corner(500, 500), corner(-500, 500)],
  width: 4,
  whom: 'subject',
  noCrossing: false,
}

const FAR = destination(CENTRE, 90, 3000)
const LANDMARK_FILL = { ...MUST, axis: 'width', least: 0.2, most: 0.4 } as const

const TROUBLES: readonly (readonly [string, AskParts, Readonly<Record<string, unknown>>])[] = [
  ['no ground', { ground: [] }, { reason: 'no-ground', ground: null, refuses: true }],
  ['a dot for a line', { ground: [lineThrough(0, 0.2)] }, { reason: 'line-too-short', ground: 'line', refuses: true }],
  [
    'two corners',
    {
      ground: [
        area([
          [0, 0],
          [50, 0],
        ]),
      ],
    },
    { reason: 'area-too-few-corners', ground: 'area', corners: 2, refuses: true },
  ],
  [
    'a bow tie',
    {
      ground: [
        area([
          [0, 0],
          [50, 50],
          [50, 0],
          [0, 50],
        ]),
      ],
    },
    { reason: 'area-crosses-itself', ground: 'area', refuses: true },
  ],
  [
    'corners in a row',
    {
      ground: [
        area([
          [0, 0],
          [50, 0],
          [100, 0],
        ]),
      ],
    },
    { reason: 'area-empty', ground: 'area', refuses: true },
  ],
  [
    'ground under water',
    { shoot: { keepOuts: [WATER] } },
    { reason: 'wholly-kept-out', ground: 'line', refuses: true },
  ],
  [
    'some of the ground under water',
    {
      ground: [lineThrough(90, 80), lineThrough(0, 50, { id: 'dry', points: [FAR, destination(FAR, 0, 90)] })],
      shoot: { keepOuts: [WATER] },
    },
    { reason: 'wholly-kept-out', ground: 'line', refuses: false },
  ],
  [
    'a must without a landmark',
    { landmark: null, wishes: { landmarkFill: LANDMARK_FILL } },
    { reason: 'no-landmark', demands: ['landmarkFill'], refuses: true },
  ],
  [
    'a wish without a landmark',
    { landmark: null, wishes: { softness: { ...WISH, least: 0, most: 0.1 } } },
    { reason: 'no-landmark', demands: ['softness'], refuses: false },
  ],
  ['an empty bag', { lenses: [] }, { reason: 'empty-bag', refuses: true }],
  [
    'a band upside down',
    { wishes: { lensHeight: { least: 2, most: 1 } } },
    { reason: 'band-upside-down', band: 'lensHeight', least: 2, most: 1, refuses: true },
  ],
  [
    'light that no sun gives',
    { wishes: { light: MUST }, shoot: { light: { ...NO_WISHES, subject: 'lit', soft: 'evening' } } },
    { reason: 'contradictory-light', pairs: [['subject', 'soft']], refuses: true },
  ],
  [
    'more in the frame than it holds',
    {
      wishes: {
        subjectFill: { ...MUST, axis: 'width', least: 0.6, most: 0.8 },
        landmarkFill: LANDMARK_FILL,
        landmarkWhole: { ...MUST, crops: false },
        landmarkPlace: { ...MUST, where: 'left', gap: 0.3 },
      },
    },
    { reason: 'contradictory-demands', demands: ['subjectFill', 'landmarkFill', 'landmarkPlace'], refuses: true },
  ],
  [
    'a landmark whole and larger than the frame',
    { wishes: { landmarkFill: { ...LANDMARK_FILL, least: 1.2, most: 2 }, landmarkWhole: { ...MUST, crops: false } } },
    { reason: 'contradictory-demands', demands: ['landmarkFill', 'landmarkWhole'], needed: 1.2, refuses: true },
  ],
  ['no hours', { wishes: { hours: { from: 600, until: 600 } } }, { reason: 'hours-empty', refuses: true }],
  [
    'days backwards',
    { wishes: { days: { from: '2026-06-20', until: '2026-06-01' } } },
    { reason: 'days-backwards', from: '2026-06-20', until: '2026-06-01', refuses: true },
  ],
  [
    'a day that the calendar lacks',
    { wishes: { days: { from: '2026-02-01', until: '2026-02-30' } } },
    { reason: 'no-such-day', refuses: true },
  ],
  [
    'parking as a must, none known',
    { wishes: { parking: { ...MUST, within: 100 } } },
    { reason: 'no-parking', refuses: true },
  ],
  [
    'ground beyond the elevations',
    { terrain: groundOf(11, 10, () => 5, CENTRE), wishes: { landmarkShown: { ...MUST, least: 0.5 } } },
    { reason: 'ground-without-elevation', ground: 'line', refuses: false },
  ],
  [
    'too much of everything',
    { ground: [lineThrough(90, 50_000)], steps: { ...USUAL_STEPS, place: 1 } },
    { reason: 'too-many', refuses: true },
  ],
]

describe('troubles', () => {
  it.each(TROUBLES)('%s', (_, parts, trouble) => {
    expect(scanTroubles(requestOf(parts))).toEqual([expect.objectContaining(trouble)])
  })

  it('none in an ordinary request, nor where elevations are there', () => {
    expect(scanTroubles(requestOf())).toEqual([])
    const terrain = groundOf(101, 10, () => 5, CENTRE)
    expect(scanTroubles(requestOf({ terrain, wishes: { landmarkShown: { ...MUST, least: 0.5 } } }))).toEqual([])
  })

  it('are told all at once', () => {
    const found = scanTroubles(requestOf({ ground: [], lenses: [], wishes: { hours: { from: 0, until: 0 } } }))
    expect(found.map(({ reason }) => reason)).toEqual(['no-ground', 'empty-bag', 'hours-empty'])
  })

  it('of the last ground only refuse when no other is left', () => {
    const found = scanTroubles(requestOf({ ground: [lineThrough(0, 0.1), lineThrough(90, 80, { id: 'good' })] }))
    expect(found).toEqual([expect.objectContaining({ reason: 'line-too-short', ground: 'line', refuses: true })])
  })
})

describe('the cost', () => {
  it('has the places, the pictures and the combinations that the scan then looks at', () => {
    const light = { ...NO_WISHES, subject: 'lit' } as const
    const asks = [
      requestOf(),
      requestOf({
        ground: [lineThrough(90, 33, { turn: 'free' })],
        wishes: { landmarkPlace: { ...WISH, where: 'left', gap: 0 } },
      }),
      requestOf({ wishes: { light: WISH }, shoot: { light }, steps: { minutes: 240 } }),
    ]
    for (const request of asks) {
      const cost = scanCost(request)
      expect(cost.places).toBe(scanPlaces(request).length)
      let evaluated = 0
      for (const step of scanPart(request)) evaluated += step.evaluated
      expect(evaluated).toBe(cost.combinations)
    }
  })

  it('of an area is about that of its cells', () => {
    const request = requestOf({
      ground: [
        area([
          [0, 0],
          [400, 0],
          [400, 300],
          [200, 400],
        ]),
      ],
      steps: { place: 10 },
    })
    const cost = scanCost(request)
    expect(cost.area).toBeGreaterThan(60_000)
    expect(Math.abs(cost.places / scanPlaces(request).length - 1)).toBeLessThan(0.03)
  })

  it('of 100 km is told, and a coarser step offered that will do', () => {
    const points = Array.from({ length: 200 }, (_, index) => corner(index * 500, 300 * Math.sin(index)))
    const request = requestOf({ ground: [lineThrough(0, 1, { points })], steps: { ...USUAL_STEPS, place: 2 } })
    const [trouble] = scanTroubles(request)
    expect(scanCost(request).length).toBeGreaterThan(100_000)
    if (trouble?.reason !== 'too-many') throw new Error('it ought to be too many')
    expect(trouble.cost.places).toBeGreaterThan(50_000)
    const { pictures, combinations } = scanCost({ ...request, steps: trouble.steps })
    expect(pictures).toBeLessThanOrEqual(MOST_PICTURES)
    expect(combinations).toBeLessThanOrEqual(MOST_COMBINATIONS)
    expect(scanTroubles({ ...request, steps: trouble.steps })).toEqual([])
  })

  it('leaves steps be that will do', () => {
    const request = requestOf()
    expect(coarser(request)).toEqual(request.steps)
  })
})
