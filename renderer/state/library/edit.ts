/** An edit as a value: records before and after, what is tried out among them. */
import { rankBetween } from '#core/record/shelf-rank.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { type TryOut, spots, tryOut } from './library.ts'

/** One record before and after; null where it did not, or does no longer, exist. */
type Saved =
  | { readonly kind: 'shoot'; readonly before: Shoot | null; readonly after: Shoot | null }
  | { readonly kind: 'spot'; readonly before: Spot | null; readonly after: Spot | null }

/** What is tried out on the board is part of the history, though the library knows nothing of it. */
interface TryOutEdit {
  readonly kind: 'try-out'
  readonly before: TryOut | null
  readonly after: TryOut | null
}

export type RecordEdit = Saved | TryOutEdit

export interface Edit {
  /** What was done, in the user's words: "Move the standpoint". */
  readonly label: string
  readonly records: readonly RecordEdit[]
}

/** The edit undone. */
export function reversed(edit: Edit): Edit {
  const turned = edit.records.map((record) => ({ ...record, before: record.after, after: record.before }) as RecordEdit)
  return { label: edit.label, records: turned.toReversed() }
}

/** Those the library keeps. */
export function savedRecords(edit: Edit): Saved[] {
  return edit.records.filter((record) => record.kind !== 'try-out')
}

export function idOf(record: RecordEdit): string {
  const { before, after } = record
  const known =
    record.kind === 'try-out' ? (record.after ?? record.before)?.spot : ((after ?? before) as Shoot | Spot | null)
  return known?.id ?? ''
}

/** As the last spot of the shelf. */
export function shelvedLast(spot: Spot): Spot {
  return { ...spot, rank: rankBetween(spots.peek().at(-1)?.rank ?? null, null) }
}

/** An edit of what is tried out keeps it, as edited and last on the shelf; a spot that comes on the board otherwise takes its place. */
export function withTryOut(edit: Edit): Edit {
  const tried = tryOut.peek()
  if (tried === null || edit.records.some(({ kind }) => kind === 'try-out')) return edit
  const records = edit.records.map((record) =>
    record.kind === 'spot' && record.after?.id === tried.spot.id
      ? { ...record, before: null, after: shelvedLast(record.after) }
      : record,
  )
  const added = records.some(({ kind, before, after }) => kind === 'spot' && before === null && after !== null)
  return added ? { ...edit, records: [{ kind: 'try-out', before: tried, after: null }, ...records] } : edit
}
