/** Refused edits made ready to be done once more: those that rest on one another as one, on what the library holds by now. */
import type { Fault } from '#core/result.ts'
import { rebased } from '#core/record/record-merge.ts'
import { type Edit, type RecordEdit, idOf } from './edit.ts'
import { shoot, spots, tryOut } from './library.ts'
import type { RefusedEdit } from './saving.ts'

/**
 * Refused edits in the parts that are decided for or against: each field's own, all else of the same records together. One that only
 * rests on another has that one's fault.
 */
export function refusedTogether(
  refused: readonly RefusedEdit[],
  sourceOf: (edit: Edit) => unknown,
): (readonly RefusedEdit[])[] {
  const groups: { readonly source: unknown; readonly records: Set<string>; readonly edits: RefusedEdit[] }[] = []
  const faults = new Map<string, Fault>()
  for (const one of refused) {
    const [ids, source] = [one.edit.records.map(idOf), sourceOf(one.edit)]
    const cause = ids.map((id) => faults.get(id)).find((fault) => fault !== undefined)
    const fault = one.fault.reason === 'rests' ? (cause ?? one.fault) : one.fault
    for (const id of ids) faults.set(id, fault)
    const group = groups.find((other) => other.source === source && ids.some((id) => other.records.has(id)))
    if (group === undefined) groups.push({ source, records: new Set(ids), edits: [{ ...one, fault }] })
    else {
      group.edits.push({ ...one, fault })
      for (const id of ids) group.records.add(id)
    }
  }
  return groups.map(({ edits }) => edits)
}

/** One edit that does what these did, on the records as they are on the screen now; null when nothing of it is left to do. */
export function editAgain(edits: readonly Edit[]): Edit | null {
  const last = edits.at(-1)
  if (last === undefined) return null
  const whole = new Map<string, RecordEdit>()
  for (const record of edits.flatMap((edit) => edit.records)) {
    const id = `${record.kind} ${idOf(record)}`
    whole.set(id, { ...record, before: whole.has(id) ? (whole.get(id)?.before ?? null) : record.before } as RecordEdit)
  }
  const records = [...whole.values()].flatMap((record) => uponNow(record))
  return records.some(({ kind }) => kind !== 'try-out') ? { label: last.label, records } : null
}

function uponNow(record: RecordEdit): RecordEdit[] {
  if (record.kind === 'try-out') return record.before?.spot.id === tryOut.peek()?.spot.id ? [record] : []
  const id = idOf(record)
  const open = shoot.peek()
  if (record.kind === 'spot') {
    const now = spots.peek().find((spot) => spot.id === id) ?? null
    return changed(record, now)
  }
  const now = open?.id === id ? open : null
  const own = changed(record, now)
  if (record.after !== null || own.length === 0) return own
  // Spots that came to it meanwhile go with it, and come back with it when it is undone.
  return [...spots.peek().map((spot) => ({ kind: 'spot' as const, before: spot, after: null })), ...own]
}

function changed<Edited extends Exclude<RecordEdit, { kind: 'try-out' }>>(
  record: Edited,
  now: Edited['before'],
): Edited[] {
  const { before, after } = record
  if (after === null) return now === null ? [] : [{ ...record, before: now }]
  // Deleted elsewhere it is made again, as it was here.
  if (before === null || now === null) return [{ ...record, before: now }]
  return [{ ...record, before: now, after: rebased<NonNullable<Edited['before']>>(before, after, now) }]
}
