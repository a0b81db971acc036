/** What the board has found out about how far off its spot may be is not worked out again for the sheet or side by side. */
import { eventually } from '#test/help/eventually.ts'
import { put } from '#test/help/put.ts'
import { beforeEach, expect, test, vi } from 'vitest'
import { planTolerances, toleranceSteps } from '#core/tolerance/plan-tolerances.ts'
import { examplePlan } from '#test/help/plans.ts'

vi.mock('#core/tolerance/plan-tolerances.ts', async (original) => {
  const module = await original<typeof import('#core/tolerance/plan-tolerances.ts')>()
  return {
    ...module,
    planTolerances: vi.fn(module.planTolerances),
    toleranceSteps: vi.fn(module.toleranceSteps),
  }
})
vi.mock('#renderer/host/host.ts', () => ({
  ask: () => Promise.resolve({ ok: false, fault: { reason: 'none', message: 'nobody is asked' } }),
  readBytes: () => Promise.resolve(null),
}))

const { shoot, spotId, spots } = await import('#renderer/state/library/library.ts')
const { boardTolerances, followTolerances } = await import('#renderer/state/plan/board-tolerances.ts')
const { planAtHand } = await import('#renderer/state/plan/assessments.ts')
const { tolerancesAtLeisure, tolerancesFor } = await import('#renderer/state/plan/shelf-tolerances.ts')

const example = { ...examplePlan().shoot, zone: 'UTC' }
const { spot } = examplePlan()
const { spot: other } = examplePlan({ shot: { aperture: 5.6 } })

followTolerances()

/** Until the board knows it of the spot on it. */
async function rested(): Promise<void> {
  await eventually(() => expect(boardTolerances.value?.current).toBe(true))
}

beforeEach(async () => {
  put(shoot, example)
  put(spots, [spot, { ...other, id: 'other' }])
  put(spotId, spot.id)
  await rested()
  vi.mocked(planTolerances).mockClear()
  vi.mocked(toleranceSteps).mockClear()
})

function workedOut(): number {
  return vi.mocked(planTolerances).mock.calls.length + vi.mocked(toleranceSteps).mock.calls.length
}

test('the sheet of the spot on the board takes what the board found', () => {
  const found = boardTolerances.value?.found
  expect(found?.tolerances).toBeDefined()
  expect(tolerancesFor(planAtHand(example, { ...spot, name: 'Pier' }), 'UTC')).toBe(found)
  expect(tolerancesAtLeisure(planAtHand(example, { ...spot, notes: 'at low water' }), 'UTC')).toBe(found)
  expect(workedOut()).toBe(0)
})

test('of another spot, or by another clock, it is worked out', () => {
  const found = boardTolerances.value?.found
  const others = tolerancesFor(planAtHand(example, { ...other, id: 'other' }), 'UTC')
  expect([others === found, workedOut()]).toEqual([false, 1])
  tolerancesFor(planAtHand(example, spot), 'Europe/Lisbon')
  expect(workedOut()).toBe(2)
})

test('what it found serves on when the board has gone on to another spot', async () => {
  const sheet = tolerancesFor(planAtHand(example, spot), 'UTC')
  put(spotId, 'other')
  await rested()
  expect(boardTolerances.value?.plan.spot.id).toBe('other')
  vi.mocked(toleranceSteps).mockClear()
  expect(tolerancesFor(planAtHand(example, spot), 'UTC')).toBe(sheet)
  expect(workedOut()).toBe(0)
})
