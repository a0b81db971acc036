/** What the box for places offers: coordinates in any form as typed, else towns by name from the offline gazetteer. */
import { formatDecimal } from '#core/geo/coordinate-format.ts'
import { parseCoordinates } from '#core/geo/coordinate-text.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { ask } from '#renderer/host/host.ts'
import { words } from '#renderer/words/en.ts'

export interface PlaceOffer {
  readonly title: string
  readonly note: string
  readonly at: LatLon
  /** Zoom at which the place is well seen. */
  readonly zoom: number
}

export interface PlaceOffers {
  readonly offers: readonly PlaceOffer[]
  /** Why there are none; null otherwise. */
  readonly message: string | null
  readonly attribution: string
}

const POINT_ZOOM = 17
const TOWN_ZOOM = 13
const MOST = 8

/** Offers for coordinates; null when the text is none and names may be meant. */
function coordinateOffers(text: string, near: LatLon | null): PlaceOffers | null {
  const read = parseCoordinates(text, near)
  const { place } = words.board
  if (read.ok) {
    const { at, swapped } = read.value
    const offers: PlaceOffer[] = [{ title: formatDecimal(at, 5), note: place.coordinates, at, zoom: POINT_ZOOM }]
    if (swapped !== null)
      offers.push({ title: formatDecimal(swapped, 5), note: place.swapped, at: swapped, zoom: POINT_ZOOM })
    return { offers, message: null, attribution: '' }
  }
  // Figures make it an attempt at coordinates, whose fault should be told; towns are written without.
  return /\d/u.test(text) ? { offers: [], message: read.fault.message, attribution: '' } : null
}

export async function offersFor(text: string, near: LatLon | null): Promise<PlaceOffers> {
  const typed = coordinateOffers(text, near)
  if (typed !== null && typed.offers.length > 0) return typed
  const answer = await ask('places.find', { text: text.slice(0, 200), limit: MOST })
  if (!answer.ok) return { offers: [], message: answer.fault.message, attribution: '' }
  const { places, attribution } = answer.value
  const offers = places.map(({ name, country, admin, population, lat, lon }) => ({
    title: name,
    note: [admin, country, words.board.place.people(population)].filter((part) => part !== '').join(' · '),
    at: { lat, lon },
    zoom: TOWN_ZOOM,
  }))
  if (offers.length > 0) return { offers, message: null, attribution }
  return { offers, message: typed?.message ?? words.board.place.none(text), attribution: '' }
}
