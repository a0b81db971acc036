/** Spots outside the board are assessed once for each change that an assessment goes by, and not at all for any other. */
import { beforeEach, describe, expect, test, vi } from 'vitest'
import { assess } from '#core/plan/assess.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { examplePlan } from '#test/help/plans.ts'

vi.mock('#core/plan/assess.ts', async (original) => {
  const module = await original<typeof import('#core/plan/assess.ts')>()
  return { ...module, assess: vi.fn(module.assess) }
})
vi.mock('#renderer/host/host.ts', () => ({
  ask: () => Promise.resolve({ ok: false, fault: { reason: 'none', message: 'nobody is asked' } }),
  readBytes: () => Promise.resolve(null),
}))

const { BESIDE_SHOOT, BESIDE_SPOT, assessmentOf, daylightOf, groundLineOf } =
  await import('#renderer/state/plan/assessments.ts')
const { tolerancesAtLeisure, tolerancesFor } = await import('#renderer/state/plan/shelf-tolerances.ts')

function times(): number {
  return vi.mocked(assess).mock.calls.length
}

/** All that a column side by side tells. */
function column(plan: Plan): readonly unknown[] {
  return [assessmentOf(plan), daylightOf(plan, 'UTC'), tolerancesFor(plan, 'UTC'), groundLineOf(plan)]
}

beforeEach(() => void vi.mocked(assess).mockClear())

test('a status, stars, notes or a name leave everything as it was', () => {
  const { shoot, spot } = examplePlan()
  const before = column(planOf(shoot, spot))
  vi.mocked(assess).mockClear()
  const marked: Spot = { ...spot, status: 'chosen', stars: 4, notes: 'at low water', name: 'Pier', hazards: ['water'] }
  const renamed: Shoot = { ...shoot, name: 'Autumn' }
  expect(column(planOf(renamed, marked))).toEqual(before)
  expect(assessmentOf(planOf(renamed, marked))).toBe(before[0])
  expect(times()).toBe(0)
})

test('a change of one spot has that spot assessed once, its neighbours not', () => {
  const { shoot, spot } = examplePlan()
  const others = [1, 2, 3].map((number) => ({
    ...spot,
    id: `other-${number}`,
    stop: { ...spot.stop, heading: number },
  }))
  for (const each of [spot, ...others]) assessmentOf(planOf(shoot, each))
  vi.mocked(assess).mockClear()
  const raised = { ...spot, standpoint: { ...spot.standpoint, lensHeight: 2 } }
  for (const each of [raised, ...others]) assessmentOf(planOf(shoot, each))
  assessmentOf(planOf(shoot, raised))
  expect(times()).toBe(1)
})

test('a copy shares the assessment until it is moved, and both keep theirs', () => {
  const { shoot, spot } = examplePlan()
  const copy = { ...spot, id: 'copy', name: 'Copy' }
  expect(assessmentOf(planOf(shoot, copy))).toBe(assessmentOf(planOf(shoot, spot)))
  const moved = { ...copy, standpoint: { ...copy.standpoint, lensHeight: 2 } }
  vi.mocked(assess).mockClear()
  for (let round = 0; round < 3; round += 1) {
    assessmentOf(planOf(shoot, spot))
    assessmentOf(planOf(shoot, moved))
  }
  expect(times()).toBe(1)
})

test('how far off it may be is worked out beside everything else, and once', async () => {
  const { shoot, spot } = examplePlan()
  const plan = planOf(shoot, { ...spot, stop: { ...spot.stop } })
  expect(tolerancesAtLeisure(plan, 'UTC')).toBe('working')
  await expect.poll(() => tolerancesAtLeisure(plan, 'UTC')).not.toBe('working')
  expect(tolerancesAtLeisure(plan, 'UTC')).toEqual(tolerancesFor(plan, 'UTC'))
  vi.mocked(assess).mockClear()
  tolerancesAtLeisure(planOf({ ...shoot }, { ...plan.spot, status: 'dropped' }), 'UTC')
  expect(times()).toBe(0)
})

/** A record that tells when something is read of it that an assessment is said not to go by. */
function guarded<Record extends object>(record: Record, beside: ReadonlySet<string>, read: Set<string>): Record {
  return new Proxy(record, {
    get(target, name, self) {
      if (typeof name === 'string' && beside.has(name)) read.add(name)
      return Reflect.get(target, name, self) as unknown
    },
  })
}

describe('an assessment goes by nothing that is left out', () => {
  test.each([
    ['before a bridge', examplePlan()],
    ['without a landmark', examplePlan({ landmark: null })],
    ['with the proportion held', examplePlan({ spot: { hold: 'proportion' } })],
  ])('%s', (_, { shoot, spot, landmark, terrain, pins }) => {
    const read = new Set<string>()
    const plan = {
      shoot: guarded(shoot, BESIDE_SHOOT, read),
      spot: guarded(spot, BESIDE_SPOT, read),
      landmark,
      terrain,
      pins,
    }
    const found = assess(plan)
    expect([...read]).toEqual([])
    expect(found).toEqual(assess(planOf(shoot, spot)))
  })
})
