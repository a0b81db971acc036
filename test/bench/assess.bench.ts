/** The assessment against a naive one that derives everything again for each reading the screen shows, of plans as a drag makes them: each seen once. */
import { type Assessment, assess } from '#core/plan/assess.ts'
import { moveStandpoint } from '#core/plan/arrange.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import { destination } from '#core/geo/geodesic.ts'
import { examplePlan, ZOOM } from '#test/help/plans.ts'
import { type BenchRow, against } from './measure.ts'

/** What the board reads of an assessment; the naive program asks for each on its own. */
const READINGS: readonly ((made: Assessment) => unknown)[] = [
  (made) => made.toSubject.distance,
  (made) => made.toLandmark?.bearing,
  (made) => made.focalLength,
  (made) => made.lens,
  (made) => made.subject,
  (made) => made.landmark,
  (made) => made.crops,
  (made) => made.sharp?.used,
  (made) => made.sharp?.landmark,
  (made) => made.problems,
]

const PLACES = 500
const START = examplePlan({ lenses: [ZOOM, { ...ZOOM, id: 'long', focalMin: 70, focalMax: 200 }] })

/** The plan with its camera at each of many places around its own: nothing that was kept of one serves the next. */
function moved(): Plan[] {
  const { shoot, spot, terrain, pins } = START
  return Array.from({ length: PLACES }, (_, index) => {
    const at = destination(spot.standpoint.at, (index / PLACES) * 360, 1.5)
    return planOf(shoot, { ...spot, standpoint: { ...spot.standpoint, at } }, terrain, pins)
  })
}

function once(plan: Plan): unknown[] {
  const made = assess(plan)
  return READINGS.map((read) => read(made))
}

/** Every reading asks on its own, and of a plan that shares no record with the others. */
function naive(copies: readonly Plan[]): unknown[] {
  return READINGS.map((read, index) => read(assess(copies[index] ?? START)))
}

/** What a frame of a drag asks of the core: what is held follows, and the result is assessed. */
function frame({ spot, terrain, pins }: Plan): unknown[] {
  return once(planOf(START.shoot, moveStandpoint(START, spot.standpoint.at), terrain, pins))
}

export function benchAssess(): BenchRow[] {
  const plans = moved()
  const copies = plans.map((plan) => READINGS.map(() => structuredClone(plan)))
  let sink = 0
  let turn = 0
  const next = (): number => (turn = (turn + 1) % PLACES)
  const anchor = (): void => {
    sink += naive(copies[next()] ?? []).length
  }
  const measured = against(() => (sink += once(plans[next()] ?? START).length), anchor, 2000)
  const whole = against(() => (sink += frame(plans[next()] ?? START).length), anchor, 2000)
  if (sink === 0) throw new Error('nothing was assessed')
  return [
    {
      name: 'assess() per call, against deriving again for each of ten readings',
      ours: `${(measured.ours * 1000).toFixed(1)} µs`,
      anchor: `${(measured.anchor * 1000).toFixed(1)} µs`,
      ratio: measured.ratio,
      aim: '20 µs; ratio 0.15',
      gate: { better: 'less', noise: 0.15 },
    },
    {
      name: 'a frame of a drag in the core: followed and assessed, against the same',
      ours: `${(whole.ours * 1000).toFixed(1)} µs`,
      anchor: `${(whole.anchor * 1000).toFixed(1)} µs`,
      ratio: whole.ratio,
      aim: 'little above one assess()',
      gate: { better: 'less', noise: 0.15 },
    },
  ]
}
