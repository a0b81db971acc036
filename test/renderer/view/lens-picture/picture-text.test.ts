/** The picture's words say what light there is. */
import { expect, test } from 'vitest'
import { type Assessment, assess } from '#core/plan/assess.ts'
import type { LightReading } from '#core/plan/light-reading.ts'
import { describe as say, describeLight } from '#renderer/view/lens-picture/picture-text.ts'
import { examplePlan } from '#test/help/plans.ts'

const plan = examplePlan()
const found = assess(plan)

function lit(light: Partial<LightReading>): Assessment {
  return { ...found, light: { ...found.light, ...light } }
}

const out = { ...found.light.moon, inFrame: { at: null, within: -60 } }
const sun = { ...found.light.sun, up: true, inFrame: { at: null, within: -60 } }

test('where the sun comes from and what of the subject it lights', () => {
  const subject = { ...found.light.subject, lit: 0.84 }
  const from = { side: 'side', hand: 'left', angle: 74 } as const
  const light = lit({ sun, moon: out, from, subject })
  expect(describeLight(plan, light)).toBe(
    'Sun from the left, 74° off the camera axis. Cargo bicycle: 84\u{a0}% of the sides in view lit.',
  )
  expect(say(plan, light)).toContain('from the left')
})

test('that it is down, hidden, or in the frame', () => {
  const down = { ...sun, up: false, apparent: -4.2 }
  expect(describeLight(plan, lit({ sun: down, moon: out, from: null }))).toBe('The sun is down, 4° below the horizon.')
  const clouded = examplePlan({ shoot: { sky: 'overcast' } })
  expect(describeLight(clouded, lit({ sun, moon: out }))).toMatch(/^Overcast: soft light/u)
  const inside = { ...sun, inFrame: { at: { x: 0, y: 0.2 }, within: 3 } }
  expect(describeLight(plan, lit({ sun: inside, moon: out }))).toContain('The sun is in the frame.')
})
