/** What the strip draws, each worked out again only when what it depends on changes: the time of day moves none but the line. */
import { computed } from '@preact/signals'
import type { WishKind } from '#core/light/light-wish.ts'
import { wishesMade } from '#core/light/light-wish.ts'
import { day } from '#renderer/state/plan/daylight.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { boardShoot } from '#renderer/state/library/library.ts'
import { wishName } from '#renderer/text/wish-names.ts'
import { moonSamples, sunSamples, topAltitude } from './sky-curve.ts'

/** Where the subject stops. */
export const stripPlace = computed(() => plan.value?.spot.stop.at ?? null)

/** To a hundredth of a degree: within it the sky's shapes don't change to the eye, so a pin that is dragged moves none. */
const coarsePlace = computed(() => {
  const at = stripPlace.value
  return at === null ? null : `${at.lat.toFixed(2)} ${at.lon.toFixed(2)}`
})

export const curves = computed(() => {
  const today = day.value
  const at = coarsePlace.value === null ? null : stripPlace.peek()
  if (today === null || at === null) return null
  return { day: today, at, top: topAltitude(at.lat), sun: sunSamples(at, today), moon: moonSamples(at, today) }
})

export const stripLandmark = computed(() => plan.value?.landmark ?? null)

/** What each wish made is called. */
export const wishNames = computed((): ReadonlyMap<WishKind, string> => {
  const shoot = boardShoot.value
  if (shoot === null) return new Map()
  const named = { shoot, landmark: stripLandmark.value }
  return new Map(wishesMade(shoot.light).map((kind) => [kind, wishName(kind, named)]))
})

export const hasSpot = computed(() => plan.value !== null)
