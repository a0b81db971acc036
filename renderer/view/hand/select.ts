/** Which of the three things, or which point of drawn ground, is selected when a part of it is taken or reached. */
import { selectThing } from '#renderer/state/session/navigation.ts'
import { choosePoint } from '#renderer/state/session/drawn-ground.ts'
import type { Grip } from '#core/plan/grip.ts'

export function thingOf(grip: Grip): 'subject' | 'standpoint' | 'landmark' | null {
  if (grip.on === 'parking' || grip.on === 'obstruction' || 'sort' in grip) return null
  if (grip.on === 'standpoint' || grip.on === 'landmark') return grip.on
  return grip.on === 'corner' || grip.on === 'edge' ? 'landmark' : 'subject'
}

export function selectGrip(grip: Grip): void {
  selectThing(thingOf(grip))
  if ('sort' in grip) choosePoint(grip.on === 'drawn-point' ? grip.at : null)
}
