/** What is open: the shoots by name, the shoot at work with its spots, and the spot on the board. */
import { batch, computed, signal } from '@preact/signals'
import type { Output } from '#app/contract/index.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { ask } from '#renderer/host/host.ts'
import { words } from '#renderer/words/en.ts'
import { tellDamage, tellFault } from './damage.ts'

export const libraryState = signal<Output<'library.state'> | null>(null)
export const shootList = signal<Output<'library.shoots'>['shoots']>([])
export const shoot = signal<Shoot | null>(null)
/** Spots of the shoot in shelf order. */
export const spots = signal<readonly Spot[]>([])
export const spotId = signal<string | null>(null)

/** The arrangement while something is being dragged: shown everywhere, not yet saved. */
export const liveSpot = signal<Spot | null>(null)
export const liveShoot = signal<Shoot | null>(null)

/** An arrangement that lies on the board without being on the shelf, over the spot that was there before. */
export interface TryOut {
  /** As it would be kept. */
  readonly spot: Spot
  /** Id of the spot to go back to; null when there was none. */
  readonly home: string | null
}
export const tryOut = signal<TryOut | null>(null)

/** The shelf's spot that is at work, whatever is tried out over it. */
export const homeSpot = computed(() => spots.value.find((candidate) => candidate.id === spotId.value) ?? null)
/** What is on the board while nothing is dragged: the try-out when there is one, else the spot as it is saved. */
export const savedSpot = computed(() => tryOut.value?.spot ?? homeSpot.value)
/** The spot on the board as it looks right now. */
export const boardSpot = computed(() => liveSpot.value ?? savedSpot.value)
export const boardShoot = computed(() => liveShoot.value ?? shoot.value)

/** Revision of each record as last read or saved; a save names the one it started from. */
export const revisions = new Map<string, number>()

/** Version of the library that the page has seen; another window's changes raise it beyond. */
export const seenVersion = signal(0)

export async function refreshShootList(): Promise<void> {
  const answer = await ask('library.shoots', {})
  if (answer.ok) shootList.value = answer.value.shoots
  else tellFault(answer.fault)
}

/** Opens a shoot and puts the given spot (or its first) on the board. */
export async function openShoot(shootId: string, wantedSpotId: string | null = null): Promise<boolean> {
  const answer = await ask('library.open', { shootId })
  if (!answer.ok) {
    tellFault(answer.fault)
    return false
  }
  showOpened(answer.value, wantedSpotId)
  const { broken = [] } = answer.value
  if (broken.length > 0) tellDamage(words.board.trouble.brokenSpots(broken))
  return true
}

/** Puts a shoot as the library holds it on the screen, all at once. */
export function showOpened(opened: Output<'library.open'>, wantedSpotId: string | null): void {
  batch(() => {
    liveSpot.value = null
    liveShoot.value = null
    if (tryOut.value?.spot.shootId !== opened.shoot.id) tryOut.value = null
    shoot.value = opened.shoot
    spots.value = opened.spots
    seenVersion.value = opened.version
    const wanted = opened.spots.find((candidate) => candidate.id === wantedSpotId) ?? opened.spots[0]
    spotId.value = wanted?.id ?? null
  })
  for (const record of [opened.shoot, ...opened.spots]) revisions.set(record.id, record.revision)
}

/** Opens the shoot that was last at work, else the first of the list; shows none when there is none. */
export async function openAny(shootId: string | null, wantedSpotId: string | null): Promise<void> {
  const wanted = shootList.value.find((brief) => brief.id === shootId) ?? shootList.value[0]
  if (wanted !== undefined) await openShoot(wanted.id, wantedSpotId)
  else showNothing()
}

export function showNothing(): void {
  batch(() => {
    shoot.value = null
    spots.value = []
    spotId.value = null
    tryOut.value = null
    liveSpot.value = null
    liveShoot.value = null
  })
}
