/** How far off it may be, against a plain walk of 10 cm and half a degree over whole assessments. */
import { assess } from '#core/plan/assess.ts'
import { skylinesOf } from '#core/plan/plan-skylines.ts'
import { PLACE_MOVES, moveLine, movedBy, unitOf } from '#core/tolerance/moves.ts'
import { type ToleranceRequest, planTolerances } from '#core/tolerance/plan-tolerances.ts'
import { examplePlan } from '#test/help/plans.ts'
import { mountains } from '#test/help/terrain.ts'
import { type BenchRow, against } from './measure.ts'

function row(where: string, request: ToleranceRequest): BenchRow {
  const { plan } = request
  const line = moveLine(plan)
  const found = planTolerances(request)
  if (line === null || found === null) throw new Error('nothing is framed')
  let sink = 0
  const plainWalk = (): void => {
    for (const move of PLACE_MOVES) {
      const { offset, limit } = found.tolerances[move]
      const step = unitOf(move) === 'degrees' ? 0.5 : 0.1
      for (let by = step; by < (offset ?? limit) + step; by += step) {
        sink += assess(movedBy(plan, move, by, line)).problems.length
      }
    }
  }
  const measured = against(() => (sink += planTolerances(request)?.held.length ?? 0), plainWalk, 3)
  if (sink === 0) throw new Error('nothing was looked at')
  return {
    name: `how far off it may be, ${where}, against a plain walk`,
    ours: `${measured.ours.toFixed(1)} ms`,
    anchor: `${measured.anchor.toFixed(0)} ms`,
    ratio: measured.ratio,
    aim: '30 ms; ratio 0.8',
  }
}

export function benchTolerance(): BenchRow[] {
  const when = Date.UTC(2026, 5, 14, 11)
  const flat = examplePlan({ at: { lat: 46.9, lon: 10.3 }, spot: { when } })
  const { stop, standpoint } = flat.spot
  const unmeasured = {
    ...flat.spot,
    stop: { ...stop, elevation: null },
    standpoint: { ...standpoint, elevation: null },
  }
  const hilly = { ...flat, spot: unmeasured, terrain: mountains(1201) }
  return [
    row('level ground', { plan: flat, zone: 'UTC', parkings: [] }),
    // On the board the skylines are at hand.
    row('in the mountains', { plan: hilly, zone: 'UTC', parkings: [], skylines: skylinesOf(hilly) }),
  ]
}
