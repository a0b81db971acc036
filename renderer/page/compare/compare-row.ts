/** A row of the comparison: what it reads off each spot, and what it says of one that isn't known. */
import { type Plan } from '#core/plan/plan.ts'
import { type DayLight } from '#core/plan/day-light.ts'
import { type UnitSystem } from '#core/units/length.ts'
import { type GroundProfile } from '#core/plan/ground-profile.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { type PlanTolerances } from '#core/tolerance/plan-tolerances.ts'
import { type Assessment } from '#core/plan/assess.ts'
import { type Better, type Compared } from '#core/plan/compare.ts'

export interface Column {
  readonly plan: Plan
  readonly assessment: Assessment
  /** The light of the spot's own day, by its own clock. */
  readonly daylight: DayLight
  /** Null when nothing is framed. */
  readonly tolerances: PlanTolerances | null | 'working'
  /** The ground on the way to the landmark; null without elevations or landmark. */
  readonly line: GroundProfile | null
}

export interface CompareRow {
  readonly group: keyof typeof sheetWords.compare.groups
  readonly name: string
  readonly values: readonly string[]
  readonly compared: Compared
}

const { unknown } = sheetWords

type Reading = (column: Column, units: UnitSystem) => { readonly figure: number | null; readonly text: string } | string

export interface RowKind {
  readonly group: CompareRow['group']
  readonly name: string
  readonly better: Better
  readonly read: Reading
}

export function figureOf(value: number | null | undefined, write: (value: number) => string) {
  return value === null || value === undefined ? { figure: null, text: unknown } : { figure: value, text: write(value) }
}
