/** Grids handed to the GDAL and GRASS programs, as a raw file with a description in UTM 32 N, and what they answer read back. */
import { spawnSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'

/** UTM metres of the grid's centre: on the zone's middle meridian, where its north is true. */
const EAST = 500_000
const NORTH = 5_200_000

/** Semi-major axis, from which gdal_viewshed takes the earth's diameter. */
const GDAL_RADIUS = 6_378_137
const MEAN_RADIUS = 6_371_008.8

/** The program's curvature coefficient that amounts to a refraction of ours. */
export function curvatureCoefficient(refraction: number): number {
  return ((1 - refraction) * GDAL_RADIUS) / MEAN_RADIUS
}

/** The version a program tells of itself; null, with a sentence printed, when it isn't on this machine. */
export function versionOf(program: string, debianPackage: string): string | null {
  const told = spawnSync(program, ['--version'], { encoding: 'utf8' })
  const version = /\d+\.\d+\.\d+/.exec(`${told.stdout ?? ''}${told.stderr ?? ''}`)
  if (version !== null) return version[0]
  process.stdout.write(
    `skipped: ${program} is not installed, so we could not compare with it (Debian: ${debianPackage})\n`,
  )
  return null
}

/** Runs a program; throws with what it said when it fails. */
export function run(program: string, parts: readonly string[], env: NodeJS.ProcessEnv = process.env): string {
  const done = spawnSync(program, parts, { encoding: 'utf8', env, maxBuffer: 2 ** 28 })
  if (done.status !== 0) throw new Error(`${program} ${parts.join(' ')}: ${done.error?.message ?? ''} ${done.stderr}`)
  return done.stdout
}

/** Writes a grid into a folder; answers the path that the programs open. */
export function writeGrid(grid: ElevationGrid, folder: string, name = 'ground'): string {
  writeFileSync(join(folder, `${name}.f32`), new Uint8Array(grid.heights.buffer))
  const path = join(folder, `${name}.vrt`)
  const corner = utmOf(grid, -0.5, -0.5)
  writeFileSync(
    path,
    `<VRTDataset rasterXSize="${grid.columns}" rasterYSize="${grid.rows}"><SRS>EPSG:32632</SRS>
<GeoTransform>${corner.east}, ${grid.cell}, 0, ${corner.north}, 0, ${-grid.cell}</GeoTransform>
<VRTRasterBand dataType="Float32" band="1" subClass="VRTRawRasterBand"><NoDataValue>nan</NoDataValue>
<SourceFilename relativeToVRT="1">${name}.f32</SourceFilename><ByteOrder>LSB</ByteOrder>
<PixelOffset>4</PixelOffset><LineOffset>${grid.columns * 4}</LineOffset></VRTRasterBand></VRTDataset>`,
  )
  return path
}

/** UTM metres of a cell, whole numbers being centres. */
export function utmOf(
  grid: ElevationGrid,
  column: number,
  row: number,
): { readonly east: number; readonly north: number } {
  return { east: EAST + grid.west + column * grid.cell, north: NORTH + grid.north - row * grid.cell }
}

/** Metres from the grid's centre of a point in UTM. */
export function fromUtm(east: number, north: number): { readonly east: number; readonly north: number } {
  return { east: east - EAST, north: north - NORTH }
}

/** Bytes of a result written with `-of ENVI`. */
export function readBytes(path: string): Uint8Array {
  return new Uint8Array(readFileSync(path))
}

/** Floats of a result written with `-of ENVI`. */
export function readFloats(path: string): Float32Array {
  return new Float32Array(Uint8Array.from(readFileSync(path)).buffer)
}
