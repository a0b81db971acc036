/** The close plan is worked out when what it shows changes, and not while the map pans under it. */
import { put } from '#test/help/put.ts'
import { beforeAll, expect, test, vi } from 'vitest'
import { examplePlan } from '#test/help/plans.ts'

vi.mock('#renderer/host/host.ts', () => ({
  ask: () => Promise.resolve({ ok: false, fault: { reason: 'none', message: 'nobody is asked' } }),
  readBytes: () => Promise.resolve(null),
}))

const { close, size } = await import('#renderer/view/close-plan/close-state.ts')
const { mapLook } = await import('#renderer/view/drawing/map-look.ts')
const { shoot, spotId, spots } = await import('#renderer/state/library/library.ts')

const LOOK = {
  zoom: 15,
  originX: 1000,
  originY: 2000,
  middleLon: 12.4,
  box: { left: 0, top: 0, right: 900, bottom: 700 },
}

beforeAll(() => {
  const plan = examplePlan()
  put(shoot, plan.shoot)
  put(spots, [plan.spot])
  put(spotId, plan.spot.id)
  put(mapLook, LOOK)
})

test('panning changes nothing of it', () => {
  const [before, room] = [close.value, size.value]
  expect(before).not.toBeNull()
  for (let step = 1; step <= 60; step += 1) {
    const box = { left: step, top: -step, right: 900 + step, bottom: 700 - step }
    put(mapLook, { ...LOOK, originX: LOOK.originX + step, middleLon: 12.4 + step / 1e5, box })
    expect(size.value).toBe(room)
    expect(close.value).toBe(before)
  }
})

test('a narrower window and a moved thing do', () => {
  const before = close.value
  put(mapLook, { ...LOOK, box: { left: 0, top: 0, right: 300, bottom: 250 } })
  expect(close.value).not.toBe(before)
  const narrow = close.value
  const [spot] = spots.value
  if (spot === undefined) throw new Error('no spot')
  put(spots, [{ ...spot, stop: { ...spot.stop, heading: spot.stop.heading + 10 } }])
  expect(close.value).not.toBe(narrow)
})
