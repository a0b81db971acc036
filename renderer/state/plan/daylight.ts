/** The light of the day on the board: events and windows, worked out again only when what they depend on changes, which the time of day does not. */
import { computed } from '@preact/signals'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { LightScene } from '#core/light/light-scene.ts'
import { type DayLight, type SkyDay, lightOfDay, skyOfDay, lightSceneOf } from '#core/plan/day-light.ts'
import type { Plan } from '#core/plan/plan.ts'
import { civilDayOf } from '#core/time/civil.ts'
import { sameParts } from '#renderer/job/same-parts.ts'
import { moving } from '#renderer/state/library/library.ts'
import { dayBoard } from './calm-board.ts'
import { sameSky } from './same-sky.ts'
import { skylines } from './skylines.ts'
import { zone } from './zone.ts'

/** What the scene depends on, by identity: an edit of one thing leaves the other records as they were. */
function partsOf({ shoot, spot, landmark, terrain, pins }: Plan): readonly unknown[] {
  const { stop, standpoint, shot, hold } = spot
  return [stop, standpoint, shot, hold, landmark, shoot.subject, shoot.bag, shoot.refraction, terrain, pins]
}

let lastScene: { readonly parts: readonly unknown[]; readonly scene: LightScene } | null = null

/** The light scene of the spot on the board. */
export const scene = computed<LightScene | null>(() => {
  const now = dayBoard.plan.value
  const reading = dayBoard.assessment.value
  if (now === null || reading === null) return null
  const edges = skylines.value
  const parts = [...partsOf(now), edges]
  if (lastScene !== null && sameParts(lastScene.parts, parts)) return lastScene.scene
  const made = lightSceneOf(now, reading, edges)
  lastScene = { parts, scene: made }
  return made
})

/** The civil day of the board's instant; the same object for as long as it is the same day in the same zone. */
let dayBefore: { readonly zone: string; readonly day: DayLight['day'] } | null = null
export const day = computed<DayLight['day'] | null>(() => {
  const when = dayBoard.plan.value?.spot.when
  if (when === undefined) return null
  const here = zone.value
  if (dayBefore !== null && dayBefore.zone === here && when >= dayBefore.day.start && when < dayBefore.day.end)
    return dayBefore.day
  const found = civilDayOf(when, here)
  dayBefore = { zone: here, day: found }
  return found
})

const wishes = computed(() => dayBoard.plan.value?.shoot.light ?? null)

let skyFrom: LatLon | null = null

/** Where the sky is looked up for: exactly, but while a hand drags only as often as it matters. */
const place = computed(() => {
  const at = dayBoard.plan.value?.spot.stop.at ?? null
  const same = moving.value && at !== null && skyFrom !== null && sameSky(skyFrom, at)
  if (!same) skyFrom = at
  return skyFrom
})

/** Only another place or another day has another sky. */
const sky = computed<SkyDay | null>(() =>
  place.value === null || day.value === null ? null : skyOfDay(place.value, day.value),
)

export const daylight = computed<DayLight | null>(() => {
  const today = day.value
  const now = scene.value
  const wishesNow = wishes.value
  const above = sky.value
  if (today === null || now === null || wishesNow === null || above === null) return null
  return lightOfDay(now, wishesNow, today, zone.value, above)
})
