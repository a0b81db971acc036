/** The light that is asked, and how each wish fails: told from the sun's own place, not from the margin. */
import { describe, expect, test } from 'vitest'
import { type LightWishes, NO_WISHES } from '#core/light/light-wish.ts'
import { lookAtSun } from '#core/light/wish-margin.ts'
import { assess } from '#core/plan/assess.ts'
import { lightSceneOf } from '#core/plan/day-light.ts'
import { lightAsked, lightHow, heldMargin } from '#core/tolerance/light-condition.ts'
import type { How } from '#core/tolerance/condition.ts'
import { examplePlan } from '#test/help/plans.ts'

const MORNING = Date.UTC(2026, 5, 14, 9)
const NIGHT = Date.UTC(2026, 5, 14, 0)
const { azimuth: SUN, altitude: HEIGHT } = lookAtSun(examplePlan().spot.stop.at, MORNING)

/** What is asked of the light looking along a bearing told from the sun's: 0 into the sun, 180 with the sun behind the camera. */
function asked(wishes: Partial<LightWishes>, fromSun = 180, instant = MORNING) {
  const plan = examplePlan({ bearing: SUN + fromSun, spot: { when: instant } })
  const scene = lightSceneOf(plan, assess(plan))
  const sun = lookAtSun(scene.at, instant)
  return lightAsked({ ...NO_WISHES, ...wishes }, scene, 'in-frame', instant, sun).map((one) => ({
    kind: one.kind,
    margin: heldMargin(one, scene, instant, sun),
    how: (): How => lightHow(one, scene, sun),
  }))
}

function failing(wishes: Partial<LightWishes>, fromSun?: number, instant?: number): How[] {
  return asked(wishes, fromSun, instant)
    .filter(({ margin }) => margin < 0)
    .map(({ how }) => how())
}

describe('what is asked of the light', () => {
  test('without a wish is that a lit thing stays lit, one merely in the sun stays in it, and at night nothing', () => {
    expect(asked({}, 180).map(({ kind }) => kind)).toEqual(['subject-light', 'landmark-light'])
    expect(asked({}, 0).map(({ kind }) => kind)).toEqual(['subject-sun', 'landmark-sun'])
    expect(asked({}, 180, NIGHT)).toEqual([])
  })

  test('is nothing of a landmark that is not there, and of one outside the frame its wish alone', () => {
    const plan = examplePlan({ spot: { when: MORNING } })
    const scene = lightSceneOf(plan, assess(plan))
    const sun = lookAtSun(scene.at, MORNING)
    const kinds = (landmark: 'none' | 'out-of-frame', wishes: Partial<LightWishes>): string[] =>
      lightAsked({ ...NO_WISHES, subject: 'lit', ...wishes }, scene, landmark, MORNING, sun).map(({ kind }) => kind)
    expect(kinds('none', { landmark: 'lit' })).toEqual(['subject-light'])
    expect(kinds('out-of-frame', { landmark: 'lit' })).toEqual(['subject-light', 'landmark-light'])
    expect(kinds('out-of-frame', {})).toEqual(['subject-light'])
  })

  test('is the wish alone where one is made', () => {
    expect(asked({ subject: 'in-shade', landmark: 'raking' }).map(({ kind }) => kind)).toEqual([
      'subject-light',
      'landmark-light',
    ])
    expect(asked({ soft: 'either', moonUp: true }, 180, NIGHT).map(({ kind }) => kind)).toEqual(['soft', 'moonUp'])
  })
})

describe('how it fails', () => {
  test.each<[string, Partial<LightWishes>, number, number, How[]]>([
    ['lit, against the light', { subject: 'lit' }, 0, MORNING, ['in-shade']],
    ['lit, at night', { subject: 'lit', landmark: 'lit' }, 180, NIGHT, ['sun-down', 'sun-down']],
    ['in shade, with the sun behind the camera', { subject: 'in-shade' }, 180, MORNING, ['sunlit']],
    ['in shade, at night', { subject: 'in-shade' }, 180, NIGHT, ['sun-down']],
    ['back-lit, with the sun behind the camera', { subject: 'back-lit' }, 180, MORNING, ['not-behind']],
    ['back-lit, at night', { subject: 'back-lit' }, 0, NIGHT, ['sun-down']],
    ['raking, with the sun square on', { landmark: 'raking' }, 180, MORNING, ['too-square']],
    ['raking, against the light', { landmark: 'raking' }, 0, MORNING, ['in-shade']],
    ['low sun, when it is high', { altitude: { least: 0, most: HEIGHT / 2 } }, 180, MORNING, ['sun-too-high']],
    ['high sun, when it is low', { altitude: { least: HEIGHT * 2, most: 89 } }, 180, MORNING, ['sun-too-low']],
    ['the sun in the frame, behind the camera', { sun: 'in-frame' }, 180, MORNING, ['sun-out-of-frame']],
    ['the sun in the frame, at night', { sun: 'in-frame' }, 180, NIGHT, ['sun-down']],
    ['soft light, by day', { soft: 'either' }, 180, MORNING, ['not-soft']],
    // New moon was on 15 June 2026 (USNO): at midnight it is under the ground with the sun.
    ['a moon, at new moon by night', { moonUp: true }, 180, NIGHT, ['moon-down']],
  ])('%s', (_, wishes, fromSun, instant, how) => {
    const found = failing({ subject: 'lit', ...wishes }, fromSun, instant)
    const own = wishes.subject === undefined ? failing({ subject: 'lit' }, fromSun, instant) : []
    expect(found.slice(own.length)).toEqual(how)
  })

  test('the sun within a frame that it is wished out of', () => {
    const plan = examplePlan({ bearing: SUN, shot: { placement: { across: 0, up: -0.4 } }, spot: { when: MORNING } })
    const found = assess(plan)
    const scene = lightSceneOf(plan, found)
    const sun = lookAtSun(scene.at, MORNING)
    const [one] = lightAsked({ ...NO_WISHES, sun: 'out-of-frame' }, scene, 'none', MORNING, sun)
    expect(found.light.sun.inFrame?.within).toBeGreaterThan(0)
    expect(one && heldMargin(one, scene, MORNING, sun)).toBeLessThan(0)
    expect(one && lightHow(one, scene, sun)).toBe('sun-in-frame')
  })
})
