/** The profile as points in a drawing: scales, ground, sightlines, the landmark's seen and hidden part, ticks of both axes. */
import { type GroundProfile, groundHeight } from '#core/plan/ground-profile.ts'
import { sightElevation } from '#core/ground/sight.ts'
import { METRES_PER_FOOT, METRES_PER_MILE, type UnitSystem } from '#core/units/length.ts'

export interface ProfileRoom {
  readonly width: number
  readonly height: number
  /** Pixels left free around the ground for labels. */
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

interface Point {
  readonly x: number
  readonly y: number
}

interface Tick {
  readonly at: number
  /** Metres, along or above the sea. */
  readonly metres: number
}

export interface ProfilePicture {
  readonly room: ProfileRoom
  /** How much taller than long metres are drawn; a figure that is easily said. */
  readonly exaggeration: number
  /** Known stretches of the ground, each from left to right. */
  readonly ground: readonly (readonly Point[])[]
  readonly footLine: readonly Point[]
  readonly topLine: readonly Point[]
  /** Grazes what hides and ends at the lowest part that shows; null when nothing or everything is hidden. */
  readonly grazingLine: readonly Point[] | null
  readonly landmark: { readonly x: number; readonly foot: number; readonly top: number; readonly sill: number }
  readonly lens: Point
  /** Pixels of the ground under the lens. */
  readonly lensFoot: number
  readonly subject: { readonly x: number; readonly foot: number; readonly top: number }
  readonly obstructions: readonly { readonly x: number; readonly foot: number; readonly top: number }[]
  /** Where it runs tightest: the ground or the obstruction's top there, and the line to the foot above or below it. */
  readonly tightest: (Point & { readonly line: number; readonly metres: number }) | null
  readonly along: readonly Tick[]
  readonly up: readonly Tick[]
  readonly toX: (distance: number) => number
  readonly toY: (elevation: number) => number
  /** Metres along the line under a pixel, held to its two ends. */
  readonly toDistance: (x: number) => number
}

/** Mantissas of figures that are easily said. */
const EASY = [1, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 9, 10]

/** The largest easily said figure that is not above one. */
export function easyBelow(figure: number): number {
  const power = 10 ** Math.floor(Math.log10(figure))
  const mantissa = EASY.findLast((candidate) => candidate <= (figure / power) * (1 + 1e-9)) ?? 1
  return mantissa * power
}

/** Steps of 1, 2 or 5 with its tens, in the unit that people read, so that about so many fit. */
export function tickStep(range: number, count: number, unit: number): number {
  const rough = range / count / unit
  const power = 10 ** Math.floor(Math.log10(rough))
  const mantissa = [1, 2, 5, 10].find((candidate) => candidate >= (rough / power) * (1 - 1e-9)) ?? 10
  return mantissa * power * unit
}

function ticks(from: number, until: number, step: number): number[] {
  const first = Math.ceil(from / step - 1e-9)
  return Array.from({ length: Math.max(0, Math.floor(until / step + 1e-9) - first + 1) }, (_, index) => {
    const value = (first + index) * step
    return value === 0 ? 0 : value
  })
}

/** Below the things, ground is shown down to so much of the height that they and the ground take above. */
const DEPTH_SHOWN = 0.45

/** Metres above the sea at the drawing's foot and top. A deep valley on the way runs out of the drawing: what matters is above it. */
function heightsShown(line: GroundProfile): { readonly least: number; readonly most: number } {
  const known = Array.from(line.ground.elevations).filter((height) => !Number.isNaN(height))
  const lowest = known.reduce((least, height) => Math.min(least, height), Infinity)
  const tops = [line.high, line.eye.elevation, ...line.obstructions.map(({ top }) => top)]
  const most = known.reduce((highest, height) => Math.max(highest, height), Math.max(...tops))
  const things = Math.min(line.low, line.eye.elevation, line.subject.low, groundHeight(line, 0) ?? Infinity)
  const span = Math.max(most - things, 1)
  const least = Math.max(Math.min(lowest, things), things - DEPTH_SHOWN * span)
  return { least: least - 0.05 * (most - least), most: Math.max(most, least + 1) }
}

const LINE_POINTS = 32

export function drawProfile(line: GroundProfile, room: ProfileRoom, units: UnitSystem): ProfilePicture {
  const wide = room.width - room.left - room.right
  const high = room.height - room.top - room.bottom
  const { least, most } = heightsShown(line)
  const perMetre = wide / line.length
  const exaggeration = easyBelow(high / (most - least) / perMetre)
  const foot = room.height - room.bottom
  const toX = (distance: number): number => room.left + distance * perMetre
  const toY = (elevation: number): number => foot - (elevation - least) * perMetre * exaggeration
  const sagging = (end: number): Point[] =>
    Array.from({ length: LINE_POINTS + 1 }, (_, index) => {
      const distance = (line.length * index) / LINE_POINTS
      return {
        x: toX(distance),
        y: toY(sightElevation(line.eye.elevation, end, distance, line.length, line.refraction)),
      }
    })
  const hidden = line.sight.hidden ?? 0
  const sill = line.low + hidden
  const ground = knownStretches(line, toX, toY)
  const distanceUnit = units === 'metric' ? 1 : line.length >= METRES_PER_MILE ? METRES_PER_MILE : METRES_PER_FOOT
  const heightUnit = units === 'metric' ? 1 : METRES_PER_FOOT
  const shownHigh = high / (perMetre * exaggeration)
  const alongStep = tickStep(line.length, Math.max(2, wide / 80), distanceUnit)
  const upStep = tickStep(shownHigh, Math.max(1.5, high / 34), heightUnit)
  return {
    room,
    exaggeration,
    ground,
    footLine: sagging(line.low),
    topLine: sagging(line.high),
    grazingLine: hidden > 0 && sill < line.high ? sagging(sill) : null,
    landmark: { x: toX(line.length), foot: toY(line.low), top: toY(line.high), sill: toY(sill) },
    lens: { x: toX(0), y: toY(line.eye.elevation) },
    lensFoot: toY(groundHeight(line, 0) ?? line.eye.elevation),
    subject: { x: toX(line.subject.distance), foot: toY(line.subject.low), top: toY(line.subject.high) },
    obstructions: line.obstructions.map(({ distance, foot: low, top }) => ({
      x: toX(distance),
      foot: toY(low),
      top: toY(top),
    })),
    tightest: tightestPoint(line, toX, toY),
    along: ticks(0, line.length, alongStep).map((metres) => ({ at: toX(metres), metres })),
    up: ticks(least, least + shownHigh, upStep).map((metres) => ({ at: toY(metres), metres })),
    toX,
    toY,
    toDistance: (x) => Math.max(0, Math.min(line.length, (x - room.left) / perMetre)),
  }
}

function tightestPoint(
  line: GroundProfile,
  toX: (distance: number) => number,
  toY: (elevation: number) => number,
): ProfilePicture['tightest'] {
  const { tightest } = line
  if (tightest === null) return null
  const { distance, clearance } = tightest
  const passes = sightElevation(line.eye.elevation, line.low, distance, line.length, line.refraction)
  return { x: toX(distance), y: toY(passes - clearance), line: toY(passes), metres: distance }
}

function knownStretches(
  line: GroundProfile,
  toX: (distance: number) => number,
  toY: (elevation: number) => number,
): Point[][] {
  const { distances, elevations } = line.ground
  const stretches: Point[][] = []
  let open: Point[] | null = null
  distances.forEach((distance, index) => {
    const height = elevations[index] ?? Number.NaN
    if (Number.isNaN(height)) {
      open = null
      return
    }
    if (open === null) {
      open = []
      stretches.push(open)
    }
    open.push({ x: toX(distance), y: toY(height) })
  })
  return stretches
}
