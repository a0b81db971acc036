/** Edits on their way to the library: sent in their order, all that wait at once, answered one by one; leaving the page loses none. */
import { type ReadonlySignal, signal } from '@preact/signals'
import type { Answer } from '#app/contract/call.ts'
import type { Change, SavedEdit, SentEdit } from '#app/contract/library.ts'
import type { Fault } from '#core/result.ts'
import { MOST_OUTLIVING, ask, roomToOutlive } from '#renderer/host/host.ts'
import { type Edit, idOf, savedRecords } from './edit.ts'
import { callBytes, leavingCalls } from './leaving-calls.ts'
import { readAfter, refreshShootList, revisions, seenVersion, noteVersion } from './library.ts'

const unsavedSignal = signal(0)
/** Edits on their way to the library. */
export const unsaved: ReadonlySignal<number> = unsavedSignal

export interface RefusedEdit {
  readonly edit: Edit
  readonly fault: Fault
}

/** Told of refused edits in the order in which they were made; the next are sent once it has dealt with them. */
export type OnRefused = (refused: readonly RefusedEdit[]) => Promise<void>

interface OnItsWay {
  readonly edit: Edit
  readonly out: SentEdit
  readonly bytes: number
  readonly onRefused: OnRefused
  readonly ended: () => void
}

/** Sent and not answered yet. */
let sent: readonly OnItsWay[] = []
let waiting: OnItsWay[] = []
let underWay: AbortController | null = null
let work: Promise<void> | null = null

/** As many edits go in one call at most. */
const MOST_AT_ONCE = 500

function revisionOf(record: { readonly id: string; readonly revision: number }): number {
  return revisions.get(record.id) ?? record.revision
}

/** Names the revisions that will be there when its turn comes: each saved change raises its record's by one. */
function changesOf(edit: Edit): Change[] {
  return savedRecords(edit).map((record) => {
    const id = idOf(record)
    const before = record.before === null ? null : revisionOf(record.before)
    if (record.after === null) revisions.delete(id)
    else revisions.set(id, (before ?? 0) + 1)
    return { kind: record.kind, id, before, record: record.after } as Change
  })
}

/** What was expected of edits that were refused is not so. */
function takeBackRevisions(changes: readonly Change[]): void {
  for (const { id, before } of changes.toReversed()) {
    if (before === null) revisions.delete(id)
    else revisions.set(id, before)
  }
}

/** Sends an edit in its turn. Resolves when it is saved, or refused and dealt with. */
export async function save(edit: Edit, onRefused: OnRefused): Promise<void> {
  const changes = changesOf(edit)
  if (changes.length === 0) return work ?? undefined
  unsavedSignal.value += 1
  const { promise, resolve } = Promise.withResolvers<void>()
  const out = { id: crypto.randomUUID(), changes }
  waiting.push({ edit, out, bytes: callBytes([out]), onRefused, ended: resolve })
  work ??= sendAll()
  return promise
}

/** Resolves once nothing is on its way any more. */
export async function allSaved(): Promise<void> {
  await work
}

readAfter(allSaved)

async function sendAll(): Promise<void> {
  try {
    while (waiting.length > 0) {
      sent = waiting.splice(0, countForOneCall())
      // oxlint-disable-next-line no-await-in-loop
      await sendThese(sent)
    }
  } finally {
    work = null
  }
}

/** As many of those waiting as outlive the page together; one that is too large by itself goes alone. */
function countForOneCall(): number {
  let bytes = 0
  const end = waiting.findIndex((way, index) => {
    bytes += way.bytes
    return index > 0 && (bytes > MOST_OUTLIVING || index >= MOST_AT_ONCE)
  })
  return end === -1 ? waiting.length : end
}

async function sendThese(these: readonly OnItsWay[]): Promise<void> {
  underWay = new AbortController()
  const answer = await ask('library.save', { edits: these.map(({ out }) => out) }, underWay.signal)
  // Given up by leaving, which has sent them again.
  if (underWay.signal.aborted) return
  // One ill-formed edit must not take the others along.
  if (!answer.ok && these.length > 1 && answer.fault.reason === 'bad-input') return sendSingly(these)
  const answers = answer.ok ? answer.value.answers : these.map(() => answer)
  const gone = new Set<string>()
  const refused: (RefusedEdit & { readonly way: OnItsWay })[] = []
  these.forEach((way, index) => {
    const one: Answer<SavedEdit> | undefined = answers[index]
    if (one?.ok === true) noteSaved(one.value)
    else refused.push({ edit: way.edit, fault: one === undefined ? NO_ANSWER : one.fault, way })
  })
  for (const { way } of refused) for (const { id } of way.out.changes) gone.add(id)
  if (refused.length > 0) {
    // What waits on a refused one can't be saved either; the rest can.
    const rests = waiting.filter(({ out }) => {
      const isResting = out.changes.some(({ id }) => gone.has(id))
      // What comes after it may rest on what else it changes.
      if (isResting) for (const { id } of out.changes) gone.add(id)
      return isResting
    })
    waiting = waiting.filter((way) => !rests.includes(way))
    refused.push(...rests.map((way) => ({ edit: way.edit, fault: RESTS, way })))
  }
  sent = []
  unsavedSignal.value -= these.length + refused.filter(({ way }) => !these.includes(way)).length
  takeBackRevisions(refused.flatMap(({ way }) => way.out.changes))
  await tellRefused(refused)
  if (these.some(({ edit }) => changesList(edit))) await refreshShootList()
  for (const way of new Set([...these, ...refused.map(({ way }) => way)])) way.ended()
}

const RESTS: Fault = { reason: 'rests', message: 'It was made upon a change that was not saved.' }
const NO_ANSWER: Fault = { reason: 'no-answer', message: 'The library did not answer for it.' }

async function sendSingly(these: readonly OnItsWay[]): Promise<void> {
  waiting.unshift(...these.slice(1))
  sent = these.slice(0, 1)
  await sendThese(sent)
}

function noteSaved(saved: SavedEdit): void {
  // A version further on than our own one step tells of another window's change, which is still to be read.
  if (saved.version === seenVersion.value + 1) noteVersion(saved.version)
}

async function tellRefused(refused: readonly (RefusedEdit & { readonly way: OnItsWay })[]): Promise<void> {
  const [first] = refused
  if (first !== undefined) await first.way.onRefused(refused)
}

/** Whether the list of shoots, which tells their names and how many spots they hold, changes with it. */
function changesList(edit: Edit): boolean {
  return savedRecords(edit).some(({ kind, before, after }) => kind === 'shoot' || before === null || after === null)
}

/** Whether all that is on its way outlives the page. */
export function outlivesLeaving(): boolean {
  const bytes = [...sent, ...waiting].reduce((sum, way) => sum + way.bytes, 0)
  return bytes <= MOST_OUTLIVING
}

/** To be called when the page goes, at once and for good: sends all that has no answer yet, in calls that outlive it. */
export function sendAtLeaving(): void {
  if (waiting.length === 0) return
  const [begun, others] = [sent.map(({ out }) => out), waiting.map(({ out }) => out)]
  // What is under way goes once more, before what rests on it: given up here it leaves its room to the new call.
  if (callBytes([...begun, ...others]) > roomToOutlive()) underWay?.abort()
  waiting = []
  for (const edits of leavingCalls(begun, others, roomToOutlive())) void ask('library.save', { edits })
}
