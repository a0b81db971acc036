/** GRASS as a second opinion in tests, where it is installed: its modules run without a session on a location written by hand. */
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'

/** Where GRASS is installed; null when it is not. */
export function grassBase(): string | null {
  const asked = spawnSync('grass', ['--config', 'path'], { encoding: 'utf8' })
  const path = asked.status === 0 ? asked.stdout.trim() : ''
  return path === '' ? null : path
}

export interface Grass {
  /** Runs a module and gives what it prints. */
  run: (module: string, ...words: readonly string[]) => string
  /** The surroundings in which modules run, for a process that starts them itself. */
  env: NodeJS.ProcessEnv
  remove: () => void
}

/** A location with one raster, `ground`, in the projection that is true around the grid's centre. */
export function grassWith(base: string, grid: ElevationGrid): Grass {
  const home = mkdtempSync(join(tmpdir(), 'grass-'))
  const mapset = join(home, 'here', 'PERMANENT')
  mkdirSync(mapset, { recursive: true })
  const { lat, lon } = grid.centre
  const projection = [
    'name: Azimuthal Equidistant',
    'proj: aeqd',
    'datum: wgs84',
    'ellps: wgs84',
    `lat_0: ${lat}`,
    `lon_0: ${lon}`,
  ]
  writeFileSync(join(mapset, 'PROJ_INFO'), [...projection, 'x_0: 0', 'y_0: 0', 'no_defs: defined', ''].join('\n'))
  writeFileSync(join(mapset, 'PROJ_UNITS'), 'unit: meter\nunits: meters\nmeters: 1\n')
  const edges = {
    north: grid.north + grid.cell / 2,
    south: grid.north - (grid.rows - 0.5) * grid.cell,
    west: grid.west - grid.cell / 2,
    east: grid.west + (grid.columns - 0.5) * grid.cell,
  }
  const region = [
    'proj: 99',
    'zone: 0',
    ...Object.entries(edges).map(([side, metres]) => `${side}: ${metres}`),
    `cols: ${grid.columns}`,
    `rows: ${grid.rows}`,
    `e-w resol: ${grid.cell}`,
    `n-s resol: ${grid.cell}`,
    '',
  ].join('\n')
  writeFileSync(join(mapset, 'DEFAULT_WIND'), region)
  writeFileSync(join(mapset, 'WIND'), region)
  writeFileSync(join(home, 'rc'), `GISDBASE: ${home}\nLOCATION_NAME: here\nMAPSET: PERMANENT\nGUI: text\n`)
  const raw = join(home, 'ground.f32')
  writeFileSync(raw, new Uint8Array(grid.heights.buffer, grid.heights.byteOffset, grid.heights.byteLength))
  const env = {
    PATH: `${join(base, 'bin')}:/usr/bin:/bin`,
    HOME: home,
    GISBASE: base,
    GISRC: join(home, 'rc'),
    LD_LIBRARY_PATH: join(base, 'lib'),
  }
  const run = (module: string, ...words: readonly string[]): string =>
    execFileSync(join(base, 'bin', module), words, { env, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] })
  run(
    'r.in.bin',
    '-f',
    '--quiet',
    `input=${raw}`,
    'output=ground',
    'bytes=4',
    'order=little',
    ...Object.entries(edges).map(([side, metres]) => `${side}=${metres}`),
    `rows=${grid.rows}`,
    `cols=${grid.columns}`,
  )
  return { run, env, remove: () => rmSync(home, { recursive: true, force: true }) }
}
