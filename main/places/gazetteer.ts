/** The offline gazetteer: finds towns by name in the data file of the build, which is read when first asked and not before. */
import { readFile } from 'node:fs/promises'
import { promisify } from 'node:util'
import { gunzip } from 'node:zlib'
import { readTownList } from '#core/geo/town-list.ts'
import { type Result, done, failed } from '#core/result.ts'
import type { Input, Output } from '#app/contract/index.ts'
import { type TownIndex, indexTowns } from './town-index.ts'

/** GeoNames asks for credit under CC BY 4.0; shown wherever its names are. */
export const PLACES_ATTRIBUTION = 'Place names: GeoNames, CC BY 4.0'

export type GazetteerReason = 'no-gazetteer' | 'gazetteer-damaged'

export interface Gazetteer {
  readonly find: (wish: Input<'places.find'>) => Promise<Result<Output<'places.find'>, GazetteerReason>>
}

type Opened = Result<TownIndex, GazetteerReason>

/** `file` is what the build's writeGazetteer wrote; nothing is opened yet. */
export function makeGazetteer(file: string): Gazetteer {
  let opening: Promise<Opened> | null = null
  return {
    find: async ({ text, limit }) => {
      opening ??= open(file)
      const opened = await opening
      if (!opened.ok) {
        // A file that is put right later is found without a new start.
        opening = null
        return opened
      }
      return done({ places: [...opened.value.find(text, limit)], attribution: PLACES_ATTRIBUTION })
    },
  }
}

async function open(file: string): Promise<Opened> {
  const packed = await readFile(file).catch(() => null)
  if (packed === null) {
    return failed(
      'no-gazetteer',
      `The list of towns is missing (${file}). Type coordinates, or install Standpoint again.`,
    )
  }
  const text = await promisify(gunzip)(packed).then(
    (bytes) => bytes.toString('utf8'),
    () => null,
  )
  const list = text === null ? null : readTownList(text)
  if (list === null) {
    return failed(
      'gazetteer-damaged',
      `The list of towns cannot be read (${file}). Type coordinates, or install Standpoint again.`,
    )
  }
  return done(indexTowns(list))
}
