/** Every edit of the session: applied to the screen at once, saved whole in order, undone and redone as a list of values. */
import { type Signal, computed, signal } from '@preact/signals'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { words } from '#renderer/words/en.ts'
import { type Edit, type RecordEdit, idOf, reversed, withTryOut } from './edit.ts'
import { editAgain, refusedTogether } from './edit-again.ts'
import { moving, openAny, openShoot, readShoot, refreshShootList, workOnSpot } from './library.ts'
import { shoot, shootList, spotId, spots, tryOut } from './library.ts'
import { spotName } from '#renderer/text/names.ts'
import { type NoticeAction, tell } from './notices.ts'
import { type Refusal, holdRefusal } from './refusals.ts'
import { type RefusedEdit, allSaved, save, unsaved } from './saving.ts'
import { showEdit } from './show-edit.ts'
import { type TextSource, textSource } from './taken-from.ts'
import { settleUnfinished } from './unfinished.ts'

const past = signal<readonly Edit[]>([])
const future = signal<readonly Edit[]>([])

export const canUndo = computed(() => past.value.at(-1)?.label ?? null)
export const canRedo = computed(() => future.value.at(-1)?.label ?? null)

/** Fields whose text an edit took, to be told when it is refused. */
const sources = new WeakMap<Edit, TextSource>()
/** Edits that take another back. */
const undoing = new WeakSet<Edit>()

function run(edit: Edit): Promise<void> {
  showEdit(edit)
  return save(edit, takeBack)
}

/** The library refused: show again what it holds, forget the edits that can't be undone any more, and keep what was wanted at hand. */
async function takeBack(refused: readonly RefusedEdit[]): Promise<void> {
  forgetEditsOf(new Set(refused.flatMap(({ edit }) => edit.records.map(idOf))))
  // At once and from memory: the library may be out of reach, and the screen must not show what is nowhere kept.
  for (const { edit } of refused.toReversed()) showEdit(reversed(edit))
  for (const group of refusedTogether(refused, (edit) => sources.get(edit))) holdGroup(group)
  if (refused.some(({ fault }) => fault.reason === 'changed-elsewhere' || fault.reason === 'gone')) await readAgain()
}

function holdGroup(group: readonly RefusedEdit[]): void {
  const edits = group.map(({ edit }) => edit)
  const names = edits.map((edit) => (undoing.has(edit) ? words.board.undoWhat(edit.label) : edit.label))
  const fault = group[0]?.fault
  if (fault === undefined) return
  const refusal = holdRefusal({ what: [...new Set(names)].join(', '), fault, again: () => doAgain(edits, refusal) })
  for (const edit of edits) sources.get(edit)?.refused(refusal)
}

/** What another window has done meanwhile; left for the next look for its changes while more is on its way or in the hand. */
async function readAgain(): Promise<void> {
  if (unsaved.peek() > 0 || moving.peek()) return
  const wanted = spotId.peek()
  await refreshShootList()
  const open = shoot.peek()
  if (open === null) await openAny(null, wanted)
  else await readShoot(open.id, wanted)
}

/** Does refused edits once more, on what the library holds by now. */
async function doAgain(edits: readonly Edit[], refusal: Refusal): Promise<void> {
  settleUnfinished()
  const home = edits.map(homeOf).find((one) => one !== null) ?? null
  if (refusal.fault.reason !== 'changed-elsewhere' || home === null) await allSaved()
  else if (!(await openShoot(home.shootId, home.spotId))) return void holdRefusal(refusal)
  const again = editAgain(edits)
  if (again !== null) await commit(again)
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
  const source = textSource()
  if (source !== null) sources.set(edit, source)
  tellKept(wanted, edit)
  past.value = [...past.value, edit].slice(-500)
  future.value = []
  return run(edit)
}

export function undo(): Promise<void> {
  return step(past, future, (edit) => {
    const back = reversed(edit)
    undoing.add(back)
    return back
  })
}

/** Beside a message: takes back the edit just made, and is gone once another has been made, which it would take back instead. */
export function undoOffer(): NoticeAction {
  const made = past.peek().at(-1)
  const offered = (): boolean => made !== undefined && past.value.at(-1) === made
  return { label: words.board.undo, offered, run: () => void (offered() && undo()) }
}

export function redo(): Promise<void> {
  return step(future, past, (edit) => edit)
}

/** While another shoot is being opened for a step, further steps wait for it. */
let opening: Promise<boolean> | null = null

/** Takes the last edit of one list over to the other. At once where it can be: whoever leaves right after has done it. */
async function step(
  from: Signal<readonly Edit[]>,
  to: Signal<readonly Edit[]>,
  doing: (edit: Edit) => Edit,
): Promise<void> {
  settleUnfinished()
  if (opening !== null) {
    await opening
    return step(from, to, doing)
  }
  const edit = from.value.at(-1)
  if (edit === undefined) return
  const home = homeOf(edit)
  if (home !== null && home.shootId !== shoot.value?.id) {
    opening = openShoot(home.shootId, home.spotId)
    const opened = await opening
    opening = null
    if (!opened || from.value.at(-1) !== edit) return
  } else if (home !== null && edit.records.length === 1 && spots.value.some(({ id }) => id === home.spotId)) {
    // An edit of one spot is undone before the user's eyes: that spot comes on the board.
    workOnSpot(home.spotId)
  }
  from.value = from.value.slice(0, -1)
  to.value = [...to.value, edit]
  await run(doing(edit))
  await openAnother()
}

/** After the open shoot has gone, the first of those left comes on the board. */
export async function openAnother(): Promise<void> {
  if (shoot.value === null && shootList.value.length > 0) await openAny(null, null)
}

/** Where an edit is to be seen: its shoot, and its spot when it is of one; null when the shoot itself comes or goes with it. */
function homeOf(edit: Edit): { readonly shootId: string; readonly spotId: string | null } | null {
  const records = (kind: RecordEdit['kind']): RecordEdit | undefined => edit.records.find((one) => one.kind === kind)
  const shootRecord = records('shoot')
  if (shootRecord !== undefined && (shootRecord.before === null || shootRecord.after === null)) return null
  const record = records('spot') ?? records('try-out') ?? shootRecord
  const either = record?.after ?? record?.before ?? null
  if (record === undefined || either === null) return null
  if (record.kind === 'shoot') return { shootId: idOf(record), spotId: null }
  const spot = 'spot' in either ? either.spot : (either as Spot)
  return { shootId: spot.shootId, spotId: spot.id }
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
