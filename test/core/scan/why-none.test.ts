/** Why nothing was found: counts that add up, and changes that give a result when they are made. */
import { describe, expect, it } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import type { ScanWishes } from '#core/record/scan-wishes.ts'
import type { ScanRequest } from '#core/scan/scan-request.ts'
import { scanCost } from '#core/scan/scan-cost.ts'
import type { Relaxation, WhyNone } from '#core/scan/scan-found.ts'
import { scanWhole } from '#core/scan/scan.ts'
import { whyNone, whyNonePart } from '#core/scan/why-none.ts'
import type { WhyNonePart } from '#core/scan/why-tally.ts'
import { ZOOM } from '#test/help/plans.ts'
import { type AskParts, CENTRE, MUST, WISH, requestOf, lineThrough, towerAt } from '#test/help/scans.ts'
import { groundOf } from '#test/help/terrain.ts'

function partsOf(request: ScanRequest, of: number): WhyNonePart[] {
  return Array.from({ length: of }, (_, part) => [...whyNonePart(request, part, of)].at(-1)?.part).flatMap((part) =>
    part === null || part === undefined ? [] : [part],
  )
}

function why(request: ScanRequest): WhyNone {
  return whyNone(partsOf(request, 1))
}

function relaxed(request: ScanRequest, { of, to, end }: Relaxation): ScanRequest {
  const { shoot } = request
  const { bag, scanWishes } = shoot
  if (of === 'lens-long' || of === 'lens-short') {
    const name = of === 'lens-long' ? 'focalMax' : 'focalMin'
    const last =
      of === 'lens-long'
        ? Math.max(...bag.lenses.map(({ focalMax }) => focalMax))
        : Math.min(...bag.lenses.map(({ focalMin }) => focalMin))
    const lenses = bag.lenses.map((lens) => (lens[name] === last ? { ...lens, [name]: to } : lens))
    return { ...request, shoot: { ...shoot, bag: { ...bag, lenses } } }
  }
  const wishes: Record<string, unknown> = { ...scanWishes }
  const name = of === 'lens-height' ? 'lensHeight' : of
  const demand = scanWishes[name]
  if (of === 'landmarkWhole' || of === 'light') wishes[name] = { ...demand, must: false }
  else if (of === 'landmarkPlace') wishes[name] = { ...demand, ...(to >= 0 ? { gap: to } : { must: false }) }
  else if (of === 'parking') wishes[name] = { ...demand, within: to }
  else wishes[name] = { ...demand, [end ?? 'least']: to }
  return { ...request, shoot: { ...shoot, scanWishes: wishes as unknown as ScanWishes } }
}

function finds(request: ScanRequest): number {
  return scanWhole(request).filter(({ score }) => score !== null).length
}

const FILL = { subjectFill: { ...MUST, axis: 'width', least: 0.3, most: 0.5 } } as const

const NONE: Readonly<Record<string, { parts: AskParts; expected: string }>> = {
  'a landmark too far off': {
    parts: {
      landmark: towerAt(0, 1500),
      wishes: { ...FILL, landmarkFill: { ...MUST, axis: 'height', least: 0.2, most: 0.4 } },
    },
    expected: 'lens-long',
  },
  'a landmark too near': {
    parts: {
      landmark: towerAt(0, 60),
      wishes: {
        ...FILL,
        landmarkFill: { ...MUST, axis: 'height', least: 0.1, most: 0.4 },
        landmarkWhole: { ...MUST, crops: false },
      },
    },
    expected: 'landmarkFill',
  },
  'a landmark cut': {
    parts: {
      landmark: towerAt(0, 90),
      wishes: { ...FILL, landmarkWhole: { ...MUST, crops: true } },
      lenses: [{ ...ZOOM, focalMin: 40 }],
    },
    expected: 'landmarkWhole',
  },
  'a view that no way on the track gives': {
    parts: {
      ground: [lineThrough(90, 60, { turn: 'along' })],
      wishes: {
        ...FILL,
        landmarkFill: { ...MUST, axis: 'height', least: 0.1, most: 0.4 },
        landmarkWhole: { ...MUST, crops: false },
        subjectView: { ...MUST, least: 0, most: 20 },
      },
    },
    expected: 'subjectView',
  },
  'a gap too wide': {
    parts: { wishes: { ...FILL, landmarkPlace: { ...MUST, where: 'left', gap: 0.6 } } },
    expected: 'landmarkPlace',
  },
  'ground in the way': {
    parts: {
      terrain: groundOf(201, 10, (_, north) => (north > 200 && north < 260 ? 16 : 0), CENTRE),
      landmark: towerAt(0, 500, { baseElevation: null }),
      wishes: {
        ...FILL,
        landmarkFill: { ...MUST, axis: 'height', least: 0.1, most: 0.4 },
        landmarkShown: { ...MUST, least: 0.9 },
      },
    },
    expected: 'landmarkShown',
  },
  'softer than any lens makes it': {
    parts: { wishes: { ...FILL, softness: { ...MUST, least: 0.2, most: 0.4 } } },
    expected: 'softness',
  },
  'parking too far off': {
    parts: { wishes: { ...FILL, parking: { ...MUST, within: 100 } }, parkings: [destination(CENTRE, 180, 700)] },
    expected: 'parking',
  },
  'light that never comes': {
    parts: {
      wishes: {
        ...FILL,
        landmarkFill: { ...MUST, axis: 'height', least: 0.1, most: 0.4 },
        light: MUST,
      },
      shoot: { light: { ...NO_WISHES, subject: 'lit', altitude: { least: 80, most: 90 } } },
      steps: { minutes: 60 },
    },
    expected: 'light',
  },
  'a fill that cuts the subject’s room': {
    parts: {
      wishes: {
        subjectFill: { ...WISH, axis: 'width', least: 0.9, most: 0.95 },
        landmarkPlace: { ...MUST, where: 'beside', gap: 0.05 },
        landmarkWhole: { ...MUST, crops: false },
      },
    },
    expected: 'subjectFill',
  },
  'a lens held too high': {
    parts: {
      terrain: groundOf(201, 10, () => 0, CENTRE),
      landmark: towerAt(0, 500, { height: 40 }),
      wishes: {
        subjectFill: { ...MUST, axis: 'width', least: 0.45, most: 0.5 },
        landmarkWhole: { ...MUST, crops: false },
        lensHeight: { least: 3.2, most: 3.6 },
      },
      shot: { placement: { across: 0, up: 0.1 } },
    },
    expected: 'lens-height',
  },
}

describe.each(Object.keys(NONE))('%s', (name) => {
  const problem = NONE[name]
  if (problem === undefined) throw new Error(name)
  const request = requestOf(problem.parts)
  const told = why(request)

  it('finds nothing, and tells what could be changed', () => {
    expect(finds(request)).toBe(0)
    expect(told.relaxations.map(({ of }) => of)).toContain(problem.expected)
  })

  it('finds something after any of the changes', () => {
    for (const change of told.relaxations) {
      expect({ change, finds: finds(relaxed(request, change)) > 0 }).toEqual({ change, finds: true })
      expect(change.places).toBeGreaterThan(0)
      expect(finds(relaxed(request, change))).toBeGreaterThanOrEqual(change.places)
    }
  })

  it('adds up: nothing is left in, nothing alone is more than all', () => {
    for (const { count, alone } of told.excluded) {
      expect(count).toBeGreaterThanOrEqual(alone)
      expect(count).toBeLessThanOrEqual(told.looked)
    }
    expect(told.excluded.reduce((sum, { count }) => sum + count, 0)).toBeGreaterThanOrEqual(told.looked)
  })

  it('tells the same in any number of parts', () => {
    for (const of of [2, 3]) expect(whyNone(partsOf(request, of))).toEqual(told)
  })
})

describe('the smallest change', () => {
  it('is the smallest: a step less gives nothing', () => {
    const request = requestOf(NONE['ground in the way']?.parts)
    const change = why(request).relaxations.find(({ of }) => of === 'landmarkShown')
    if (change === undefined) throw new Error('there is a change')
    expect(finds(relaxed(request, { ...change, to: change.to + 0.011 }))).toBe(0)
  })
})

describe('what was looked at', () => {
  it('is all of a small problem', () => {
    const request = requestOf(NONE['a landmark too near']?.parts)
    expect(why(request).looked).toBe(scanCost(request).combinations)
  })

  it('is a part of a large one', () => {
    const parts = NONE['a landmark too near']?.parts ?? {}
    const request = requestOf({
      ...parts,
      ground: [lineThrough(90, 20_000)],
      landmark: towerAt(0, 8),
      steps: { place: 10 },
    })
    const told = why(request)
    expect(told.looked).toBeLessThan(scanCost(request).combinations / 5)
    expect(told.looked).toBeGreaterThan(0)
  })

  it('tells hours that leave no time', () => {
    const request = requestOf({
      wishes: { ...FILL, light: MUST, hours: { from: 0, until: 60 } },
      shoot: { light: { ...NO_WISHES, subject: 'lit' } },
      steps: { minutes: 60 },
    })
    const told = why(request)
    expect(told.excluded.map(({ by }) => by)).toEqual(expect.arrayContaining(['light', 'hours']))
    expect(told.excluded.find(({ by }) => by === 'hours')?.alone).toBeGreaterThan(0)
  })
})
