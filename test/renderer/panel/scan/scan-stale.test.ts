/** What makes a scan's answer one of before: changes of what it was asked, and nothing else. */
import { expect, test } from 'vitest'
import { USUAL_SCAN_WISHES } from '#core/record/scan-wishes.ts'
import { type ScanAsk, USUAL_STEPS } from '#core/scan/scan-ask.ts'
import { changedSince } from '#renderer/panel/scan/scan-stale.ts'
import { examplePlan } from '#test/help/plans.ts'

const LINE = [
  { lat: -41.2, lon: 12.4 },
  { lat: -41.21, lon: 12.41 },
]

function asked(): ScanAsk {
  const { shoot, spot } = examplePlan()
  return {
    shoot: { ...shoot, stoppingGround: [{ id: 'track', name: 'Track', form: 'line', points: LINE, turn: 'along' }] },
    spot,
    terrain: null,
    pins: [],
    zone: 'UTC',
    parkings: [],
    steps: USUAL_STEPS,
  }
}

const ask = asked()

test('the same question in other objects has not changed', () => {
  expect(changedSince(ask, structuredClone(ask))).toEqual([])
})

test('names, notes and another fineness change nothing', () => {
  const { shoot, spot } = ask
  const ground = shoot.stoppingGround.map((one) => ({ ...one, name: 'Shore track' }))
  const now: ScanAsk = {
    ...ask,
    shoot: { ...shoot, name: 'Another', stoppingGround: ground, subject: { ...shoot.subject, name: 'Bicycle' } },
    spot: { ...spot, notes: 'muddy', stars: 3 },
    steps: { ...USUAL_STEPS, place: 50 },
  }
  expect(changedSince(ask, now)).toEqual([])
})

test('each change is told by its kind', () => {
  const { shoot, spot } = ask
  const change = (part: Partial<ScanAsk['shoot']>): ScanAsk => ({ ...ask, shoot: { ...shoot, ...part } })
  const moved = shoot.stoppingGround.map((one) => ({ ...one, points: [...one.points, { lat: -41.3, lon: 12.4 }] }))
  expect(changedSince(ask, change({ stoppingGround: moved }))).toEqual(['ground'])
  expect(changedSince(ask, change({ scanWishes: { ...USUAL_SCAN_WISHES, landmarkShown: null } }))).toEqual(['wishes'])
  expect(changedSince(ask, change({ subject: { ...shoot.subject, length: 4 } }))).toEqual(['plan'])
  expect(changedSince(ask, { ...ask, spot: { ...spot, when: spot.when + 3_600_000 } })).toEqual(['shot'])
  const terrain = { centre: LINE[0]!, cell: 10, columns: 1, rows: 1, west: 0, north: 0, heights: new Float32Array(1) }
  expect(changedSince(ask, { ...ask, terrain })).toEqual(['elevations'])
})

test('the light counts while it is demanded, the parking points while they are', () => {
  const lit = { ...ask.shoot, light: { ...ask.shoot.light, subject: 'lit' as const } }
  expect(changedSince(ask, { ...ask, shoot: lit })).toEqual(['light'])
  const unlit: ScanAsk = { ...ask, shoot: { ...ask.shoot, scanWishes: { ...USUAL_SCAN_WISHES, light: null } } }
  expect(changedSince(unlit, { ...unlit, shoot: { ...lit, scanWishes: unlit.shoot.scanWishes } })).toEqual([])
  const parked = { ...ask, parkings: LINE }
  expect(changedSince(ask, parked)).toEqual([])
  const near = { ...USUAL_SCAN_WISHES, parking: { must: false, weight: 3, within: 500 } }
  const wished: ScanAsk = { ...ask, shoot: { ...ask.shoot, scanWishes: near } }
  expect(changedSince(wished, { ...wished, parkings: LINE })).toEqual(['wishes'])
})

test('a change undone is none', () => {
  const { shoot } = ask
  const back: ScanAsk = { ...ask, shoot: { ...shoot, subject: { ...shoot.subject } } }
  expect(changedSince(ask, back)).toEqual([])
})
