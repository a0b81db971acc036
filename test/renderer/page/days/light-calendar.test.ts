/** A calendar shows a window by its reader's own clock, so the entry's text has the clock of the spot. */
import { expect, test } from 'vitest'
import { assess } from '#core/plan/assess.ts'
import { lightSceneOf } from '#core/plan/day-light.ts'
import { lightCalendar } from '#renderer/page/days/light-calendar.ts'
import { examplePlan } from '#test/help/plans.ts'

test('the time at the spot, to whole minutes within the window', () => {
  const plan = examplePlan()
  const windows = [{ from: Date.UTC(2027, 5, 14, 17, 28, 20), until: Date.UTC(2027, 5, 14, 19, 35, 50) }]
  const found = assess(plan)
  const scene = lightSceneOf(plan, found)
  const file = lightCalendar({ plan, found, scene, zone: 'Etc/GMT+2', windows, stamp: plan.spot.when })
  expect(file.ok ? file.value : file.fault.message).toMatch(/DESCRIPTION:15:29–17:35 local time at the spot \(UTC−2\)/u)
})
