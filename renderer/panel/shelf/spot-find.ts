/** The shelf's search: by word over all shoots, and what else lies on the map. */
import { type ReadonlySignal, computed, effect, signal } from '@preact/signals'
import type { Output } from '#app/contract/index.ts'
import { ask } from '#renderer/host/host.ts'
import { mapBounds } from '#renderer/state/session/map-window.ts'
import { seenVersion, shoot } from '#renderer/state/library/library.ts'
import { tell } from '#renderer/state/library/notices.ts'

type Found = Output<'library.find'>
export type SpotBrief = Found['spots'][number]

const findTextSignal = signal('')
export const findText: ReadonlySignal<string> = findTextSignal

export function findFor(text: string): void {
  findTextSignal.value = text
}
const foundSignal = signal<Found | null>(null)
export const spotsFound: ReadonlySignal<Found | null> = foundSignal
const near = signal<readonly SpotBrief[]>([])

/** Spots of other shoots within the map. */
export const alsoNear = computed(() => near.value.filter((brief) => brief.shootId !== shoot.value?.id))

const MOST_FOUND = 100
/** The shoot's own spots are among them and are left out afterwards. */
const MOST_NEAR = 500
/** Milliseconds of rest before the library is asked: between keys, and after the map has moved. */
const TYPING_PAUSE = 120
const MAP_PAUSE = 400

let findTurn = 0
let nearTurn = 0

async function find(words: string): Promise<void> {
  findTurn += 1
  const mine = findTurn
  if (words === '') {
    foundSignal.value = null
    return
  }
  const answer = await ask('library.find', { words: words.slice(0, 1_000), within: null, limit: MOST_FOUND })
  if (mine !== findTurn) return
  if (answer.ok) foundSignal.value = answer.value
  else tell('fault', answer.fault.message)
}

async function lookAround(within: NonNullable<typeof mapBounds.value>): Promise<void> {
  nearTurn += 1
  const mine = nearTurn
  const answer = await ask('library.find', { words: '', within, limit: MOST_NEAR })
  if (mine === nearTurn && answer.ok) near.value = answer.value.spots
}

function clamped(bounds: NonNullable<typeof mapBounds.value>): NonNullable<typeof mapBounds.value> {
  const lat = (value: number): number => Math.min(90, Math.max(-90, value))
  return { ...bounds, south: lat(bounds.south), north: lat(bounds.north) }
}

/** Starts following the typed words and the map; returns the way to stop. */
export function followSearch(): () => void {
  const stopFinding = effect(() => {
    const words = findText.value.trim()
    void seenVersion.value
    const timer = setTimeout(() => void find(words), words === '' ? 0 : TYPING_PAUSE)
    return () => clearTimeout(timer)
  })
  const stopLooking = effect(() => {
    const bounds = mapBounds.value
    void seenVersion.value
    if (bounds === null) return undefined
    const timer = setTimeout(() => void lookAround(clamped(bounds)), MAP_PAUSE)
    return () => clearTimeout(timer)
  })
  return () => {
    stopFinding()
    stopLooking()
  }
}
