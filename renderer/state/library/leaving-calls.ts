/** How edits that are not saved yet go with a page that is left: in one call that outlives it, or in several, the largest last. */
import type { Change, SentEdit } from '#app/contract/library.ts'

/** Bytes that an edit takes in a call. */
export function callBytes(edits: readonly SentEdit[]): number {
  return new TextEncoder().encode(JSON.stringify({ edits })).length
}

/**
 * `sent` may have reached the library already, so it goes as it was; what was never sent may be put together. Edits of the same record
 * stay in one call and in their order, for calls may overtake one another.
 */
export function leavingCalls(sent: readonly SentEdit[], unsent: readonly SentEdit[], room: number): SentEdit[][] {
  const all = [...sent, ...unsent]
  if (all.length === 0) return []
  if (callBytes(all) <= room) return [all]
  const groups = groupsOf(all)
    .map((group) => [
      ...group.filter((edit) => sent.includes(edit)),
      ...together(group.filter((edit) => !sent.includes(edit))),
    ])
    .filter((group) => group.length > 0)
    .toSorted((one, other) => callBytes(one) - callBytes(other))
  const first: SentEdit[] = []
  const rest: SentEdit[][] = []
  for (const group of groups) {
    if (callBytes([...first, ...group]) <= room) first.push(...group)
    else rest.push(group)
  }
  return first.length === 0 ? rest : [first, ...rest]
}

/** What an edit touches or rests on: its records, and the shoot of a spot where that shoot is among those touched. */
function recordsOf(edit: SentEdit, touched: ReadonlySet<string>): string[] {
  return edit.changes.flatMap((change) => {
    const home = change.kind === 'spot' ? (change.record?.shootId ?? '') : ''
    return touched.has(home) ? [change.id, home] : [change.id]
  })
}

/** Edits that share a record, by however many steps. */
function groupsOf(edits: readonly SentEdit[]): SentEdit[][] {
  const touched = new Set(edits.flatMap((edit) => edit.changes.map(({ id }) => id)))
  let groups: { readonly records: Set<string>; readonly edits: SentEdit[] }[] = []
  for (const edit of edits) {
    const records = recordsOf(edit, touched)
    const shared = groups.filter((group) => records.some((id) => group.records.has(id)))
    groups = [
      ...groups.filter((group) => !shared.includes(group)),
      {
        records: new Set([...shared.flatMap((group) => [...group.records]), ...records]),
        edits: edits.filter((other) => other === edit || shared.some((group) => group.edits.includes(other))),
      },
    ]
  }
  return groups.map((group) => group.edits)
}

/** One edit in place of several: of each record its first state before and its last state. */
function together(edits: readonly SentEdit[]): SentEdit[] {
  const last = edits.at(-1)
  if (last === undefined || edits.length === 1) return [...edits]
  const changes = new Map<string, Change>()
  for (const change of edits.flatMap((edit) => edit.changes)) {
    const { before } = changes.get(change.id) ?? change
    changes.set(change.id, { ...change, before })
  }
  // Made and taken away again within the same: nothing the library need know.
  const needed = [...changes.values()].filter(({ before, record }) => before !== null || record !== null)
  return needed.length === 0 ? [] : [{ id: last.id, changes: needed }]
}
