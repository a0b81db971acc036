/** The zone whose clock is shown: the shoot's own, else the one found from where the subject stops; never the computer's. */
import { computed, signal } from '@preact/signals'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { type Zone, isZone } from '#core/time/civil.ts'
import { ask } from '#renderer/host/host.ts'
import { calmly } from './calmly.ts'
import { plan } from './board-plan.ts'

/** Zones in use at a place, the usual one first; several where two clocks are in use. */
const zonesFound = signal<ReadonlyMap<string, readonly Zone[]>>(new Map())
const zoneRequests = new Map<string, Promise<readonly Zone[]>>()

/** Zones are looked up for squares of about a hundred metres: a drag does not ask for every pixel. */
function keyOf({ lat, lon }: LatLon): string {
  return `${lat.toFixed(3)} ${lon.toFixed(3)}`
}

/** Where no zone can be found, as before the services have answered. */
export const FALLBACK_ZONE: Zone = 'UTC'

/** Zones at a place: what is known of it now; asked for when it is not, and null until then. */
export function zonesAt(at: LatLon): readonly Zone[] | null {
  const key = keyOf(at)
  const known = zonesFound.value.get(key)
  if (known !== undefined) return known
  void findZones(at)
  return null
}

/** The same, waited for. None when the services cannot tell. */
export function findZones(at: LatLon): Promise<readonly Zone[]> {
  const key = keyOf(at)
  const before = zoneRequests.get(key)
  if (before !== undefined) return before
  const answer = ask('places.zones', { at }).then((zones) => {
    const list = zones.ok ? zones.value.zones.filter(isZone) : []
    zonesFound.value = new Map(zonesFound.value).set(key, list)
    return list
  })
  zoneRequests.set(key, answer)
  return answer
}

/** The zone of a shoot at a place; the last one found stands in while another is being looked up. */
export function zoneFor(shoot: Pick<Shoot, 'zone'>, at: LatLon): Zone {
  if (shoot.zone !== null && isZone(shoot.zone)) return shoot.zone
  return zonesAt(at)?.[0] ?? FALLBACK_ZONE
}

let lastZone: Zone = FALLBACK_ZONE

/** The zone of the spot on the board. */
export const zone = computed<Zone>(() => {
  const now = plan.value
  if (now === null) return lastZone
  const { shoot, spot } = now
  if (shoot.zone !== null && isZone(shoot.zone)) lastZone = shoot.zone
  else {
    const here = zonesFound.value.get(keyOf(spot.stop.at))
    // Not known yet: the last stands in. Looked for and not found: none does.
    if (here !== undefined) lastZone = here[0] ?? FALLBACK_ZONE
  }
  return lastZone
})

/** Keeps asking for the zone of wherever the spot on the board goes. */
export function followZone(): void {
  calmly(() => {
    const now = plan.value
    if (now !== null) void findZones(now.spot.stop.at)
  })
}

/** Zones on offer at the board's place, the shoot's own choice included. */
export const zonesOnOffer = computed<readonly Zone[]>(() => {
  const now = plan.value
  if (now === null) return []
  const here = zonesFound.value.get(keyOf(now.spot.stop.at)) ?? []
  const own = now.shoot.zone
  return own === null || here.includes(own) || !isZone(own) ? here : [...here, own]
})
