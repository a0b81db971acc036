/** What is to know of a spot at a glance, as its card on the shelf tells it. */
import { hazardsSeen } from '#renderer/text/hazard-text.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Spot } from '#core/record/spot.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { metres, millimetres } from '#renderer/text/figure.ts'
import { words } from '#renderer/words/en.ts'

/** Distance, focal length: what tells one spot from the next. */
export function figuresOf(found: Assessment, units: UnitSystem): string {
  const line = found.toLandmark ?? found.toSubject
  const parts = [metres(line.distance, units)]
  if (found.focalLength !== null) parts.push(millimetres(found.focalLength))
  return parts.join(' · ')
}

/** Permission still open or refused, then the hazards seen, the user's own words on them among these. */
export function hintOf(spot: Spot): string {
  const { permissionHints } = words.spot
  const { state } = spot.permission
  const permission = state === 'not-needed' || state === 'granted' ? '' : permissionHints[state]
  return [permission, ...hazardsSeen(spot)].filter((part) => part !== '').join(' · ')
}
