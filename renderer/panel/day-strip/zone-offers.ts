/** The zones one may choose from: as found from the place, those in use there, then all that the machine knows; fewer by typing. */
import { type Zone, isZone, zoneName } from '#core/time/civil.ts'

export interface ZoneOffer {
  /** Null: as found from the place. */
  readonly zone: Zone | null
  readonly inUse: boolean
}

export interface ZoneOffers {
  readonly offers: readonly ZoneOffer[]
  /** How many more there are than are listed. */
  readonly more: number
}

/** Listed at most; the clock of each has to be asked for. */
const MOST = 60

function plain(text: string): string {
  return text
    .toLowerCase()
    .replaceAll(/[_\s-]+/gu, ' ')
    .trim()
}

/** Those whose name has all the words typed begin one of its parts first, then those that have them anywhere. */
export function zoneOffers(here: readonly Zone[], all: readonly Zone[], typed: string): ZoneOffers {
  const sought = plain(typed)
  const fits = (zone: Zone): boolean => plain(`${zone} ${zoneName(zone)}`).includes(sought)
  const begins = (zone: Zone): boolean =>
    plain(zone)
      .split('/')
      .some((part) => part.startsWith(sought))
  const first = here.filter(fits)
  const others = all.filter((zone) => !here.includes(zone) && fits(zone) && isZone(zone))
  const sorted = sought === '' ? others : [...others.filter(begins), ...others.filter((zone) => !begins(zone))]
  const listed = sorted.slice(0, MOST)
  return {
    offers: [
      ...(sought === '' ? [{ zone: null, inUse: false }] : []),
      ...first.map((zone) => ({ zone, inUse: true })),
      ...listed.map((zone) => ({ zone, inUse: false })),
    ],
    more: sorted.length - listed.length,
  }
}
