/** Every answer in one line, of the example plan and of plans in which something is wrong. */
import { expect, test } from 'vitest'
import { assess } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import {
  hazardGlance,
  lensGlance,
  lightGlance,
  marginGlance,
  permissionGlance,
  sharpGlance,
  spotGlance,
  wayGlance,
  whereGlance,
} from '#renderer/text/glance-text.ts'
import { glanceWords as say } from '#renderer/words/en-glance.ts'
import { metres, millimetres } from '#renderer/text/figure.ts'
import { examplePlan } from '#test/help/plans.ts'

const plan = examplePlan()
const found = assess(plan)

function withShot(shot: Partial<Plan['spot']['shot']>): Plan {
  return { ...plan, spot: { ...plan.spot, shot: { ...plan.spot.shot, ...shot } } }
}

test('the lens that is taken, by its focal length', () => {
  const { figure, wrong } = lensGlance(plan, found)
  expect(figure).toBe(millimetres(found.focalLength ?? Number.NaN))
  expect(wrong).toBeNull()
})

test('a subject cut by the frame and a bag without lenses are said in a word', () => {
  const near = {
    ...plan,
    spot: { ...plan.spot, shot: { ...plan.spot.shot, subjectFill: { axis: 'width', share: 1.4 } as const } },
  }
  expect(lensGlance(near, assess(near)).wrong).not.toBeNull()
  const empty = { ...plan, shoot: { ...plan.shoot, bag: { ...plan.shoot.bag, lenses: [] } } }
  expect(lensGlance(empty, assess(empty)).wrong).toBe(say.wrong['empty-bag'])
})

test('the depth of field, and what is not sharp', () => {
  const { sharp } = found
  if (sharp === null) throw new Error('the example is framed')
  expect(sharpGlance(found, 'metric').note).toContain(metres(sharp.limits.near, 'metric'))
  const open = withShot({ aperture: 1.4, focus: { on: 'near', behindFront: 0 } })
  const read = assess(open)
  expect(sharpGlance(read, 'metric').wrong === null).toBe(
    !read.problems.some((problem) =>
      ['aperture-outside-lens', 'not-sharp-end-to-end', 'diffraction'].includes(problem),
    ),
  )
})

test('without the day no window is claimed, nor room before it is worked out', () => {
  expect(lightGlance(plan, found, null, { kind: 'offset', minutes: 0 } as never).figure).toBe(say.unknown)
  expect(marginGlance(undefined, 'metric')).toEqual({ figure: say.unknown, note: say.working, wrong: null })
  expect(marginGlance(null, 'metric').note).toBe(say.notInFrame)
})

test('how far the camera stands off', () => {
  expect(whereGlance(plan, found, 'metric').figure).toBe(metres(found.toSubject.distance, 'metric'))
})

test('what is noted of the spot: the walk, the permission, hazards by name or number', () => {
  const { spot } = plan
  const access = { parking: null, walkMinutes: null, surface: '' }
  expect(wayGlance({ ...spot, access }).figure).toBe(say.notNoted)
  expect(wayGlance({ ...spot, access: { ...access, walkMinutes: 0 } }).figure).toBe(say.walk('0'))
  expect(wayGlance({ ...spot, access: { ...access, surface: ' gravel ' } }).note).toBe('gravel')
  expect(permissionGlance({ ...spot, permission: { state: 'refused', whom: '', until: null } }).wrong).toBe('')
  expect(permissionGlance({ ...spot, permission: { state: 'asked', whom: ' The farm ', until: null } })).toMatchObject({
    note: 'The farm',
    wrong: null,
  })
  expect(hazardGlance({ ...spot, hazards: [], hazardNote: '' }).figure).toBe(say.notNoted)
  expect(hazardGlance({ ...spot, hazards: ['water', 'edge'], hazardNote: '' }).figure).toBe('water, edge')
  expect(hazardGlance({ ...spot, hazards: ['water', 'edge', 'rail'], hazardNote: 'crane' })).toMatchObject({
    figure: say.hazards(3),
    note: 'crane',
  })
  expect(spotGlance({ ...spot, status: 'chosen', stars: 3 }).figure).toBe('chosen ★★★')
})
