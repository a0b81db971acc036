/** What makes a scan's answer one of before: changes of what it was asked, and nothing else. */
import { expect, test } from 'vitest'
import { USUAL_SCAN_WISHES } from '#core/record/scan-wishes.ts'
import { type ScanRequest, USUAL_STEPS } from '#core/scan/scan-request.ts'
import { changedSince } from '#renderer/panel/scan/scan-stale.ts'
import { examplePlan } from '#test/help/plans.ts'

const LINE = [
  { lat: -41.2, lon: 12.4 },
  { lat: -41.21, lon: 12.41 },
]

function asked(): ScanRequest {
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

const request = asked()

test('the same question in other objects has not changed', () => {
  expect(changedSince(request, structuredClone(request))).toEqual([])
})

test('names, notes and another fineness change nothing', () => {
  const { shoot, spot } = request
  const ground = shoot.stoppingGround.map((one) => ({ ...one, name: 'Shore track' }))
  const now: ScanRequest = {
    ...request,
    shoot: { ...shoot, name: 'Another', stoppingGround: ground, subject: { ...shoot.subject, name: 'Bicycle' } },
    spot: { ...spot, notes: 'muddy', stars: 3 },
    steps: { ...USUAL_STEPS, place: 50 },
  }
  expect(changedSince(request, now)).toEqual([])
})

test('each change is told by its kind', () => {
  const { shoot, spot } = request
  const change = (part: Partial<ScanRequest['shoot']>): ScanRequest => ({ ...request, shoot: { ...shoot, ...part } })
  const moved = shoot.stoppingGround.map((one) => ({ ...one, points: [...one.points, { lat: -41.3, lon: 12.4 }] }))
  expect(changedSince(request, change({ stoppingGround: moved }))).toEqual(['ground'])
  expect(changedSince(request, change({ scanWishes: { ...USUAL_SCAN_WISHES, landmarkShown: null } }))).toEqual([
    'wishes',
  ])
  expect(changedSince(request, change({ subject: { ...shoot.subject, length: 4 } }))).toEqual(['plan'])
  expect(changedSince(request, { ...request, spot: { ...spot, when: spot.when + 3_600_000 } })).toEqual(['shot'])
  const terrain = { centre: LINE[0]!, cell: 10, columns: 1, rows: 1, west: 0, north: 0, heights: new Float32Array(1) }
  expect(changedSince(request, { ...request, terrain })).toEqual(['elevations'])
})

test('the light counts while it is demanded, the parking points while they are', () => {
  const lit = { ...request.shoot, light: { ...request.shoot.light, subject: 'lit' as const } }
  expect(changedSince(request, { ...request, shoot: lit })).toEqual(['light'])
  const unlit: ScanRequest = {
    ...request,
    shoot: { ...request.shoot, scanWishes: { ...USUAL_SCAN_WISHES, light: null } },
  }
  expect(changedSince(unlit, { ...unlit, shoot: { ...lit, scanWishes: unlit.shoot.scanWishes } })).toEqual([])
  const parked = { ...request, parkings: LINE }
  expect(changedSince(request, parked)).toEqual([])
  const near = { ...USUAL_SCAN_WISHES, parking: { must: false, weight: 3, within: 500 } }
  const wished: ScanRequest = { ...request, shoot: { ...request.shoot, scanWishes: near } }
  expect(changedSince(wished, { ...wished, parkings: LINE })).toEqual(['wishes'])
})

test('a change undone is none', () => {
  const { shoot } = request
  const back: ScanRequest = { ...request, shoot: { ...shoot, subject: { ...shoot.subject } } }
  expect(changedSince(request, back)).toEqual([])
})
