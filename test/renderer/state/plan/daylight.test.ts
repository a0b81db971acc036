/** The day's sky is looked up again for another place, while a hand drags only for one that matters, and exactly once it lets go. */
import { beforeEach, expect, test, vi } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import { skyOfDay } from '#core/plan/day-light.ts'
import { examplePlan } from '#test/help/plans.ts'

vi.mock('#renderer/host/host.ts', () => ({
  ask: () => Promise.resolve({ ok: false, fault: { reason: 'none', message: 'nobody is asked' } }),
  readBytes: () => Promise.resolve(null),
}))

const { endLive, showLive, showRecords } = await import('#renderer/state/library/library.ts')
const { day, daylight } = await import('#renderer/state/plan/daylight.ts')

const { shoot, spot } = examplePlan()

function at(metres: number) {
  return { ...spot, stop: { ...spot.stop, at: destination(spot.stop.at, 90, metres) } }
}

/** Milliseconds since 1970 of the day's first sunrise as the board has it. */
function rise(): number | undefined {
  return daylight.value?.sun.rise[0]
}

/** The same, worked out for the place itself. */
function riseAt(metres: number): number | undefined {
  if (day.value === null) throw new Error('there is no day')
  return skyOfDay(at(metres).stop.at, day.value).sun.rise[0]
}

beforeEach(() => {
  endLive()
  showRecords({ shoot, spots: [spot], spotId: spot.id })
})

test('a hand that drags a little leaves it, and its release has it exactly', () => {
  const before = rise()
  expect(before).toBe(riseAt(0))
  showLive(at(200), shoot)
  expect(rise()).toBe(before)
  showRecords({ spots: [at(200)] })
  endLive()
  expect(rise()).toBe(riseAt(200))
  expect(rise()).not.toBe(before)
})

test('a hand that drags far has it looked up on the way', () => {
  expect(rise()).toBe(riseAt(0))
  showLive(at(2_000), shoot)
  expect(rise()).toBe(riseAt(2_000))
})
