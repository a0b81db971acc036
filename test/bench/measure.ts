/** How a bench measures: rounds of ours and the anchor in turns, CPU time, the median of the ratios. */
import type { Gated } from './gate.ts'

export interface BenchRow {
  readonly name: string
  readonly ours: string
  readonly anchor: string
  readonly ratio: number
  readonly aim: string
  /** Absent where no gate holds it. */
  readonly gate?: Gated
}

/** CPU milliseconds that a piece of work takes. */
export function cpu(work: () => void): number {
  const before = process.cpuUsage()
  work()
  const spent = process.cpuUsage(before)
  return (spent.user + spent.system) / 1000
}

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((one, other) => one - other)
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN
}

/** Medians over interleaved rounds, after a warm-up of both; milliseconds of CPU a call. */
export function against(
  ours: () => void,
  anchor: () => void,
  calls: number,
  rounds = 7,
): { ours: number; anchor: number; ratio: number } {
  const repeat = (work: () => void) => () => {
    for (let call = 0; call < calls; call++) work()
  }
  repeat(ours)()
  repeat(anchor)()
  const pairs = Array.from({ length: rounds }, () => ({ anchor: cpu(repeat(anchor)), ours: cpu(repeat(ours)) }))
  return {
    ours: median(pairs.map((pair) => pair.ours)) / calls,
    anchor: median(pairs.map((pair) => pair.anchor)) / calls,
    ratio: median(pairs.map((pair) => pair.ours / pair.anchor)),
  }
}
