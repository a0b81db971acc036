/** Areas of ground (viewsheds, relief, contours, the hills' shadow) against GDAL, whose work alone is timed, and a GRASS module. */
import { type ChildProcessByStdio, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import type { Readable, Writable } from 'node:stream'
import { maximaOf } from '#core/ground/block-maxima.ts'
import { contours } from '#core/ground/contours.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { hillShadow } from '#core/ground/hill-shadow.ts'
import { MAP_LIGHT, hillshade } from '#core/ground/relief.ts'
import { viewshed } from '#core/ground/viewshed.ts'
import type { ViewshedRequest } from '#core/ground/viewshed-request.ts'
import { viewshedPreview } from '#core/ground/viewshed-preview.ts'
import { curvatureCoefficient, utmOf, writeGrid } from '#test/help/gdal.ts'
import { grassBase, grassWith } from '#test/help/grass.ts'
import { mountains } from '#test/help/terrain.ts'
import { type BenchRow, against, cpu, median } from './measure.ts'

/** Debian's own Python, which has GDAL's bindings (python3-gdal). */
const PYTHON = '/usr/bin/python3'
const REFRACTION = 1 / 7
const EYE = 1.6

/** A process of the anchor: asks it for so many calls of a work and hears the CPU milliseconds of each. */
interface Anchor {
  readonly request: (work: string, calls: number) => Promise<number>
  readonly close: () => void
}

interface Place {
  readonly grid: ElevationGrid
  readonly column: number
  readonly row: number
}

async function openAnchor(place: Place, folder: string, env: NodeJS.ProcessEnv): Promise<Anchor | null> {
  const at = utmOf(place.grid, place.column, place.row)
  const path = writeGrid(place.grid, folder, `ground-${place.grid.columns}`)
  const { east, north } = askFrom(place)
  const figures = [at.east, at.north, east, north, EYE, curvatureCoefficient(REFRACTION)].map(String)
  const script = join(import.meta.dirname, 'gdal_anchor.py')
  const child: ChildProcessByStdio<Writable, Readable, null> = spawn(PYTHON, [script, path, ...figures], {
    stdio: ['pipe', 'pipe', 'ignore'],
    env: { ...process.env, ...env },
  })
  child.on('error', () => undefined)
  child.stdin.on('error', () => undefined)
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]()
  const ready = await lines.next()
  if (ready.done === true) return null
  return {
    request: async (work, calls) => {
      child.stdin.write(`${work} ${calls}\n`)
      return Number((await lines.next()).value)
    },
    close: () => child.stdin.end(),
  }
}

/** Ours and the anchor in turns; the ratio of CPU times, median of five rounds. */
async function inTurns(
  name: string,
  aim: string,
  ours: { readonly work: () => void; readonly calls: number },
  anchor: { readonly of: Anchor; readonly work: string; readonly calls: number },
): Promise<BenchRow> {
  for (let call = 0; call < ours.calls; call++) ours.work()
  await anchor.of.request(anchor.work, 1)
  const rounds: { theirs: number; mine: number }[] = []
  for (let round = 0; round < 5; round++) {
    const theirs = await anchor.of.request(anchor.work, anchor.calls)
    const mine = cpu(() => {
      for (let call = 0; call < ours.calls; call++) ours.work()
    })
    rounds.push({ theirs, mine: mine / ours.calls })
  }
  return {
    name,
    ours: `${median(rounds.map(({ mine }) => mine)).toFixed(1)} ms`,
    anchor: `${median(rounds.map(({ theirs }) => theirs)).toFixed(1)} ms`,
    ratio: median(rounds.map(({ mine, theirs }) => mine / theirs)),
    aim,
  }
}

function askFrom({ grid, column, row }: Place): ViewshedRequest {
  return {
    east: grid.west + column * grid.cell,
    north: grid.north - row * grid.cell,
    height: (grid.heights[row * grid.columns + column] ?? Number.NaN) + EYE,
    targetHeight: 0,
    refraction: REFRACTION,
    radius: null,
  }
}

async function millionRows(place: Place, anchor: Anchor, grass: boolean): Promise<BenchRow[]> {
  const { grid } = place
  const request = askFrom(place)
  const exact = { work: () => void viewshed(grid, request), calls: 2 }
  const seen = new Uint8Array(grid.columns * grid.rows)
  // The maxima are made once for a grid, whoever asks.
  maximaOf(grid)
  const rows = [
    await inTurns(
      'viewshed preview 1e6 cells, against GDAL ViewshedGenerate in process',
      'ratio 0.35, gate 0.60',
      { work: () => void viewshedPreview(grid, request, seen), calls: 40 },
      { of: anchor, work: 'viewshed', calls: 40 },
    ),
    await inTurns('viewshed, exact, 1e6 cells, against the same', 'ratio 12, gate 25', exact, {
      of: anchor,
      work: 'viewshed',
      calls: 10,
    }),
    await inTurns(
      'hillshade 1e6 cells, against GDAL in process',
      'ratio 1.3, gate 1.7',
      { work: () => void hillshade(grid, MAP_LIGHT), calls: 20 },
      { of: anchor, work: 'hillshade', calls: 20 },
    ),
    await inTurns(
      'contours every 20 m, 1e6 cells, against GDAL ContourGenerate in process',
      'ratio 1.0, gate 2.0',
      { work: () => void contours(grid, 20), calls: 4 },
      { of: anchor, work: 'contours', calls: 2 },
    ),
  ]
  if (!grass) return rows
  const against = { of: anchor, work: 'grass', calls: 1 }
  rows.push(
    await inTurns('viewshed, exact, 1e6 cells, against GRASS r.viewshed', 'ratio 0.06, gate 0.12', exact, against),
  )
  return rows
}

function shadowRow(grid: ElevationGrid): BenchRow {
  let azimuth = 0
  const measured = against(
    () => void hillShadow(grid, { azimuth: (azimuth += 37.3) % 360, altitude: 15 }, REFRACTION),
    () => void hillshade(grid, MAP_LIGHT),
    20,
  )
  return {
    name: "hills' shadow 1e6 cells, suns all round, against our hillshade",
    ours: `${measured.ours.toFixed(1)} ms`,
    anchor: `${measured.anchor.toFixed(1)} ms`,
    ratio: measured.ratio,
    aim: 'ratio 0.6, gate 1.2',
  }
}

export async function benchAreas(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'standpoint-areas-'))
  const million = { grid: mountains(1000), column: 500, row: 500 }
  const rows = [shadowRow(million.grid)]
  const base = grassBase()
  const grass = base === null ? null : grassWith(base, million.grid)
  if (grass === null) process.stdout.write('GRASS is left out: Debian package grass-core is not installed\n')
  try {
    const anchor = await openAnchor(million, folder, grass?.env ?? {})
    if (anchor === null) {
      process.stdout.write('GDAL is left out: Debian packages python3-gdal and python3-numpy are not installed\n')
      return rows
    }
    rows.push(...(await millionRows(million, anchor, grass !== null)))
    anchor.close()
    const nine = { grid: mountains(3000), column: 1500, row: 1500 }
    const large = await openAnchor(nine, folder, {})
    if (large === null) return rows
    const request = askFrom(nine)
    rows.push(
      await inTurns(
        'viewshed preview 9e6 cells, against GDAL ViewshedGenerate in process',
        'ratio 0.33, gate 0.50',
        { work: () => void viewshedPreview(nine.grid, request), calls: 6 },
        { of: large, work: 'viewshed', calls: 6 },
      ),
    )
    large.close()
  } finally {
    grass?.remove()
    rmSync(folder, { recursive: true, force: true })
  }
  return rows
}
