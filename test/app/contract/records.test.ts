/** What records are taken in: figures within their limits, so that whatever is taken can be computed; what stands beyond is mended and told. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { mendFigures } from '#app/contract/mended.ts'
import { shootShape, spotShape } from '#app/contract/records.ts'
import { settingsShape } from '#app/contract/settings.ts'
import { DEFAULT_SETTINGS } from '#app/contract/default-settings.ts'
import { assess } from '#core/plan/assess.ts'
import { planOf } from '#core/plan/plan.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { bridgeAt, examplePlan } from '#test/help/plans.ts'

type Path = readonly (string | number)[]

/** Every figure in a record by the way to it. */
function figures(value: unknown, path: Path = []): Path[] {
  if (typeof value === 'number') return [path]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, part]) => figures(part, [...path, key]))
}

function withFigure<Kind>(record: Kind, path: Path, figure: number): Kind {
  const copy = structuredClone(record)
  let at = copy as Record<string | number, unknown>
  for (const key of path.slice(0, -1)) at = at[key] as Record<string | number, unknown>
  at[path.at(-1) ?? ''] = figure
  return copy
}

/** The way to the first figure that is none. */
function notFinite(value: unknown, path = ''): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : path
  if (typeof value !== 'object' || value === null) return null
  for (const [key, part] of Object.entries(value)) {
    const found = notFinite(part, `${path}.${key}`)
    if (found !== null) return found
  }
  return null
}

const AT = { lat: -41.2, lon: 12.4 }
const NEAR = { lat: -41.195, lon: 12.404 }
const common = { id: 'mark', name: '', height: 60, baseElevation: 0, baseSlope: null, baseAspect: null }
const LANDMARKS: readonly Landmark[] = [
  bridgeAt(AT, 40, 600),
  { kind: 'upright', ...common, at: NEAR, width: 8 },
  { kind: 'summit', ...common, at: NEAR, width: 200 },
  { kind: 'building', ...common, footprint: [NEAR, { lat: -41.1949, lon: 12.404 }, { lat: -41.195, lon: 12.4041 }] },
]

const EXTREMES = [
  0, 1e-310, 5e-324, 1e-12, 1e-6, 0.001, 0.01, 0.5, 0.9, 0.999, 1, -1, 10, 90, -90, -180, 179.999, 359.999, 1e4, 1e5,
  1e6, 1e9, 1e12, -1e12, 1e15, 1e300, -1e300,
]

/** Every figure of the plan's records in turn replaced by each of these, as far as the shapes take it. */
function* taken(plan: ReturnType<typeof examplePlan>, values: readonly number[]) {
  for (const path of figures(plan.shoot)) {
    for (const value of values) {
      const read = shootShape.safeParse(withFigure(plan.shoot, path, value))
      if (read.success) yield { where: `${path.join('.')} = ${value}`, plan: planOf(read.data, plan.spot) }
    }
  }
  for (const path of figures(plan.spot)) {
    for (const value of values) {
      const read = spotShape.safeParse(withFigure(plan.spot, path, value))
      if (read.success) yield { where: `${path.join('.')} = ${value}`, plan: planOf(plan.shoot, read.data) }
    }
  }
}

describe('whatever figure is taken', () => {
  test.each(LANDMARKS.map((landmark) => [landmark.kind, landmark] as const))(
    'gives an answer of figures alone: before a landmark of the kind %s',
    (_kind, landmark) => {
      const wrong: string[] = []
      for (const { where, plan } of taken(examplePlan({ landmark }), EXTREMES)) {
        const found = notFinite(assess(plan))
        if (found !== null) wrong.push(`${where}: ${found}`)
      }
      expect(wrong).toEqual([])
    },
  )

  test('is no figure that shuts the board: sizes of nothing and a light that goes round the earth are not taken', () => {
    const { shoot, spot } = examplePlan()
    const takes = (path: Path, figure: number): boolean =>
      (path[0] === 'spot'
        ? spotShape.safeParse(withFigure(spot, path.slice(1), figure))
        : shootShape.safeParse(withFigure(shoot, path, figure))
      ).success
    expect(takes(['subject', 'length'], 1e-310)).toBe(false)
    expect(takes(['subject', 'height'], 0.02)).toBe(true)
    expect(takes(['refraction'], 1)).toBe(false)
    expect(takes(['refraction'], 0.25)).toBe(true)
    expect(takes(['crops', 0, 'wide'], 1e-300)).toBe(false)
    expect(takes(['landmarks', 0, 'width'], 1e-9)).toBe(false)
    expect(takes(['madeAt'], 9e15)).toBe(false)
    expect(takes(['spot', 'rank'], 1e308)).toBe(false)
  })

  test.each(['2026-02-30', '2026-13-01', '0000-00-00', '2026-6-1', ''])('%s is no day', (day) => {
    const { spot } = examplePlan()
    const until = { ...spot, permission: { ...spot.permission, until: day } }
    expect(spotShape.safeParse(until).success).toBe(false)
    expect(spotShape.safeParse({ ...until, permission: { ...spot.permission, until: '2026-02-28' } }).success).toBe(
      true,
    )
  })

  test('settings hold no heap of templates', () => {
    const heap = Object.fromEntries(Array.from({ length: 101 }, (_, at) => [`source-${at}`, 'x']))
    expect(settingsShape.safeParse({ ...DEFAULT_SETTINGS, templates: heap }).success).toBe(false)
    expect(settingsShape.safeParse({ ...DEFAULT_SETTINGS, templates: { ['x'.repeat(101)]: '' } }).success).toBe(false)
  })
})

describe('a record of an older version with a figure beyond', () => {
  test('is brought to the nearest that can be, told, and all else is as it was', () => {
    const { shoot } = examplePlan()
    const old = { ...shoot, refraction: 1, subject: { ...shoot.subject, length: 1e-310 }, unknown: 'kept' }
    const { value, mended } = mendFigures(shootShape, old)
    expect(value).toEqual({ ...old, refraction: 0.9, subject: { ...shoot.subject, length: 0.01 } })
    expect(mended.toSorted((one, other) => one.field.localeCompare(other.field))).toEqual([
      { field: 'refraction', now: 0.9 },
      { field: 'subject.length', now: 0.01 },
    ])
    expect(shootShape.safeParse(value).success).toBe(true)
  })

  test('is never moved to another place, nor is anything invented for what is no figure', () => {
    const { spot } = examplePlan()
    const elsewhere = { ...spot, stop: { ...spot.stop, at: { lat: 91, lon: 12 } } }
    expect(mendFigures(spotShape, elsewhere)).toEqual({ value: elsewhere, mended: [] })
    const other = { ...spot, shot: { ...spot.shot, focalLength: 'long' } }
    expect(mendFigures(spotShape, other)).toEqual({ value: other, mended: [] })
  })

  test('fits afterwards, whichever figure of a record it is', () => {
    const { spot } = examplePlan()
    const paths = figures(spot).filter((path) => !['lat', 'lon', 'heading'].includes(String(path.at(-1))))
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.double({ noNaN: true, noDefaultInfinity: true }), (path, figure) => {
        const whole = ['when', 'stars', 'revision'].includes(String(path.at(-1))) ? Math.trunc(figure) : figure
        if (!Number.isSafeInteger(whole) && whole !== figure) return
        if (!Number.isSafeInteger(whole) && ['when', 'stars', 'revision'].includes(String(path.at(-1)))) return
        expect(spotShape.safeParse(mendFigures(spotShape, withFigure(spot, path, whole)).value).success).toBe(true)
      }),
    )
  })
})
