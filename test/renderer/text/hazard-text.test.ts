/** What was written about hazards reaches every list of them, whatever kinds are ticked. */
import { expect, test } from 'vitest'
import { lightCalendar } from '#renderer/page/days/light-calendar.ts'
import { hazardSentences, hazardsSeen } from '#renderer/text/hazard-text.ts'
import { spotWords } from '#renderer/words/en-spot.ts'
import { lightSceneOf } from '#core/plan/day-light.ts'
import { assess } from '#core/plan/assess.ts'
import { examplePlan } from '#test/help/plans.ts'

const { cautions, hazards } = spotWords
const CRANE = 'a crane swings over the wall'

test('the own words stand first and by themselves, with no kind ticked and with any', () => {
  expect(hazardSentences({ hazards: [], hazardNote: CRANE })).toEqual([CRANE])
  expect(hazardSentences({ hazards: ['water', 'traffic'], hazardNote: ` ${CRANE} ` })).toEqual([
    CRANE,
    cautions.traffic,
    cautions.water,
  ])
  expect(hazardSentences({ hazards: ['other'], hazardNote: CRANE })).toEqual([CRANE, cautions.other])
  expect(hazardSentences({ hazards: ['other'], hazardNote: ' ' })).toEqual([cautions.other])
  expect(hazardSentences({ hazards: [], hazardNote: '' })).toEqual([])
})

test('in short, the own words take the place of “other” and stand beside every other kind', () => {
  expect(hazardsSeen({ hazards: ['traffic'], hazardNote: CRANE })).toEqual([hazards.traffic, CRANE])
  expect(hazardsSeen({ hazards: ['other', 'rail'], hazardNote: CRANE })).toEqual([hazards.rail, CRANE])
  expect(hazardsSeen({ hazards: ['other'], hazardNote: '' })).toEqual([hazards.other])
})

test('a calendar entry carries the own words as well', () => {
  const plan = examplePlan({ spot: { hazards: ['edge'], hazardNote: CRANE } })
  const found = assess(plan)
  const windows = [{ from: plan.spot.when, until: plan.spot.when + 3_600_000 }]
  const scene = lightSceneOf(plan, found)
  const file = lightCalendar({ plan, found, scene, zone: 'UTC', windows, stamp: plan.spot.when })
  const text = file.ok ? file.value.replaceAll('\r\n ', '') : file.fault.message
  expect(text).toContain(CRANE)
  expect(text).toContain('Edges:')
})
