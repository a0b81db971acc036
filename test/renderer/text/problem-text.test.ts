/** Every problem has a sentence with its names and figures, under exactly one question. */
import { describe, expect, test } from 'vitest'
import { assess } from '#core/plan/assess.ts'
import { newLandmark, newShoot, newSpot } from '#core/record/new-records.ts'
import { planOf } from '#core/plan/plan.ts'
import { wishedProportion } from '#core/plan/proportion-ring.ts'
import { diffractionText, lensNote, problemParts, problemSentences } from '#renderer/text/problem-text.ts'
import { words } from '#renderer/words/en.ts'

const AT = { lat: 46.4, lon: -33.6 }
const empty = newShoot('shoot', 'lens', 0)
const tower = { ...newLandmark('tower', 'upright', { lat: 46.41, lon: -33.6 }), name: 'Old Light' }
const shoot = { ...empty, landmarks: [tower] }
const spot = newSpot('spot', shoot, AT, 1, 0)

function sentences(plan: ReturnType<typeof planOf>): string[] {
  const found = assess(plan)
  return (['lens', 'sharp', 'where'] as const).flatMap((place) => problemSentences(plan, found, 'metric', place))
}

describe('every problem', () => {
  const plan = planOf(shoot, spot)
  const parts = problemParts(plan, assess(plan), 'metric')
  test.each(Object.entries(words.problems))('%s says what to do, without holes', (_problem, say) => {
    const text = say(parts)
    expect(text).not.toMatch(/undefined|null|NaN|\[object/u)
    expect(text.endsWith('.')).toBe(true)
    expect(text.length).toBeGreaterThan(40)
  })
})

test('diffraction is told from a stop that a lens has', () => {
  expect(diffractionText({ diffractionFrom: 21.4 })).toBe('f/22')
  expect(diffractionText({ diffractionFrom: 14.9 })).toBe('f/16')
  expect(diffractionText({ diffractionFrom: 90 })).toBe('f/90')
})

test('each problem found is told once', () => {
  const same = planOf(shoot, { ...spot, standpoint: { ...spot.standpoint, at: AT } })
  const found = assess(same)
  expect(found.problems).toContain('on-top-of-each-other')
  expect(sentences(same)).toHaveLength(new Set(found.problems).size)
})

describe('a held proportion that is not kept', () => {
  const held = { ...spot, hold: 'proportion' as const }

  test('is told with both figures, though the difference be small', () => {
    const here = assess(planOf(shoot, held)).proportion ?? Number.NaN
    const told = (times: number): string | undefined => {
      const { landmarkFill } = held.shot
      const share = landmarkFill.share * times * (here / wishedProportion(planOf(shoot, held)))
      const shot = { ...held.shot, landmarkFill: { ...landmarkFill, share } }
      return sentences(planOf(shoot, { ...held, shot })).find((text) => text.startsWith('The proportion is not held'))
    }
    expect(told(1)).toBeUndefined()
    expect(told(1.1)).toMatch(/Old Light should be [\d.]+ times the size of .+ and is [\d.]+ times\. Move the camera/u)
    expect(told(1.00001)).toMatch(/Old Light comes close to [\d.]+ times the size/u)
  })

  test('is not told besides what causes it', () => {
    // Between the two: the landmark is behind the camera.
    const between = { ...held.standpoint, at: { lat: (AT.lat + 46.41) / 2, lon: AT.lon } }
    const plan = planOf(shoot, { ...held, standpoint: between })
    expect(assess(plan).problems).toEqual(expect.arrayContaining(['landmark-behind-camera', 'proportion-not-held']))
    const all = sentences(plan)
    expect(all.some((text) => text.includes('lies behind the camera'))).toBe(true)
    expect(all.some((text) => text.startsWith('The proportion is not held'))).toBe(false)
  })
})

test('no landmark, and an empty bag', () => {
  const bare = { ...empty, bag: { ...empty.bag, lenses: [] } }
  const all = sentences(planOf(bare, newSpot('spot', bare, AT, 1, 0)))
  expect(all.some((text) => text.startsWith('No landmark is chosen'))).toBe(true)
  expect(all.some((text) => text.startsWith('No lens is in the bag'))).toBe(true)
})

test('a fresh spot stands so that the landmark is behind the subject', () => {
  expect(assess(planOf(shoot, spot)).problems).not.toContain('landmark-behind-camera')
})

test('the lens note tells the setting', () => {
  const plan = planOf(shoot, spot)
  expect(lensNote(plan, assess(plan))).toMatch(/^24–70 mm f\/2.8, (?:set to|at its)/u)
})
