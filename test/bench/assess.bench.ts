/** The assessment against a naive one that derives everything anew for each reading the screen shows. */
import { type Assessment, assess } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
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

function naive(plan: Plan): unknown[] {
  return READINGS.map((read) => read(assess(plan)))
}

function once(plan: Plan): unknown[] {
  const made = assess(plan)
  return READINGS.map((read) => read(made))
}

export function benchAssess(): BenchRow[] {
  const plan = examplePlan({ lenses: [ZOOM, { ...ZOOM, id: 'long', focalMin: 70, focalMax: 200 }] })
  let sink = 0
  const measured = against(
    () => (sink += once(plan).length),
    () => (sink += naive(plan).length),
    2000,
  )
  if (sink === 0) throw new Error('nothing was assessed')
  return [
    {
      name: 'assess() per call, against deriving anew for each of ten readings',
      ours: `${(measured.ours * 1000).toFixed(1)} µs`,
      anchor: `${(measured.anchor * 1000).toFixed(1)} µs`,
      ratio: measured.ratio,
      aim: '20 µs; ratio 0.15',
      gate: { better: 'less', noise: 0.1 },
    },
  ]
}
