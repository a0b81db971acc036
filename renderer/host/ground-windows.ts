/** The ground as the page has it: windows of cells fetched as bytes, the newest kept, given up when no longer wanted. */
import { type ReadonlySignal, signal } from '@preact/signals'
import { GROUND_HEADER, type WindowPart, type GroundWindow } from '#app/contract/ground.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { latLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, squareGrid } from '#core/ground/elevation-grid.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { done, failed, type Result } from '#core/result.ts'
import { ask, readBytes } from './host.ts'

export interface GroundWindowFound {
  readonly grid: ElevationGrid
  /** Those that answered any cell, by precedence. */
  readonly sources: readonly WindowPart[]
  /** Metres between the samples of the source that answered most; null when none did. */
  readonly resolution: number | null
  /** Share of the cells that are known, 0..1. */
  readonly known: number
  /** Share of the cells at which the sea's surface was taken, 0..1. */
  readonly sea: number
  /** Whether no source knows any ground beyond it. */
  readonly whole: boolean
  /** Whether all around it is open sea. */
  readonly seaBeyond: boolean
  /** Why cells that might be had are missing; null when nothing went wrong. */
  readonly trouble: string | null
}

const groundVersionSignal = signal(0)
/** Grows whenever the sources changed: whoever keeps windows throws them away then. */
export const groundVersion: ReadonlySignal<number> = groundVersionSignal

const MOST_KEPT = 10
const BYTES_KEPT = 64_000_000

/** Newest last. */
const keptWindows = new Map<string, GroundWindowFound>()
let prefix: Promise<string | null> | null = null

async function routes(): Promise<string | null> {
  prefix ??= ask('ground.sources', { at: null }).then((answer) => (answer.ok ? answer.value.prefix : null))
  const found = await prefix
  // One that failed is tried again by the next wish.
  if (found === null) prefix = null
  return found
}

/** Asks where windows are had before any is wanted: the first then goes out at once. */
export function askGroundRoutes(): void {
  void routes()
}

/** Path of a binary route of the ground; null when the program does not answer. */
export async function groundRoute(
  name: 'window' | 'file',
  query: Readonly<Record<string, string>>,
): Promise<string | null> {
  const start = await routes()
  return start === null ? null : `${start}/${name}?${new URLSearchParams(query).toString()}`
}

/** Metres of a degree of latitude, roughly: only for a grid of middles that near places share. */
const DEGREE = 111_320

/** The middle moved by less than a cell, so that the same window serves while a pin is nudged. */
export function roundedCentre({ lat, lon }: LatLon, cell: number): LatLon {
  const stepNorth = cell / DEGREE
  const north = Math.max(-90, Math.min(90, Math.round(lat / stepNorth) * stepNorth))
  const stepEast = stepNorth / Math.max(0.01, Math.cos(north * RADIANS_PER_DEGREE))
  return latLon(north, Math.round(lon / stepEast) * stepEast)
}

/** A window on a plane that other windows share. */
export interface OnPlane {
  /** Metres from where the plane touches to the window's middle. */
  readonly east: number
  readonly north: number
  /** Each cell as high as the highest sample in its middle half: for coarse cells, so that crests are not lost. */
  readonly peaks: boolean
}

/**
 * (2 half + 1) squared cells of `cell` metres around the place, or around a point of the plane that touches there. Fault `left` when the
 * signal gave it up.
 */
export async function fetchWindow(
  centre: LatLon,
  cell: number,
  half: number,
  wanted: AbortSignal = new AbortController().signal,
  on: OnPlane | null = null,
): Promise<Result<GroundWindowFound>> {
  const middle = on === null ? roundedCentre(centre, cell) : centre
  const { east, north, peaks } = on ?? { east: 0, north: 0, peaks: false }
  const key = `${groundVersion.peek()} ${middle.lat} ${middle.lon} ${cell} ${half} ${east} ${north} ${peaks}`
  const known = keptWindows.get(key)
  if (known !== undefined) {
    keep(key, known)
    return done(known)
  }
  const query = {
    lat: middle.lat.toFixed(9),
    lon: middle.lon.toFixed(9),
    cell: String(cell),
    half: String(half),
    ...(on === null ? {} : { east: String(east), north: String(north) }),
    ...(peaks ? { peaks: '1' } : {}),
  }
  const path = await groundRoute('window', query)
  if (path === null) return failed('no-host', 'The program behind this page does not answer. Start Standpoint again.')
  const answer = await readBytes(path, GROUND_HEADER, wanted)
  if (!answer.ok) return answer
  // The middle as it was sent: the grid was cut around that one.
  const asked = latLon(Number(query.lat), Number(query.lon))
  const found = windowOf(asked, cell, half, { east, north }, answer.value.body, answer.value.facts as GroundWindow)
  // What could not be had may come next time.
  if (found.trouble === null) keep(key, found)
  return done(found)
}

function windowOf(
  centre: LatLon,
  cell: number,
  half: number,
  { east, north }: Pick<OnPlane, 'east' | 'north'>,
  body: ArrayBuffer,
  facts: GroundWindow,
): GroundWindowFound {
  const side = 2 * half + 1
  if (body.byteLength !== side * side * 4) throw new RangeError(`${body.byteLength} bytes for ${side} squared cells`)
  return {
    grid: {
      ...squareGrid({ centre, east, north, cell, half }, lowFirst(body)),
      step: facts.resolution,
      sea: facts.sea > 0,
    },
    sources: facts.sources,
    resolution: facts.resolution,
    known: facts.known,
    sea: facts.sea,
    whole: facts.whole,
    seaBeyond: facts.seaBeyond,
    trouble: facts.trouble,
  }
}

/** The bytes come low byte first, as nearly every machine keeps them. */
function lowFirst(body: ArrayBuffer): Float32Array {
  if (new Uint8Array(new Uint16Array([1]).buffer)[0] === 1) return new Float32Array(body)
  const view = new DataView(body)
  return Float32Array.from({ length: body.byteLength / 4 }, (_, cell) => view.getFloat32(cell * 4, true))
}

function keep(key: string, window: GroundWindowFound): void {
  keptWindows.delete(key)
  keptWindows.set(key, window)
  let bytes = [...keptWindows.values()].reduce((sum, { grid }) => sum + grid.heights.byteLength, 0)
  for (const [oldest, { grid }] of keptWindows) {
    if ((keptWindows.size <= MOST_KEPT && bytes <= BYTES_KEPT) || oldest === key) return
    keptWindows.delete(oldest)
    bytes -= grid.heights.byteLength
  }
}

/** The sources changed: nothing that was cut before holds. */
export function groundChanged(): void {
  keptWindows.clear()
  groundVersionSignal.value += 1
}
