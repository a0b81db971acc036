/** Elevation files made by the tests: .hgt squares, Terrarium tiles, archives, and what GDAL writes where it is installed. */
import { spawnSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { strToU8, zipSync } from 'fflate'
import { PNG } from 'pngjs'

/** An .hgt square; null is SRTM's void. */
export function hgtBytes(side: 1201 | 3601, height: (column: number, row: number) => number | null): Buffer {
  const bytes = Buffer.alloc(side * side * 2)
  for (let row = 0; row < side; row++) {
    for (let column = 0; column < side; column++)
      bytes.writeInt16BE(height(column, row) ?? -32_768, (row * side + column) * 2)
  }
  return bytes
}

/** A PNG of colours given pixel by pixel: red, green, blue, alpha. */
export function pngOf(
  side: number,
  colour: (column: number, row: number) => readonly [red: number, green: number, blue: number, alpha: number],
): Buffer {
  const png = new PNG({ width: side, height: side })
  for (let row = 0; row < side; row++) {
    for (let column = 0; column < side; column++) png.data.set(colour(column, row), (row * side + column) * 4)
  }
  return PNG.sync.write(png, { colorType: 6 })
}

/** Height to colour by the Tilezen formula: (red 256 + green + blue / 256) − 32768. */
export function terrariumColour(height: number): readonly [number, number, number, number] {
  const units = Math.round((height + 32_768) * 256)
  return [Math.floor(units / 65_536), Math.floor(units / 256) % 256, units % 256, 255]
}

export function zipOf(files: Readonly<Record<string, Uint8Array | string>>): Buffer {
  const entries = Object.entries(files).map(([name, body]) => [name, typeof body === 'string' ? strToU8(body) : body])
  return Buffer.from(zipSync(Object.fromEntries(entries) as Record<string, Uint8Array>, { level: 1 }))
}

export const hasGdal = spawnSync('gdal_translate', ['--version']).status === 0
if (!hasGdal)
  process.stderr.write(
    'GDAL is not installed (Debian: gdal-bin): the tests that prove GeoTIFFs against it are skipped.\n',
  )

/** Runs a program of GDAL's and gives what it prints; throws with its complaint when it fails. */
export function gdal(program: string, words: readonly string[], input = ''): string {
  const run = spawnSync(program, words, { encoding: 'utf8', input, env: { ...process.env, GDAL_PAM_ENABLED: 'NO' } })
  if (run.status !== 0) throw new Error(`${program} ${words.join(' ')}: ${run.stderr}`)
  return run.stdout
}

/** A grid as text for GDAL to read (its AAIGrid form), its corner at 0, 0 until a place is given. */
export function writeAscii(
  path: string,
  columns: number,
  rows: number,
  value: (column: number, row: number) => number,
): void {
  const lines = Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => String(value(column, row))).join(' '),
  )
  const head = `ncols ${columns}\nnrows ${rows}\nxllcorner 0\nyllcorner 0\ncellsize 1\nNODATA_value -9999\n`
  writeFileSync(path, head + lines.join('\n'))
}

/** Every sample as GDAL decodes it. */
export function gdalSamples(tif: string, scratch: string): Float64Array {
  gdal('gdal_translate', ['-q', '-of', 'ENVI', '-ot', 'Float64', tif, scratch])
  const bytes = readFileSync(scratch)
  return Float64Array.from({ length: bytes.length / 8 }, (_, sample) => bytes.readDoubleLE(sample * 8))
}
