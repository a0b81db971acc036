/** Laying the first spot of a shoot: by its landmark where there is one, else at the middle of the map; by day either way. */
import { geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { wishesMade } from '#core/light/light-wish.ts'
import { firstSpot } from '#core/plan/first-spot.ts'
import { nowByDay } from '#core/plan/first-time.ts'
import { newSpot } from '#core/record/new-records.ts'
import { rankBetween } from '#core/record/shelf-rank.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { type Zone, civilDayOf, formatClock, formatDay, isZone } from '#core/time/civil.ts'
import type { RecordEdit } from '#renderer/state/library/edit.ts'
import { commit, undoOffer } from '#renderer/state/library/history.ts'
import { shoot, spots } from '#renderer/state/library/library.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { terrainAtHand } from '#renderer/state/plan/terrain.ts'
import { FALLBACK_ZONE, findZones } from '#renderer/state/plan/zone.ts'
import { fitPlan, mapMiddle } from '#renderer/state/session/map-window.ts'
import { metres } from '#renderer/text/figure.ts'
import { landmarkName } from '#renderer/text/names.ts'
import { firstStepsWords as say } from '#renderer/words/en-first-steps.ts'
import { words } from '#renderer/words/en.ts'

/** Metres from the landmark beyond which a map that was moved is meant to be somewhere else. */
const ELSEWHERE = 50_000

function landmarkPlace({ landmarks: [landmark] }: Shoot): LatLon | null {
  return landmark === undefined ? null : landmarkMiddle(landmarkPoints(landmark))
}

/** A landmark within a sentence. */
export function landmarkSaid(landmark: Landmark | undefined): string {
  return landmark === undefined || landmark.name.trim() === '' ? say.theLandmark : landmarkName(landmark)
}

/** Whether whoever adds a spot at the middle of the map looks at the country around the landmark. */
function looksAtLandmark(home: Shoot): boolean {
  const [place, middle] = [landmarkPlace(home), mapMiddle()]
  return place !== null && (middle === null || geodesicDistance(place, middle) <= ELSEWHERE)
}

async function zoneAt(home: Shoot, at: LatLon): Promise<Zone> {
  if (home.zone !== null && isZone(home.zone)) return home.zone
  return (await findZones(at))[0] ?? FALLBACK_ZONE
}

/** The shoot as it is once something has been waited for; null when another is open by then, or it has a spot. */
function stillEmpty({ id }: Shoot): Shoot | null {
  const open = shoot.peek()
  return open?.id === id && spots.peek().length === 0 ? open : null
}

/** From how far, from what, and when, for the message. */
function saidOf(home: Shoot, spot: { readonly stop: { readonly at: LatLon }; readonly when: number }, zone: Zone) {
  const place = landmarkPlace(home) ?? spot.stop.at
  const away = metres(geodesicDistance(spot.stop.at, place), settings.peek().units)
  const when = `${formatDay(civilDayOf(spot.when, zone).date)}, ${formatClock(spot.when, zone)}`
  return [away, landmarkSaid(home.landmarks[0]), when] as const
}

/** By the landmark. Its light becomes the light wanted where none was: so the day shows the window that the time was taken from. */
async function layByLandmark(asked: Shoot, at: LatLon): Promise<void> {
  const zone = await zoneAt(asked, at)
  const home = stillEmpty(asked)
  if (home === null) return
  const [landmark = null] = home.landmarks
  const named = { id: crypto.randomUUID(), rank: rankBetween(null, null) }
  const laid = firstSpot(home, named, Date.now(), zone, terrainAtHand(at, landmark))
  if (laid === null) return layAt(home, at)
  const { spot, light } = laid
  const records: RecordEdit[] = [{ kind: 'spot', before: null, after: spot }]
  if (light !== null && wishesMade(home.light).length === 0)
    records.unshift({ kind: 'shoot', before: home, after: { ...home, light } })
  const saved = commit({ label: words.board.edit.addSpot, records })
  fitPlan()
  tell(
    'done',
    light === null ? say.laidByDay(...saidOf(home, spot, zone)) : say.laidLit(...saidOf(home, spot, zone)),
    undoOffer(),
  )
  await saved
}

/** At a place, the landmark behind if there is one. */
async function layAt(asked: Shoot, at: LatLon): Promise<void> {
  const zone = await zoneAt(asked, at)
  const home = stillEmpty(asked)
  if (home === null) return
  const after = newSpot(crypto.randomUUID(), home, at, rankBetween(null, null), nowByDay(at, Date.now(), zone))
  await commit({ label: words.board.edit.addSpot, records: [{ kind: 'spot', before: null, after }] })
}

/** By the landmark if there is one, wherever the map looks. */
export async function layFirstSpot(): Promise<void> {
  const home = shoot.peek()
  if (home === null || spots.peek().length > 0) return
  const place = landmarkPlace(home)
  if (place === null) await layFreely()
  else await layByLandmark(home, place)
}

/** At the middle of the map. */
async function layFreely(): Promise<void> {
  const home = shoot.peek()
  if (home !== null) await layAt(home, mapMiddle() ?? { lat: 0, lon: 0 })
}

/** By the landmark while the map looks at it: whoever looks at another country wants the spot there. */
export async function addFirstSpot(home: Shoot): Promise<void> {
  await (looksAtLandmark(home) ? layFirstSpot() : layFreely())
}
