/** The gate: the ratios last accepted, kept in gate.json, and what has got worse than they are by more than measuring is uncertain. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

const FILE = join(import.meta.dirname, 'gate.json')

export type Accepted = Readonly<Record<string, number>>

/** A measurement that the gate holds: whether less is better, and the share by which two runs of the same code may differ. */
export interface Gated {
  readonly better: 'less' | 'more'
  readonly noise: number
}

interface Measured {
  readonly name: string
  readonly ratio: number
  readonly gate?: Gated
}

export function readGate(): Accepted {
  return JSON.parse(readFileSync(FILE, 'utf8')) as Accepted
}

/** A sentence for each measurement that is worse than accepted, was not to be measured, or was never accepted. */
export function gateFindings(rows: readonly Measured[], accepted: Accepted): string[] {
  return rows.flatMap(({ name, ratio, gate }) => {
    if (gate === undefined) return []
    if (!Number.isFinite(ratio)) return [`${name}: could not be measured.`]
    const before = accepted[name]
    if (before === undefined) return [`${name}: ${figure(ratio)}, nothing was accepted before.`]
    const worse = gate.better === 'less' ? ratio / before - 1 : before / ratio - 1
    if (worse <= gate.noise) return []
    return [
      `${name}: ${figure(ratio)}, accepted was ${figure(before)}: ${percent(worse)} worse, of which ${percent(gate.noise)} may be noise.`,
    ]
  })
}

/** What was measured takes the place of what was accepted; the rest stays. */
export function acceptedWith(rows: readonly Measured[], accepted: Accepted): Accepted {
  const measured = rows.filter(({ gate, ratio }) => gate !== undefined && Number.isFinite(ratio))
  const all = { ...accepted, ...Object.fromEntries(measured.map(({ name, ratio }) => [name, Number(figure(ratio))])) }
  return Object.fromEntries(Object.entries(all).toSorted(([one], [other]) => (one < other ? -1 : 1)))
}

export function writeGate(accepted: Accepted): void {
  writeFileSync(FILE, `${JSON.stringify(accepted, null, 2)}\n`)
}

function figure(ratio: number): string {
  return ratio.toFixed(3)
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`
}
