/** The figures side by side: each is told of its own spot, the best is marked where there is one, and the unknown is never best. */
import { describe, expect, test } from 'vitest'
import { assess } from '#core/plan/assess.ts'
import { dayLight } from '#core/plan/day-light.ts'
import { groundProfile } from '#core/plan/ground-profile.ts'
import { MOVES } from '#core/tolerance/moves.ts'
import type { Tolerances } from '#core/tolerance/tolerance.ts'
import type { Column } from '#renderer/page/compare/compare-row.ts'
import { compareRows } from '#renderer/page/compare/compare-rows.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { toleranceWords } from '#renderer/words/en-tolerance.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { spotWords } from '#renderer/words/en-spot.ts'
import { type PlanParts, ZOOM, bridgeAt, examplePlan } from '#test/help/plans.ts'
import { groundOf } from '#test/help/terrain.ts'

const { rows: names, groups } = sheetWords.compare
const HOUR = 3_600_000

function column(parts: PlanParts = {}, changes: Partial<Column> = {}): Column {
  const plan = examplePlan(parts)
  const assessment = assess(plan)
  return { plan, assessment, daylight: dayLight(plan, assessment, 'UTC'), tolerances: null, line: null, ...changes }
}

/** At this focal length, which is held while the fills follow. */
function at(focalLength: number, parts: PlanParts = {}): Column {
  return column({ ...parts, spot: { ...parts.spot, hold: 'focal-length' }, shot: { ...parts.shot, focalLength } })
}

function row(name: string, columns: readonly Column[], units: 'metric' | 'imperial' = 'metric') {
  const found = compareRows(columns, units).find((one) => one.name === name)
  if (found === undefined) throw new Error(`no row ${name}`)
  return { values: found.values.map((value) => value.replaceAll('\u{a0}', ' ')), ...found.compared }
}

describe('the table', () => {
  test('has each row once, all of a question together, as many values as spots', () => {
    const rows = compareRows([column(), column(), column()], 'metric')
    expect(new Set(rows.map(({ name }) => name)).size).toBe(rows.length)
    const order = rows.map(({ group }) => group).filter((group, index, all) => group !== all[index - 1])
    expect(order).toEqual(Object.keys(groups))
    expect(rows.every(({ values, compared }) => values.length === 3 && compared.best.length === 3)).toBe(true)
  })

  test('of one and the same spot marks nothing as best and all as alike that is known', () => {
    const rows = compareRows([column(), column()], 'metric')
    expect(rows.flatMap(({ compared }) => compared.best).every((best) => !best)).toBe(true)
    const differing = rows.filter(({ compared }) => !compared.alike)
    // Two unknowns may be anything, so they don't count as alike.
    expect(differing.every(({ values }) => new Set(values).size === 1)).toBe(true)
  })
})

describe('the lens', () => {
  test('distances and bearing are those of the plan, in the units asked for', () => {
    const columns = [column({ distance: 7, bearing: 40 }), column({ distance: 9, bearing: 100 })]
    expect(row(names.toSubject, columns)).toEqual({ values: ['7 m', '9 m'], alike: false, best: [false, false] })
    expect(row(names.toSubject, columns, 'imperial').values).toEqual(['23 ft', '29.5 ft'])
    expect(row(names.toLandmark, columns).values).toEqual(['600 m', '600 m'])
    expect(row(names.bearing, columns).values.map((value) => Number.parseInt(value, 10))).toEqual([40, 100])
  })

  test('a landmark that is not there is unknown and outside, and the other one is the best', () => {
    const columns = [column({ landmark: null }), at(24)]
    expect(row(names.toLandmark, columns)).toMatchObject({
      values: [sheetWords.unknown, '600 m'],
      best: [false, false],
    })
    expect(row(names.bearing, columns).values[0]).toBe(sheetWords.unknown)
    expect(row(names.landmarkFill, columns).values[0]).toBe(sheetWords.unknown)
    const { values, best } = row(names.landmarkWhole, columns)
    expect(values).toEqual([sheetWords.compare.outside, sheetWords.compare.whole])
    expect(best).toEqual([false, true])
  })

  test('a landmark of which a part is cut is better than none and worse than all of it', () => {
    const columns = [column({ landmark: null }), at(70), at(24)]
    const { values, best } = row(names.landmarkWhole, columns)
    expect(values).toEqual([sheetWords.compare.outside, sheetWords.compare.cut, sheetWords.compare.whole])
    expect(best).toEqual([false, false, true])
  })

  test('the fill is of the side on which it is wished', () => {
    const [wide = '', high = ''] = row(names.subjectFill, [
      at(50, { shot: { subjectFill: { share: 0.5, axis: 'width' } } }),
      at(50, { shot: { subjectFill: { share: 0.5, axis: 'height' } } }),
    ]).values
    expect(wide).toMatch(/^\d+ % of the width$/)
    expect(high).toMatch(/^\d+ % of the height$/)
    // Side on: 2.5 m by 1.2 m on a frame of 3 : 2, so it takes more of the width, about 2.5 / 3 against 1.2 / 2.
    expect(Number.parseInt(wide, 10) / Number.parseInt(high, 10)).toBeCloseTo(2.5 / 3 / (1.2 / 2), 1)
  })

  test('a lens that is in the bag is better than one that is not', () => {
    const { values, best } = row(names.reaches, [
      column({ lenses: [] }),
      at(200, { lenses: [ZOOM] }),
      at(50, { lenses: [ZOOM] }),
    ])
    expect(values).toEqual(['no', 'no', 'yes'])
    expect(best).toEqual([false, false, true])
    expect(row(names.lens, [column({ lenses: [] }), column()]).values).toEqual([sheetWords.noLens, ZOOM.name])
  })

  test('the proportion is told to two places', () => {
    expect(row(names.proportion, [column()]).values[0]).toMatch(/^\d+\.\d\d : 1$/)
    expect(row(names.proportion, [column({ landmark: null })]).values).toEqual([sheetWords.unknown])
  })
})

describe('sharpness', () => {
  test('the wider aperture that holds it end to end is the better', () => {
    const near = at(50, { distance: 4 })
    const far = at(50, { distance: 12 })
    const { values, best } = row(names.aperture, [near, far])
    const [one, other] = values.map((value) => Number(value.replace('f/', '')))
    expect(one).toBeGreaterThan(other ?? Number.NaN)
    expect(best).toEqual([false, true])
  })

  test('the larger blur of the landmark is the better', () => {
    const { best } = row(names.blur, [at(50, { shot: { aperture: 11 } }), at(50, { shot: { aperture: 2.8 } })])
    expect(best).toEqual([false, true])
    expect(row(names.blur, [column({ landmark: null })]).values).toEqual([sheetWords.unknown])
  })
})

describe('light', () => {
  test('the planned hour stands by each spot’s own clock', () => {
    const plan = examplePlan({ spot: { when: Date.UTC(2026, 5, 14, 15, 30) } })
    const assessment = assess(plan)
    const at = (zone: string): Column => column({}, { plan, assessment, daylight: dayLight(plan, assessment, zone) })
    expect(row(names.when, [at('UTC'), at('Etc/GMT+2')]).values).toEqual([
      '14 Jun 2026, 15:30 UTC',
      '14 Jun 2026, 13:30 UTC−2',
    ])
  })

  test('without a wish there is no window, and of two the longer is the better', () => {
    expect(row(names.window, [column()]).values).toEqual([sheetWords.compare.none])
    const hours = (from: number, until: number): PlanParts => ({
      shoot: { light: { ...examplePlan().shoot.light, hours: { from, until } } },
    })
    const { values, best } = row(names.window, [column(hours(600, 660)), column(hours(600, 720))])
    expect(values).toEqual(['10:00–11:00', '10:00–12:00'])
    expect(best).toEqual([false, true])
  })

  test('a wish that never holds on that day says so and is not the best', () => {
    const light = { ...examplePlan().shoot.light, altitude: { least: 89, most: 90 } }
    const some = column({ shoot: { light: { ...light, altitude: { least: 0, most: 90 } } } })
    const { values, best } = row(names.window, [column({ shoot: { light } }), some])
    expect(values[0]).toBe(sheetWords.light.noWindow)
    expect(best).toEqual([false, true])
  })

  test('of no landmark no light is told', () => {
    expect(row(names.landmarkLit, [column({ landmark: null })]).values).toEqual([sheetWords.unknown])
  })

  test('at night the shutter is unknown', () => {
    const night = column({ spot: { when: Date.UTC(2026, 5, 14, 0) } })
    expect(row(names.exposure, [night]).values).toEqual([sheetWords.unknown])
  })
})

describe('the ground', () => {
  const CENTRE = { lat: -41.2, lon: 12.4 }
  /** A wall of ground across the way, so many metres high, 300 m off; level else. */
  function behindRise(height: number): Column {
    const terrain = groundOf(
      301,
      10,
      (east, north) => (Math.abs(Math.hypot(east, north) - 300) < 15 ? 12 + height : 12),
      CENTRE,
    )
    // The bridge stands on the same level ground.
    const landmark = { ...bridgeAt(CENTRE, 40, 600), baseElevation: 12 }
    const plan = { ...examplePlan({ landmark }), terrain }
    const assessment = assess(plan)
    const daylight = dayLight(plan, assessment, 'UTC')
    return { plan, assessment, daylight, tolerances: null, line: groundProfile(plan, assessment.levels) }
  }

  test('without elevations nothing is told and nothing is best', () => {
    const { shown, hidden, clearance, first, last, level, slope } = groundWords.rows
    const bare = column({ spot: { stop: { ...examplePlan().spot.stop, elevation: null } } })
    for (const name of [shown, hidden, clearance, first, last, level, slope])
      expect(row(name, [bare]).values, name).toEqual([sheetWords.unknown])
  })

  test('less hidden and more shown are better', () => {
    const columns = [behindRise(0), behindRise(20)]
    const hidden = row(groundWords.rows.hidden, columns)
    expect(hidden.values[0]).toBe(groundWords.rows.nothing)
    expect(hidden.best).toEqual([true, false])
    const shown = row(groundWords.rows.shown, columns)
    expect(shown.values[0]).toBe(groundWords.all.toLowerCase())
    expect(shown.best).toEqual([true, false])
  })

  test('a line that is clear is better than one that is cut', () => {
    const { values, best } = row(groundWords.rows.clearance, [behindRise(0), behindRise(20)])
    expect(values[1]).toContain('under the ground')
    expect(best).toEqual([true, false])
  })

  test('first and last sun compare by the hour of their own day', () => {
    const sunned = (day: number, from: number, until: number): Column => {
      const one = column({ spot: { when: Date.UTC(2026, 5, day, 12) } })
      const { start } = one.daylight.day
      const subject = [{ from: start + from * HOUR, until: start + until * HOUR }]
      return { ...one, daylight: { ...one.daylight, direct: { subject, landmark: null, lens: null } } }
    }
    const columns = [sunned(14, 8, 15), sunned(20, 8, 16)]
    expect(row(groundWords.rows.first, columns)).toMatchObject({ values: ['08:00', '08:00'], alike: true })
    expect(row(groundWords.rows.last, columns)).toMatchObject({ values: ['15:00', '16:00'], alike: false })
  })

  test('a measured level is told with its source', () => {
    expect(row(groundWords.rows.level, [column()]).values[0]).toBe(
      groundWords.rows.sourced('12 m', groundWords.under.sources.measured),
    )
  })
})

describe('how far off it may be', () => {
  const name = toleranceWords.compare.row
  const free = Object.fromEntries(
    MOVES.map((move) => [move, { offset: null, limit: 50, fails: null }]),
  ) as unknown as Tolerances
  const fails = { kind: 'subject-whole', how: 'cut-left' } as const

  test('is nothing while nothing is framed, and loose is the best', () => {
    const tight: Tolerances = { ...free, 'camera-left': { offset: 0.5, limit: 50, fails } }
    const { values, best } = row(name, [
      column(),
      column({}, { tolerances: { held: [], failing: [], tolerances: tight } }),
      column({}, { tolerances: { held: [], failing: [], tolerances: free } }),
    ])
    expect(values[0]).toBe(toleranceWords.compare.notFramed)
    expect(values[1]).toContain('0.5 m')
    expect(values[2]).toBe(toleranceWords.compare.loose)
    expect(best).toEqual([false, false, true])
  })

  test('an offset that is easily made is tighter than a longer one of another kind', () => {
    // A step of 1 m against five minutes of ten: the clock is the tighter, though its figure is larger.
    const step: Tolerances = { ...free, 'camera-left': { offset: 1, limit: 50, fails } }
    const clock: Tolerances = { ...free, later: { offset: 300, limit: 21_600, fails } }
    const { best } = row(name, [
      column({}, { tolerances: { held: [], failing: [], tolerances: step } }),
      column({}, { tolerances: { held: [], failing: [], tolerances: clock } }),
    ])
    expect(best).toEqual([true, false])
  })
})

describe('getting there', () => {
  const spot = (parts: PlanParts['spot']): Column => column(parts === undefined ? {} : { spot: parts })
  const access = (walkMinutes: number | null, surface = ''): Column =>
    spot({ access: { parking: null, walkMinutes, surface } })

  test('the shorter walk is the better, one that is not known never', () => {
    expect(row(names.walk, [access(6), access(2), access(null)])).toEqual({
      values: ['6 min', '2 min', sheetWords.unknown],
      alike: false,
      best: [false, true, false],
    })
    expect(row(names.walk, [access(6), access(null)]).best).toEqual([false, false])
    expect(row(names.surface, [access(1, 'gravel'), access(1)]).values).toEqual(['gravel', sheetWords.unknown])
  })

  test('permission is told with whom to ask', () => {
    const told = (whom: string) => spot({ permission: { state: 'to-ask', whom, until: null } })
    expect(row(names.permission, [told('Harbour office'), told('')]).values).toEqual([
      `${spotWords.permissions['to-ask']} · Harbour office`,
      spotWords.permissions['to-ask'],
    ])
  })

  test('hazards are listed; none noted is not the same as none', () => {
    expect(row(names.hazards, [spot({ hazards: ['rail', 'water'] }), spot({ hazards: [] })]).values).toEqual([
      `${spotWords.hazards.rail}, ${spotWords.hazards.water}`,
      'none noted',
    ])
  })

  test('more stars are better, and a status is only told', () => {
    expect(row(names.stars, [spot({ stars: 0 }), spot({ stars: 3 })])).toEqual({
      values: [spotWords.noStars, '★★★'],
      alike: false,
      best: [false, true],
    })
    expect(row(names.status, [spot({ status: 'chosen' }), spot({ status: 'idea' })])).toEqual({
      values: ['chosen', 'idea'],
      alike: false,
      best: [false, false],
    })
  })
})
