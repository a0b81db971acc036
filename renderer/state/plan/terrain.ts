/** The elevations around the spots: rings of cells for each place at work, cut by the services, kept while they serve. */
import { batch, computed, effect, signal } from '@preact/signals'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { seaRing } from '#core/ground/rings.ts'
import type { Result } from '#core/result.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { type GroundWindowFound, fetchWindow, groundChanged, groundVersion } from '#renderer/host/ground-windows.ts'
import { calmly } from './calmly.ts'
import {
  PLANE_STRAY,
  type RingKind,
  type RingWindow,
  laidTogether,
  placeOfPlane,
  ringWindows,
  serves,
  standsIn,
} from './ring-plan.ts'
import { boardShoot, boardSpot } from '#renderer/state/library/library.ts'

/** Windows kept of each kind: that of the board, those of four spots side by side, and the board's before. Wide ones serve many spots. */
const KEPT: Readonly<Record<RingKind['name'], number>> = { close: 6, near: 6, landmark: 6, middle: 4, far: 4 }
const PLANES_KEPT = 8

/** Milliseconds that a window which has come waits for the others of its sort. */
const FINE_WAIT = 150
const WIDE_WAIT = 2_000

/** What is wanted around a place: the finest window first. */
type Wanted = readonly RingWindow[]

/** What came of asking: a window, or why there is none. */
interface Answered extends RingWindow {
  readonly found: GroundWindowFound | null
  readonly trouble: string | null
}

/** The ground around a spot as far as it is at hand. */
export interface GroundAround {
  /** Null while nothing is at hand, and where no source knows any ground. */
  readonly grid: ElevationGrid | null
  /** The one window of it that the map draws. */
  readonly window: ElevationGrid | null
  readonly found: GroundWindowFound | null
  /** Why ground is missing, in a sentence; null when nothing is wrong. */
  readonly trouble: string | null
  /** Whether this is the answer: nothing better is on its way. */
  readonly settled: boolean
}

const NOTHING_YET: GroundAround = { grid: null, window: null, found: null, trouble: null, settled: false }

/** Newest first. */
const answered = signal<readonly Answered[]>([])

interface Asking extends RingWindow {
  readonly stop: AbortController
  readonly forBoard: boolean
}

let asking: readonly Asking[] = []

/** Where planes touch, the one used last first. Places near each other share one, and with it the wide rings. */
let planes: readonly LatLon[] = []

function planeFor(stop: LatLon): LatLon {
  const plane = planes.find((other) => geodesicDistance(other, stop) <= PLANE_STRAY) ?? placeOfPlane(stop)
  planes = [plane, ...planes.filter((other) => other !== plane)].slice(0, PLANES_KEPT)
  return plane
}

function wantedFor(stop: LatLon, landmark: Landmark | null, plane = planeFor(stop)): Wanted {
  return ringWindows(plane, stop, landmark === null ? null : landmarkMiddle(landmarkPoints(landmark)))
}

/** What has been answered for a place; until then whatever windows it lies well within, so that a drag far off keeps its ground. */
function around(stop: LatLon, landmark: Landmark | null): GroundAround {
  const wanted = wantedFor(stop, landmark)
  const all = answered.value
  const exact = wanted.map((window) => all.find((answer) => serves(answer, window)))
  const whole = wholeAmong(exact)
  const settled = exact.every((answer, at) => answer !== undefined || (whole && isBeyond(wanted[at])))
  const found = laid(
    exact.map((answer, at) => answer ?? all.find((other) => standsIn(other, wanted[at] as RingWindow))),
  )
  if (found !== null) return { ...found, settled }
  // Beyond the old plane, until the first windows of the new one are there.
  for (const plane of planes.slice(1)) {
    const old = wantedFor(stop, landmark, plane).map((window) => all.find((other) => standsIn(other, window)))
    const standIn = old.some((answer) => answer?.kind.name === 'near') ? laid(old) : null
    if (standIn !== null) return { ...standIn, settled: false }
  }
  return NOTHING_YET
}

/** Whether the map's window is all there is of ground: nothing lies beyond it. */
function wholeAmong(parts: readonly (Answered | undefined)[]): boolean {
  return parts.some((part) => part?.kind.name === 'near' && part.found?.whole === true)
}

function isBeyond(window: RingWindow | undefined): boolean {
  return window !== undefined && window.kind.name !== 'close' && window.kind.name !== 'near'
}

interface Laid {
  readonly parts: readonly (Answered | undefined)[]
  readonly ground: Omit<GroundAround, 'settled'>
}

/** Grounds laid before: the same object for as long as all its windows are the same. */
let before: readonly Laid[] = []

/** Null without a window that the map could draw. */
function laid(parts: readonly (Answered | undefined)[]): Laid['ground'] | null {
  const near = parts.find((part) => part?.kind.name === 'near')
  if (near === undefined) return null
  const known = before.find(
    (other) => parts.length === other.parts.length && parts.every((part, at) => part === other.parts[at]),
  )
  if (known !== undefined) return known.ground
  const window = knownGrid(near)
  const read = parts.flatMap((part) => (part === undefined ? [] : (knownGrid(part) ?? [])))
  const grids = window !== null && near.found?.seaBeyond === true ? [...read, seaRing(window.centre)] : read
  const ground = {
    grid: window === null ? null : laidTogether(grids),
    window,
    found: near.found,
    trouble: parts.find((part) => part?.trouble !== null && part?.trouble !== undefined)?.trouble ?? null,
  }
  before = [{ parts, ground }, ...before].slice(0, KEPT.near + 2)
  return ground
}

function knownGrid({ found }: Answered): ElevationGrid | null {
  return found !== null && found.known > 0 ? found.grid : null
}

async function ask(wanted: Wanted, forBoard: boolean): Promise<void> {
  const missing = wanted.filter((window) => ![...answered.peek(), ...asking].some((other) => serves(other, window)))
  const mine = missing.map((window): Asking => ({ ...window, forBoard, stop: new AbortController() }))
  asking = [...asking, ...mine]
  // Fine ones first and together; the wide ones one after the other, so that finer ones for a place moved meanwhile need not wait.
  const isWide = ({ kind }: RingWindow): boolean => kind.stray === Infinity
  const fine = mine.filter((one) => !isWide(one))
  const takeFine = gatherer(fine.length, FINE_WAIT)
  await Promise.all(
    fine.map(async (one) => {
      const answer = await askOne(one)
      takeFine(() => take(one, answer))
    }),
  )
  if (wholeAmong(answered.peek().filter((answer) => wanted.some((window) => serves(answer, window))))) {
    asking = asking.filter((other) => !mine.includes(other))
    return
  }
  const wide = mine.filter(isWide)
  const takeWide = gatherer(wide.length, WIDE_WAIT)
  for (const one of wide) {
    // oxlint-disable-next-line no-await-in-loop -- in order
    const answer = await askOne(one)
    takeWide(() => take(one, answer))
  }
}

/** Takes so many windows at once, or those that are there so many milliseconds after the first: each that is taken is worked through by all that looks at the ground. */
function gatherer(count: number, patience: number): (taking: () => void) => void {
  let missing = count
  let waiting: (() => void)[] = []
  let timer: ReturnType<typeof setTimeout> | null = null
  const takeAll = (): void => {
    if (timer !== null) clearTimeout(timer)
    timer = null
    const now = waiting
    waiting = []
    batch(() => {
      for (const taking of now) taking()
    })
  }
  return (taking) => {
    missing -= 1
    waiting.push(taking)
    if (missing === 0) takeAll()
    else timer ??= setTimeout(takeAll, patience)
  }
}

/** Null for what was given up meanwhile. */
async function askOne({ plane, kind, east, north, stop }: Asking): Promise<Result<GroundWindowFound> | null> {
  if (stop.signal.aborted) return null
  const on = { east, north, peaks: kind.peaks }
  return fetchWindow(plane, kind.cell, Math.ceil(kind.reach / kind.cell), stop.signal, on)
}

function take(mine: Asking, answer: Result<GroundWindowFound> | null): void {
  const { plane, kind, east, north, stop } = mine
  asking = asking.filter((other) => other !== mine)
  if (answer === null || stop.signal.aborted) return
  const [found, trouble] = answer.ok ? [answer.value, answer.value.trouble] : [null, answer.fault.message]
  const others = answered.peek()
  const kept = others.filter((other) => other.kind === kind).slice(0, KEPT[kind.name] - 1)
  answered.value = [
    { plane, kind, east, north, found, trouble },
    ...others.filter((other) => other.kind !== kind || kept.includes(other)),
  ]
}

/** Gives up what was on its way for where the board was before. */
function leave(wanted: Wanted): void {
  const left = asking.filter((other) => other.forBoard && !wanted.some((window) => serves(other, window)))
  asking = asking.filter((other) => !left.includes(other))
  for (const { stop } of left) stop.abort()
}

/** The ground around a spot of a shoot; asked for when there is none yet. */
export function groundFor(stop: LatLon, landmark: Landmark | null): GroundAround {
  const now = around(stop, landmark)
  if (!now.settled) void ask(wantedFor(stop, landmark), false)
  return now
}

/** Elevations at hand, without asking: for lists of spots, which must not fetch ground for each. */
export function terrainAtHand(stop: LatLon, landmark: Landmark | null): ElevationGrid | null {
  return around(stop, landmark).grid
}

/** By identity the same while only other things move: a dragged standpoint wants no other ground. */
const boardStop = computed(() => boardSpot.value?.stop.at ?? null)
const boardLandmark = computed(
  () => boardShoot.value?.landmarks.find((candidate) => candidate.id === boardSpot.value?.landmarkId) ?? null,
)

/** The ground of the spot on the board. */
export const boardGround = computed<GroundAround>(() =>
  boardStop.value === null ? NOTHING_YET : around(boardStop.value, boardLandmark.value),
)

export const terrain = computed<ElevationGrid | null>(() => boardGround.value.grid)

/** The window of the board's ground that the map draws: the same while wider rings come. */
export const mapTerrain = computed<ElevationGrid | null>(() => boardGround.value.window)

/** Where the board's elevations come from and how fine they are; null while there are none. */
export const terrainSource = computed(() => boardGround.value.found)
/** Why the board's elevations could not be had, or not all; null when nothing is wrong. */
export const terrainTrouble = computed(() => boardGround.value.trouble)

/** Keeps asking for the ground of wherever the spot on the board goes, again when the sources change. */
export function followTerrain(): void {
  effect(() => {
    if (groundVersion.value > 0) forgetTerrain()
  })
  calmly(() => {
    const [stop, landmark] = [boardStop.value, boardLandmark.value]
    if (stop === null || boardGround.value.settled) return
    const wanted = wantedFor(stop, landmark)
    leave(wanted)
    void ask(wanted, true)
  })
}

/** What is known is cut again. */
function forgetTerrain(): void {
  for (const other of asking) other.stop.abort()
  asking = []
  answered.value = []
  before = []
}

/** Asks once more for what could not be had. */
export function askTerrainAgain(): void {
  groundChanged()
}
