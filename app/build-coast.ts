/** Writes the coasts of the world (Natural Earth 1:10 million, public domain, by the world-atlas package) as outlines of land at build time. */
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises'
import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { gzip } from 'node:zlib'
import { feature } from 'topojson-client'
import type { GeometryObject, Topology } from 'topojson-specification'
import { coastOf, writeCoast } from '#core/geo/coast.ts'

/** Of each area the outer ring alone: the waters that land closes in lie at levels of their own. */
export async function landRings(): Promise<number[][][]> {
  const file = fileURLToPath(import.meta.resolve('world-atlas/land-10m.json'))
  const topology = JSON.parse(await readFile(file, 'utf8')) as Topology
  const land = feature(topology, topology.objects['land'] as GeometryObject)
  const features = 'features' in land ? land.features : [land]
  return features.flatMap(({ geometry }) => {
    if (geometry.type === 'Polygon') return geometry.coordinates.slice(0, 1)
    return geometry.type === 'MultiPolygon' ? geometry.coordinates.flatMap((area) => area.slice(0, 1)) : []
  })
}

/** Writes the file as a whole or not at all: 32-bit numbers, low byte first, packed. */
export async function writeCoastFile(outFile: string): Promise<void> {
  const numbers = writeCoast(coastOf(await landRings()))
  const bytes = Buffer.alloc(numbers.length * 4)
  numbers.forEach((number, at) => bytes.writeInt32LE(number, at * 4))
  await mkdir(dirname(outFile), { recursive: true })
  await writeFile(`${outFile}.part`, await promisify(gzip)(bytes))
  await rename(`${outFile}.part`, outFile)
}
