/** What is open: the shoots by name, the shoot at work with its spots, and the spot on the board. */
import { computed, signal } from '@preact/signals'
import type { Output } from '#app/contract/index.ts'
import type { Shoot } from '#core/plan/shoot.ts'
import type { Spot } from '#core/plan/spot.ts'
import { ask } from '#renderer/host.ts'
import { tell } from './notices.ts'

export const libraryState = signal<Output<'library.state'> | null>(null)
export const shootList = signal<Output<'library.shoots'>['shoots']>([])
export const shoot = signal<Shoot | null>(null)
/** Spots of the shoot in shelf order. */
export const spots = signal<readonly Spot[]>([])
export const spotId = signal<string | null>(null)

/** The arrangement while something is being dragged: shown everywhere, not yet saved. */
export const liveSpot = signal<Spot | null>(null)
export const liveShoot = signal<Shoot | null>(null)

export const savedSpot = computed(() => spots.value.find((candidate) => candidate.id === spotId.value) ?? null)
/** The spot on the board as it looks right now. */
export const boardSpot = computed(() => liveSpot.value ?? savedSpot.value)
export const boardShoot = computed(() => liveShoot.value ?? shoot.value)

/** Version of the library that the page has seen; another window's changes raise it beyond. */
export const seenVersion = signal(0)

export async function refreshShootList(): Promise<void> {
  const answer = await ask('library.shoots', {})
  if (answer.ok) shootList.value = answer.value.shoots
  else tell('fault', answer.fault.message)
}

/** Opens a shoot and puts the given spot (or its first) on the board. */
export async function openShoot(shootId: string, wantedSpotId: string | null = null): Promise<boolean> {
  const answer = await ask('library.open', { shootId })
  if (!answer.ok) {
    tell('fault', answer.fault.message)
    return false
  }
  liveSpot.value = null
  liveShoot.value = null
  shoot.value = answer.value.shoot
  spots.value = answer.value.spots
  seenVersion.value = answer.value.version
  const wanted = answer.value.spots.find((candidate) => candidate.id === wantedSpotId) ?? answer.value.spots[0]
  spotId.value = wanted?.id ?? null
  return true
}

/** Looks whether another window has changed the library since, and reads it again if so. */
export async function refreshIfChanged(): Promise<void> {
  const answer = await ask('library.state', {})
  if (!answer.ok) return
  libraryState.value = answer.value
  if (answer.value.version === seenVersion.value || liveSpot.value !== null || shoot.value === null) return
  await refreshShootList()
  await openShoot(shoot.value.id, spotId.value)
}
