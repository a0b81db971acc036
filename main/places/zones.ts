/** The zones in use at a place, offline and by exact boundaries; the library and its data are loaded when first asked. */
import { access } from 'node:fs/promises'
import { join } from 'node:path'
import type { Input, Output } from '#app/contract/index.ts'
import { wrapLongitude } from '#core/geo/lat-lon.ts'
import { type Result, done, failed } from '#core/result.ts'
import type { Soundness } from '#main/unpacked-check.ts'

/** The boundaries are OpenStreetMap's under the ODbL, which asks for credit; shown wherever a zone is told. */
export const ZONES_ATTRIBUTION =
  'Zone boundaries: timezone-boundary-builder, © OpenStreetMap contributors, Open Database Licence 1.0'

/** The boundaries themselves; the index of them is bundled with the library. */
export const ZONES_FILE = 'timezones.geojson.geo.dat'

export type ZonesReason = 'no-zones' | 'zones-damaged' | 'not-as-packed'

export interface ZoneFinder {
  readonly zones: (wish: Input<'places.zones'>) => Promise<Result<Output<'places.zones'>, ZonesReason>>
}

type Find = (lat: number, lon: number) => string[]

/** So near the pole all zones meet, and the library lists every one of them. */
const POLE = 89.9999
/** Cells of boundaries kept in memory, some hundred kilobytes each at most. */
const CELLS_KEPT = 64
/** A clock used by custom beside the state's own (Xinjiang): offered, but after it. */
const BESIDE_THE_STATES: ReadonlySet<string> = new Set(['Asia/Urumqi'])

/**
 * `folder` holds ZONES_FILE as the build copied it; one folder a process, since the library reads its setting once. Nothing of it is
 * read before it is known to be sound.
 */
export function makeZoneFinder(folder: string, sound: () => Promise<Soundness>): ZoneFinder {
  const file = join(folder, ZONES_FILE)
  let loading: Promise<Find> | null = null
  return {
    zones: async ({ at }) => {
      const checked = await sound()
      if (!checked.ok) return checked
      if (
        !(await access(file).then(
          () => true,
          () => false,
        ))
      )
        return missing(file)
      try {
        loading ??= load(folder)
        const find = await loading
        return done({ zones: zonesAt(find, at.lat, wrapLongitude(at.lon)), attribution: ZONES_ATTRIBUTION })
      } catch {
        return failed('zones-damaged', `The time zone boundaries cannot be read (${file}). ${INSTEAD}`)
      }
    },
  }
}

const INSTEAD = 'Choose the time zone by hand, or install Standpoint again.'

function missing(file: string): Result<never, ZonesReason> {
  return failed('no-zones', `The time zone boundaries are missing (${file}). ${INSTEAD}`)
}

/** The library takes its folder from the environment, and reads it as it is loaded. */
async function load(folder: string): Promise<Find> {
  process.env['GEO_TZ_DATA_PATH'] = folder
  const { find, setCache } = await import('geo-tz/all')
  setCache({ store: fewCells() })
  return find
}

/** A map that forgets its oldest entry. */
function fewCells() {
  const cells = new Map<string, unknown>()
  return {
    get: (key: string): unknown => cells.get(key),
    set: (key: string, cell: unknown): void => {
      const oldest = cells.size < CELLS_KEPT ? undefined : cells.keys().next().value
      if (oldest !== undefined) cells.delete(oldest)
      cells.set(key, cell)
    },
  }
}

function zonesAt(find: Find, lat: number, lon: number): string[] {
  if (lat >= POLE) return ['UTC']
  return find(lat, lon).toSorted((a, b) => Number(BESIDE_THE_STATES.has(a)) - Number(BESIDE_THE_STATES.has(b)))
}
