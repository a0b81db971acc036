/** What a hand is at on a plan: the grip that a pointer holds, the name of what moving it does, and what can't be kept of it. */
import { type ReadonlySignal, signal } from '@preact/signals'
import type { Refuse } from './live-change.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { stoppingWords } from '#renderer/words/en-stopping.ts'
import type { Grip } from '#core/plan/grip.ts'
import { drawnFault } from '#core/plan/drawn-grip.ts'

const heldSignal = signal<{ readonly grip: Grip; readonly where: 'map' | 'close' } | null>(null)
/** What a pointer holds right now, and where; the plans neither zoom nor regroup meanwhile. */
export const heldGrip: ReadonlySignal<{ readonly grip: Grip; readonly where: 'map' | 'close' } | null> = heldSignal

export function holdGrip(grip: Grip, where: 'map' | 'close'): void {
  heldSignal.value = { grip, where }
}

export function letGripGo(): void {
  heldSignal.value = null
}

/** Drawn ground that is left in a form which can't be kept. */
export const refuseGround: Refuse = (before, after) => {
  const wrong = drawnFault(before.shoot, after.shoot)
  return wrong === null ? null : `${stoppingWords.faults[wrong.fault][wrong.form]} ${stoppingWords.notKept}`
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
  obstruction: groundWords.map.move,
  'drawn-point': stoppingWords.edit.movePoint,
  'drawn-leg': stoppingWords.edit.addPoint,
}

export function moveLabel(grip: Grip): string {
  if (grip.on === 'obstruction' && grip.end !== null) return groundWords.map.moveEnd
  return LABELS[grip.on]
}
