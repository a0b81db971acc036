/** Where the ground toward the sun is not known, the sheet says so once, and elsewhere no more than that a time or the light is not sure. */
import { describe, expect, test } from 'vitest'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import { assess } from '#core/plan/assess.ts'
import { dayLight } from '#core/plan/day-light.ts'
import { inARow } from '#renderer/page/sheet/in-a-row.ts'
import { groundTexts } from '#renderer/page/sheet/ground-texts.ts'
import { lightRows } from '#renderer/page/sheet/sheet-light.tsx'
import { groundWords } from '#renderer/words/en-ground.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { examplePlan } from '#test/help/plans.ts'
import { groundOf } from '#test/help/terrain.ts'

const AT = { lat: 46.9, lon: 10.3 }
/** Known to 1,800 m around: beyond, mountains may stand before the sun. */
const near = groundOf(201, 18, () => 40, AT)
/** Known as far as anything is looked for. */
const far = groundOf(201, 2_000, () => 40, AT)

function rows(terrain: ElevationGrid): readonly (readonly [string, string])[] {
  const made = examplePlan({ at: AT, bearing: 270, shoot: { light: { ...NO_WISHES, subject: 'lit' } } })
  const plan = { ...made, spot: { ...made.spot, when: Date.UTC(2026, 5, 14, 7) }, terrain }
  const assessment = assess(plan)
  const props = { plan, assessment, daylight: dayLight(plan, assessment, 'UTC'), units: 'metric' } as const
  return [...lightRows(props), [groundWords.sheet.row, inARow(groundTexts({ ...props, groundMissing: 'none-known' }))]]
}

function row(title: string, terrain: ElevationGrid): string {
  return rows(terrain).find(([name]) => name === title)?.[1] ?? ''
}

const why = /toward the sun elevation data is missing/giu

describe('ground that is not known toward the sun', () => {
  test('is told once, in the row of the ground', () => {
    expect(rows(near).flatMap(([, text]) => text.match(why) ?? [])).toHaveLength(1)
    expect(row(groundWords.sheet.row, near)).toMatch(why)
  })

  test('leaves times the earliest and the latest that they can be', () => {
    expect(row(sheetWords.light.windows, near)).toMatch(/ \d\d:\d\d at the earliest–\d\d:\d\d/u)
    expect(row(groundWords.sheet.row, near)).toMatch(/direct sun .*at the earliest–\d\d:\d\d at the latest/u)
  })

  test('is a short doubt beside the light of the moment', () => {
    expect(row(sheetWords.light.atTime, near)).toContain(groundWords.sheet.unsureNow)
  })

  test('is nowhere told of where all of it is known', () => {
    for (const [, text] of rows(far)) expect(text).not.toMatch(/not known|at the (?:earliest|latest)/u)
  })

  test('stands in rows without a full stop before a dot', () => {
    for (const [, text] of rows(near)) expect(text).not.toMatch(/\. ·/u)
    expect(row(groundWords.sheet.row, near)).toMatch(/ · /u)
  })
})
