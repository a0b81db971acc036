/** How a change made by hand reaches the board: shown while it lasts, saved once as one edit, or put back. */
import { batch, signal } from '@preact/signals'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import type { RecordEdit } from '#renderer/state/library/edit.ts'
import { commit } from '#renderer/state/library/history.ts'
import { liveShoot, liveSpot, savedSpot, shoot } from '#renderer/state/library/library.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { stoppingWords } from '#renderer/words/en-stopping.ts'
import { tell } from '#renderer/state/library/notices.ts'
import type { Grip, Moved } from '#core/plan/grip.ts'
import { drawnFault } from '#core/plan/drawn-grip.ts'

/** What a pointer holds right now, and where; the plans neither zoom nor regroup meanwhile. */
export const held = signal<{ readonly grip: Grip; readonly where: 'map' | 'close' } | null>(null)

/** The records as saved when a hand took hold; a change from elsewhere makes them others, and the hand must let go. */
export interface Held {
  readonly spot: Spot
  readonly shoot: Shoot
}

export function takeHold(): Held | null {
  const spot = savedSpot.peek()
  const open = shoot.peek()
  return spot === null || open === null ? null : { spot, shoot: open }
}

export function stillHolds(start: Held): boolean {
  return savedSpot.peek() === start.spot && shoot.peek() === start.shoot
}

export function showMoved(moved: Moved): void {
  batch(() => {
    liveSpot.value = moved.spot
    if (moved.shoot !== shoot.peek()) liveShoot.value = moved.shoot
  })
}

export function putBack(): void {
  batch(() => {
    liveSpot.value = null
    liveShoot.value = null
  })
}

/** Saves what changed as one edit; resolves when saved or refused. What can't be kept is put back, and told. */
export async function keepMoved(label: string, start: Held, moved: Moved): Promise<void> {
  const wrong = drawnFault(start.shoot, moved.shoot)
  if (wrong !== null) {
    putBack()
    tell('fault', `${stoppingWords.faults[wrong.fault][wrong.form]} ${stoppingWords.notKept}`)
    return
  }
  const records: RecordEdit[] = []
  if (moved.shoot !== start.shoot) records.push({ kind: 'shoot', before: start.shoot, after: moved.shoot })
  if (moved.spot !== start.spot) records.push({ kind: 'spot', before: start.spot, after: moved.spot })
  if (records.length === 0) putBack()
  else await commit({ label, records })
}

const LABELS: Readonly<Record<Grip['on'], string>> = {
  subject: mapWords.moveSubject,
  standpoint: mapWords.moveStandpoint,
  pair: mapWords.movePair,
  heading: mapWords.turnSubject,
  landmark: mapWords.moveLandmark,
  corner: mapWords.moveCorner,
  edge: mapWords.addCorner,
  parking: mapWords.moveParking,
  screen: groundWords.map.move,
  'ground-point': stoppingWords.edit.movePoint,
  'ground-leg': stoppingWords.edit.addPoint,
}

export function moveLabel(grip: Grip): string {
  if (grip.on === 'screen' && grip.end !== null) return groundWords.map.moveEnd
  return LABELS[grip.on]
}
