/** The ground side by side tells what the board tells: the same steps of elevations, the same tightest point. */
import { expect, test } from 'vitest'
import { assess } from '#core/plan/assess.ts'
import { dayLight } from '#core/plan/day-light.ts'
import { groundProfile } from '#core/plan/ground-profile.ts'
import { clearanceText, levelSourceAgainst } from '#renderer/text/ground-text.ts'
import type { Column } from '#renderer/page/compare/compare-row.ts'
import { GROUND_ROWS } from '#renderer/page/compare/ground-rows.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { examplePlan } from '#test/help/plans.ts'
import { groundOf } from '#test/help/terrain.ts'

const AT = { lat: 46.9, lon: 10.3 }
/** A source of 11.1 m cut into cells of 18 m, with a rise across the way. */
const terrain = {
  ...groundOf(201, 18, (_, north) => 40 + Math.max(0, 30 - Math.abs(north - 300) * 0.4), AT),
  step: 11.1,
}

function column(): Column {
  const made = examplePlan({ at: AT, bearing: 0 })
  const { stop, standpoint } = made.spot
  const spot = { ...made.spot, stop: { ...stop, elevation: null }, standpoint: { ...standpoint, elevation: null } }
  const plan = { ...made, spot, terrain }
  const assessment = assess(plan)
  const line = groundProfile(plan, assessment.levels)
  return { plan, assessment, daylight: dayLight(plan, assessment, 'UTC'), tolerances: null, line }
}

function said(name: string, of: Column): string | undefined {
  const read = GROUND_ROWS.find((row) => row.name === name)?.read(of, 'metric')
  return typeof read === 'string' ? read : read?.text
}

test('a level is told with the step of the source, not of the window’s cells', () => {
  const one = column()
  const level = said(groundWords.rows.level, one)
  expect(level).toContain(levelSourceAgainst(one.assessment.under.stop, 'metric'))
  expect(level).toMatch(/11\.1/u)
  expect(level).not.toMatch(/18/u)
})

test('the tightest point is named as such, and is the board’s', () => {
  const one = column()
  if (one.line === null) throw new Error('there is a way to the bridge')
  expect(groundWords.rows.clearance).toBe(groundWords.lineToFoot)
  expect(said(groundWords.rows.clearance, one)).toBe(clearanceText(one.plan, one.line, 'metric'))
})
