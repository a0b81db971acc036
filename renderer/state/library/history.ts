/** Every edit of the session: applied to the screen at once, saved whole in order, undone and redone as a list of values. */
import { computed, signal } from '@preact/signals'
import type { Change } from '#app/contract/library.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { ask } from '#renderer/host/host.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { words } from '#renderer/words/en.ts'
import { type Edit, idOf, reversed, savedRecords, withTryOut } from './edit.ts'
import { openAny, openShoot, refreshShootList } from './library.ts'
import { revisions, seenVersion, shoot, shootList, spotId, spots, tryOut } from './library.ts'
import { spotName } from '#renderer/text/names.ts'
import { type NoticeAction, tell } from './notices.ts'
import { showEdit } from './show-edit.ts'

const past = signal<readonly Edit[]>([])
const future = signal<readonly Edit[]>([])
/** Edits on their way to the library. */
export const unsaved = signal(0)

export const canUndo = computed(() => past.value.at(-1)?.label ?? null)
export const canRedo = computed(() => future.value.at(-1)?.label ?? null)

let queue: Promise<void> = Promise.resolve()
/** Raised by a refusal: edits made before it rest on what was refused, so they are not saved when their turn comes. */
let generation = 0

function knownRevision(record: Shoot | Spot): number {
  return revisions.get(record.id) ?? record.revision
}

function changesOf(edit: Edit): Change[] {
  return savedRecords(edit).map((record) => {
    const id = idOf(record)
    const before = record.before === null ? null : knownRevision(record.before)
    return { kind: record.kind, id, before, record: record.after } as Change
  })
}

async function save(edit: Edit, born: number): Promise<void> {
  if (born !== generation) {
    unsaved.value -= 1
    return
  }
  const changes = changesOf(edit)
  if (changes.length === 0) {
    unsaved.value -= 1
    return
  }
  const answer = await ask('library.apply', { changes })
  unsaved.value -= 1
  if (answer.ok) {
    changes.forEach((change, index) => {
      if (change.record === null) revisions.delete(change.id)
      else revisions.set(change.id, answer.value.revisions[index] ?? 0)
    })
    // A version further on than our own one step tells of another window's change, which is still to be read.
    if (answer.value.version === seenVersion.value + 1) seenVersion.value = answer.value.version
    if (savedRecords(edit).some(({ kind, before, after }) => kind === 'shoot' || before === null || after === null)) {
      await refreshShootList()
    }
    return
  }
  tell('fault', answer.fault.message)
  await takeBack(edit)
}

/** The library refused: show again what it holds, and forget the edits that can't be undone any more. */
async function takeBack(edit: Edit): Promise<void> {
  generation += 1
  const ids = edit.records.map(idOf)
  // Edits of the same records rest on a state that is not there; so do those made since, which are never saved.
  forgetEditsOf(new Set(ids))
  past.value = past.value.filter((other) => !waiting.has(other))
  // At once and from memory: the library may be out of reach, and the screen must not show what is nowhere kept.
  for (const unsavedEdit of [edit, ...waiting].toReversed()) showEdit(reversed(unsavedEdit))
  waiting.clear()
  const wanted = spotId.value
  await refreshShootList()
  const open = shoot.value ?? edit.records.find((record) => record.kind === 'shoot')?.before ?? null
  // A shoot that another window has deleted meanwhile is noticed by the next look for its changes.
  if (open === null) await openAny(null, wanted)
  else await openShoot(open.id, wanted)
}

/** Edits whose turn to be saved has not come yet. */
const waiting = new Set<Edit>()

function run(edit: Edit): Promise<void> {
  showEdit(edit)
  unsaved.value += 1
  waiting.add(edit)
  const born = generation
  queue = queue.then(() => {
    waiting.delete(edit)
    return save(edit, born)
  })
  return queue
}

/** Undo and redo must not bring back a state of these records that somebody else has changed since. */
export function forgetEditsOf(ids: ReadonlySet<string>): void {
  const touches = (edit: Edit): boolean => edit.records.some((record) => ids.has(idOf(record)))
  past.value = past.value.filter((edit) => !touches(edit))
  future.value = future.value.filter((edit) => !touches(edit))
}

/** A change by hand that has put the try-out on the shelf is told: nobody asked for it by name. */
function tellKept(wanted: Edit, edit: Edit): void {
  if (edit === wanted) return
  const tried = tryOut.peek()?.spot
  const kept = edit.records.some((record) => record.kind === 'spot' && record.after?.id === tried?.id)
  if (tried !== undefined && kept) tell('done', scanWords.tryOut.keptWithEdit(spotName(tried)))
}

/** Does an edit: on the screen now, in the library as soon as it can be. Resolves when saved or refused. */
export function commit(wanted: Edit): Promise<void> {
  const edit = withTryOut(wanted)
  tellKept(wanted, edit)
  past.value = [...past.value, edit].slice(-500)
  future.value = []
  return run(edit)
}

export async function undo(): Promise<void> {
  const edit = past.value.at(-1)
  if (edit === undefined) return
  await comeBackTo(edit)
  past.value = past.value.slice(0, -1)
  future.value = [...future.value, edit]
  await run(reversed(edit))
  await openAnother()
}

/** Beside a message: takes back the edit just made, and is gone once another has been made, which it would take back instead. */
export function undoOffer(): NoticeAction {
  const made = past.peek().at(-1)
  const offered = (): boolean => made !== undefined && past.value.at(-1) === made
  return { label: words.board.undo, offered, run: () => void (offered() && undo()) }
}

export async function redo(): Promise<void> {
  const edit = future.value.at(-1)
  if (edit === undefined) return
  await comeBackTo(edit)
  future.value = future.value.slice(0, -1)
  past.value = [...past.value, edit]
  await run(edit)
  await openAnother()
}

/** After the open shoot has gone, the first of those left comes on the board. */
export async function openAnother(): Promise<void> {
  if (shoot.value === null && shootList.value.length > 0) await openAny(null, null)
}

/** Undo of an edit in another shoot than the one on the board first opens that shoot, so that it can be seen. */
async function comeBackTo(edit: Edit): Promise<void> {
  const spot = edit.records.find((record) => record.kind === 'spot')
  const tried = edit.records.find((record) => record.kind === 'try-out')
  const shootRecord = edit.records.find((record) => record.kind === 'shoot')
  const home = spot?.after ?? spot?.before ?? (tried?.after ?? tried?.before)?.spot ?? null
  const shootId = home?.shootId ?? (shootRecord?.after ?? shootRecord?.before)?.id
  if (shootId === undefined) return
  if (shootId === shoot.value?.id) {
    // An edit of one spot is undone before the user's eyes: that spot comes on the board.
    const alone = edit.records.length === 1 && spots.value.some((candidate) => candidate.id === home?.id)
    if (alone && home !== null) spotId.value = home.id
    return
  }
  await queue
  if (shootRecord === undefined) await openShoot(shootId, home?.id ?? null)
}

/** Saves the spot on the board in a new state. */
export function changeSpot(label: string, after: Spot): Promise<void> {
  const before = spots.value.find((spot) => spot.id === after.id) ?? null
  return commit({ label, records: [{ kind: 'spot', before, after }] })
}

/** Saves the shoot on the board in a new state. */
export function changeShoot(label: string, after: Shoot): Promise<void> {
  return commit({ label, records: [{ kind: 'shoot', before: shoot.value, after }] })
}
