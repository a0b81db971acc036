/** The beads of the day on the board, worked out again only when the day changes or the subject goes elsewhere. */
import { computed } from '@preact/signals'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { LightSkyline } from '#core/light/light-scene.ts'
import { day, scene } from '#renderer/state/plan/daylight.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { sameSky } from '#renderer/state/plan/same-sky.ts'
import { zone } from '#renderer/state/plan/zone.ts'
import { type ClockHour, type HourBead, clockHours, hourBeads } from '#renderer/view/drawing/hour-ring.ts'

const hours = computed<readonly ClockHour[]>(() => (day.value === null ? [] : clockHours(day.value, zone.value)))

interface Known {
  readonly hours: readonly ClockHour[]
  readonly skyline: LightSkyline | null
  readonly at: LatLon
  readonly beads: readonly HourBead[]
}

let lastBeads: Known | null = null

export const dayBeads = computed<readonly HourBead[]>(() => {
  const at = plan.value?.spot.stop.at ?? null
  const skyline = scene.value?.skylines.subject ?? null
  const all = hours.value
  if (at === null) return []
  if (lastBeads !== null && lastBeads.hours === all && lastBeads.skyline === skyline && sameSky(lastBeads.at, at))
    return lastBeads.beads
  const beads = hourBeads(at, all, skyline)
  lastBeads = { hours: all, skyline, at, beads }
  return beads
})
