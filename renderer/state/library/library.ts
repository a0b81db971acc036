/** What is open: the shoots by name, the shoot at work with its spots, and the spot on the board. */
import { type ReadonlySignal, batch, computed, signal } from '@preact/signals'
import type { Output } from '#app/contract/index.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { ask } from '#renderer/host/host.ts'
import { words } from '#renderer/words/en.ts'
import { tell } from './notices.ts'
import { settleUnfinished } from './unfinished.ts'
import { tellDamage, tellFault } from './damage.ts'

const libraryStateSignal = signal<Output<'library.state'> | null>(null)
export const libraryState: ReadonlySignal<Output<'library.state'> | null> = libraryStateSignal

export function tellLibraryState(state: Output<'library.state'>): void {
  libraryStateSignal.value = state
}
const shootListSignal = signal<Output<'library.shoots'>['shoots']>([])
export const shootList: ReadonlySignal<Output<'library.shoots'>['shoots']> = shootListSignal
const shootSignal = signal<Shoot | null>(null)
export const shoot: ReadonlySignal<Shoot | null> = shootSignal
const spotsSignal = signal<readonly Spot[]>([])
/** Spots of the shoot in shelf order. */
export const spots: ReadonlySignal<readonly Spot[]> = spotsSignal
const spotIdSignal = signal<string | null>(null)
export const spotId: ReadonlySignal<string | null> = spotIdSignal

/** Puts a spot of the shelf to work; null for none. */
export function workOnSpot(id: string | null): void {
  spotIdSignal.value = id
}

const liveSpotSignal = signal<Spot | null>(null)
/** The arrangement while something is being dragged: shown everywhere, not yet saved. */
export const liveSpot: ReadonlySignal<Spot | null> = liveSpotSignal
const liveShootSignal = signal<Shoot | null>(null)
export const liveShoot: ReadonlySignal<Shoot | null> = liveShootSignal
/** Whether a hand, or keys, are moving something right now. */
export const moving: ReadonlySignal<boolean> = computed(() => liveSpot.value !== null || liveShoot.value !== null)

/** Shows an arrangement that a hand holds; a shoot that is the saved one is not live. */
export function showLive(spot: Spot, openShoot: Shoot): void {
  batch(() => {
    liveSpotSignal.value = spot
    if (openShoot !== shoot.peek()) liveShootSignal.value = openShoot
  })
}

/** Shows what is saved again. */
export function endLive(): void {
  batch(() => {
    liveSpotSignal.value = null
    liveShootSignal.value = null
  })
}

/** An arrangement that lies on the board without being on the shelf, over the spot that was there before. */
export interface TryOut {
  /** As it would be kept. */
  readonly spot: Spot
  /** Id of the spot to go back to; null when there was none. */
  readonly home: string | null
}
const tryOutSignal = signal<TryOut | null>(null)
export const tryOut: ReadonlySignal<TryOut | null> = tryOutSignal

/** What of the records on the screen is another now; what is left out stays. */
export interface ShownRecords {
  readonly shoot?: Shoot | null
  readonly spots?: readonly Spot[]
  readonly spotId?: string | null
  readonly tryOut?: TryOut | null
}

export function showRecords(now: ShownRecords): void {
  batch(() => {
    if (now.shoot !== undefined) shootSignal.value = now.shoot
    if (now.spots !== undefined) spotsSignal.value = now.spots
    if (now.spotId !== undefined) spotIdSignal.value = now.spotId
    if (now.tryOut !== undefined) tryOutSignal.value = now.tryOut
  })
}

/** The shelf's spot that is at work, whatever is tried out over it. */
export const homeSpot = computed(() => spots.value.find((candidate) => candidate.id === spotId.value) ?? null)
/** What is on the board while nothing is dragged: the try-out when there is one, else the spot as it is saved. */
export const savedSpot = computed(() => tryOut.value?.spot ?? homeSpot.value)
/** The spot on the board as it looks right now. */
export const boardSpot = computed(() => liveSpot.value ?? savedSpot.value)
export const boardShoot = computed(() => liveShoot.value ?? shoot.value)

/** Whether there is one; who asks only that is not asked again with every movement. */
export const hasBoardSpot = computed(() => boardSpot.value !== null)

/** Revision of each record as last read or saved; a save names the one it started from. */
export const revisions = new Map<string, number>()

const seenVersionSignal = signal(0)
/** Version of the library that the page has seen; another window's changes raise it beyond. */
export const seenVersion: ReadonlySignal<number> = seenVersionSignal

export function noteVersion(version: number): void {
  seenVersionSignal.value = version
}

export async function refreshShootList(): Promise<void> {
  const answer = await ask('library.shoots', {})
  if (answer.ok) shootListSignal.value = answer.value.shoots
  else tellFault(answer.fault)
}

/** Resolves once what was changed here is saved. */
let whenSaved = async (): Promise<void> => {}

/** Told by what saves: a shoot that is read before it would show what is about to be replaced. */
export function readAfter(saved: () => Promise<void>): void {
  whenSaved = saved
}

/** Opens a shoot and puts the given spot (or its first) on the board, with all that was changed here. */
export async function openShoot(shootId: string, wantedSpotId: string | null = null): Promise<boolean> {
  settleUnfinished()
  await whenSaved()
  return readShoot(shootId, wantedSpotId)
}

/** Reads a shoot as the library holds it now. */
export async function readShoot(shootId: string, wantedSpotId: string | null): Promise<boolean> {
  const answer = await ask('library.open', { shootId })
  if (!answer.ok) {
    tellFault(answer.fault)
    return false
  }
  showOpened(answer.value, wantedSpotId)
  const { mended, broken = [] } = answer.value
  if (mended !== undefined) tell('fault', words.board.files.mended(mended))
  if (broken.length > 0) tellDamage(words.board.trouble.brokenSpots(broken))
  return true
}

/** Puts a shoot as the library holds it on the screen, all at once. */
export function showOpened(opened: Output<'library.open'>, wantedSpotId: string | null): void {
  batch(() => {
    liveSpotSignal.value = null
    liveShootSignal.value = null
    if (tryOut.value?.spot.shootId !== opened.shoot.id) tryOutSignal.value = null
    shootSignal.value = opened.shoot
    spotsSignal.value = opened.spots
    seenVersionSignal.value = opened.version
    const wanted = opened.spots.find((candidate) => candidate.id === wantedSpotId) ?? opened.spots[0]
    spotIdSignal.value = wanted?.id ?? null
  })
  for (const record of [opened.shoot, ...opened.spots]) revisions.set(record.id, record.revision)
}

/** Opens the shoot that was last at work, else the first of the list; shows none when there is none. */
export async function openAny(shootId: string | null, wantedSpotId: string | null): Promise<void> {
  const wanted = shootList.value.find((brief) => brief.id === shootId) ?? shootList.value[0]
  if (wanted !== undefined) await readShoot(wanted.id, wantedSpotId)
  else showNothing()
}

export function showNothing(): void {
  batch(() => {
    shootSignal.value = null
    spotsSignal.value = []
    spotIdSignal.value = null
    tryOutSignal.value = null
    liveSpotSignal.value = null
    liveShootSignal.value = null
  })
}
