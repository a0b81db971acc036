/** The ring of hours around the subject: a bead for each full hour by the place's clock with the sun up, where they and their names lie. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { SUN_RISE_ALTITUDE } from '#core/light/day-events.ts'
import type { LightSkyline } from '#core/light/light-scene.ts'
import { overSkyline } from '#core/light/over-skyline.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { sunAt } from '#core/light/sky.ts'
import { type CivilDay, type Zone, instantOf } from '#core/time/civil.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { pointMoved, toward } from './plan-drawing.ts'
import { type Box, type Point, distanceBetween } from './plan-view.ts'
import { boxAround, overlap, placeLabel, textWidth } from './pixel-lines.ts'

export interface ClockHour {
  /** As the clock shows it, 0..23. */
  readonly hour: number
  readonly instant: number
}

export interface HourBead extends ClockHour {
  /** Degrees, where the sun stands then. */
  readonly azimuth: number
  /** Degrees, as it appears. */
  readonly altitude: number
  /** True where the ground hides it from the subject. */
  readonly hidden: boolean
}

/** The full hours that the clock shows within a day: one that is skipped is none, one shown twice is two. */
export function clockHours(day: CivilDay, zone: Zone): ClockHour[] {
  const found: ClockHour[] = []
  for (let hour = 0; hour < 24; hour++) {
    const { instant, note, other } = instantOf(day.date, hour * 60, zone)
    if (note !== 'gap') found.push({ hour, instant })
    if (other !== null) found.push({ hour, instant: other })
  }
  return found
    .filter(({ instant }) => instant >= day.start && instant < day.end)
    .toSorted((one, next) => one.instant - next.instant)
}

/** Those at which a part of the sun is above the level horizon; `skyline` is the skyline around the subject. */
export function hourBeads(at: LatLon, hours: readonly ClockHour[], skyline: LightSkyline | null = null): HourBead[] {
  return hours.flatMap((hour) => {
    const { azimuth, altitude } = sunAt(at, hour.instant)
    const apparent = apparentAltitude(altitude)
    const hidden = overSkyline(skyline, { azimuth, altitude }) <= 0
    return altitude > SUN_RISE_ALTITUDE ? [{ ...hour, azimuth, altitude: apparent, hidden }] : []
  })
}

/** Pixels. */
const SMALLEST_BEAD = 2.2
const BEAD_GROWTH = 4.4

/** Radius of a bead, pixels: larger when the sun is higher. */
export function beadRadius(altitude: number): number {
  return SMALLEST_BEAD + BEAD_GROWTH * Math.sin(Math.min(90, Math.max(0, altitude)) * RADIANS_PER_DEGREE)
}

const SMALLEST_RING = 64
const LARGEST_RING = 122
/** Share of the window's shorter side. */
const RING_SHARE = 0.18
/** Metres a pixel beyond which hours around a place say nothing: it is a map of countries. */
const FARTHEST = 400

/** Radius of the ring in a window, pixels, around a subject of a size; null when the map is too far away for one. */
export function ringRadius(box: Box, pixelsPerMetre: number, subjectSize: number): number | null {
  if (pixelsPerMetre * FARTHEST < 1) return null
  const room = Math.min(box.right - box.left, box.bottom - box.top) * RING_SHARE
  return Math.max(SMALLEST_RING, Math.min(LARGEST_RING, room), subjectSize * 0.6 + 24)
}

export interface PlacedBead extends HourBead {
  readonly at: Point
  readonly radius: number
}

export function placeBeads(beads: readonly HourBead[], middle: Point, ring: number): PlacedBead[] {
  return beads.map((bead) => ({
    ...bead,
    at: pointMoved(middle, toward(bead.azimuth), ring),
    radius: beadRadius(bead.altitude),
  }))
}

export function beadBoxes(beads: readonly PlacedBead[]): Box[] {
  return beads.map(({ at, radius }) => boxAround(at, 2 * radius + 3, 2 * radius + 3))
}

export interface HourLabel {
  readonly text: string
  readonly at: Point
}

export const HOUR_SIZE = 12
const HIGH = 14
/** Beads nearer together than this, pixels, are named as one: the sun hardly turns while it rises steeply. */
const TOGETHER = 9
/** Every so many hours one is named: as often as there is room. */
const STEPS = [2, 3, 6]

/** Beads that lie on each other, in the order of the hours. */
function groupsOf(beads: readonly PlacedBead[]): (readonly PlacedBead[])[] {
  const groups: PlacedBead[][] = []
  for (const bead of beads) {
    const group = groups.at(-1)
    const first = group?.[0]
    if (group !== undefined && first !== undefined && distanceBetween(first.at, bead.at) < TOGETHER) group.push(bead)
    else groups.push([bead])
  }
  return groups
}

function nameOf(group: readonly PlacedBead[]): string {
  const first = group[0]?.hour
  const last = group.at(-1)?.hour
  return first === last ? String(first) : `${first}–${last}`
}

interface Wanted {
  readonly text: string
  readonly width: number
  /** Outside the ring, inside it, and each a little farther. */
  readonly candidates: readonly Point[]
}

function wantedLabels(groups: readonly (readonly PlacedBead[])[], middle: Point, ring: number, step: number): Wanted[] {
  return groups.flatMap((group) => {
    const lead = group[(group.length - 1) >> 1]
    if (lead === undefined || !group.some(({ hour }) => hour % step === 0)) return []
    const text = nameOf(group)
    const width = textWidth(text, HOUR_SIZE) + 3
    const direction = toward(lead.azimuth)
    const largest = Math.max(...group.map(({ radius }) => radius))
    // A flat text reaches farther sideways than up and down.
    const reach = largest + 3 + Math.abs(direction.x) * (width / 2) + Math.abs(direction.y) * (HIGH / 2)
    const candidates = [reach, -reach, reach + 8, -reach - 8].map((off) => pointMoved(middle, direction, ring + off))
    return [{ text, width, candidates }]
  })
}

function crowded(wanted: readonly Wanted[]): boolean {
  const boxes = wanted.flatMap(({ candidates, width }) =>
    candidates[0] === undefined ? [] : [boxAround(candidates[0], width + 4, HIGH + 2)],
  )
  return boxes.some((box, index) => boxes.slice(index + 1).some((other) => overlap(box, other)))
}

/** The hours' names beside their beads, clear of what must be seen and of each other; one that finds no room is left out. */
export function placeHourLabels(
  beads: readonly PlacedBead[],
  middle: Point,
  ring: number,
  inside: Box,
  clear: readonly Box[],
): HourLabel[] {
  const groups = groupsOf(beads)
  const choices = STEPS.map((step) => wantedLabels(groups, middle, ring, step))
  const wanted = choices.find((choice) => !crowded(choice)) ?? choices.at(-1) ?? []
  const taken: Box[] = [...clear, ...beadBoxes(beads)]
  return wanted.flatMap(({ text, width, candidates }) => {
    const at = placeLabel(candidates, { width, height: HIGH }, inside, taken)
    if (at === null) return []
    taken.push(boxAround(at, width, HIGH))
    return [{ text, at }]
  })
}
