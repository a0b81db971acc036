/** What the close plan shows: it zooms by itself so that subject and standpoint fit, and stays as it is while they still do. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { localFrame, placeUnder, toEarth, toLocal } from '#core/geo/local-frame.ts'
import type { Plan } from '#core/plan/plan.ts'
import { subjectOutline } from '#renderer/view/drawing/outline.ts'
import { recalled } from '#renderer/job/recalled.ts'
import { type PlanView, levelView } from '#renderer/view/drawing/plan-view.ts'

export interface CloseFrame {
  readonly middle: LatLon
  /** Metres across the plan's width. */
  readonly across: number
}

interface Size {
  readonly width: number
  readonly height: number
}

/** Metres across, from two bodies' lengths up; past the last it goes on in round steps. */
const STEPS = [10, 12, 15, 20, 25, 30, 40, 50, 60, 80]

/** Shares of the plan that the things may take, leaving room for the kite, the handle and the words. */
const FREE_WIDTH = 0.6
const FREE_HEIGHT = 0.54
/** As long as they lie within this share, the plan stays where it is. */
const STAYS_WITHIN = 0.84

export function roundAcross(needed: number): number {
  for (let power = 1; power < 1e9; power *= 10) {
    const step = STEPS.find((candidate) => candidate * power >= needed)
    if (step !== undefined) return step * power
  }
  return needed
}

interface Extents {
  readonly west: number
  readonly east: number
  readonly south: number
  readonly north: number
}

/** The box around the things in metres, from a place. */
function extents(places: readonly LatLon[], from: LatLon): Extents {
  const frame = localFrame(from, 0)
  const points = places.map((at) => toLocal(frame, localFrame(at, 0).origin))
  const easts = points.map((point) => point.east)
  const norths = points.map((point) => point.north)
  return { west: Math.min(...easts), east: Math.max(...easts), south: Math.min(...norths), north: Math.max(...norths) }
}

function placesOf(plan: Plan): LatLon[] {
  const { corners, tip } = subjectOutline(plan.shoot.subject, plan.spot.stop)
  return [...corners, tip, plan.spot.standpoint.at]
}

function fresh(plan: Plan, size: Size): CloseFrame {
  const from = plan.spot.stop.at
  const box = extents(placesOf(plan), from)
  const wide = (box.east - box.west) / FREE_WIDTH
  const high = ((box.north - box.south) / FREE_HEIGHT) * (size.width / size.height)
  const middle = placeUnder(toEarth(localFrame(from, 0), (box.west + box.east) / 2, (box.south + box.north) / 2, 0))
  return { middle, across: roundAcross(Math.max(wide, high)) }
}

function stillHolds(plan: Plan, frame: CloseFrame, size: Size): boolean {
  const box = extents(placesOf(plan), frame.middle)
  const wide = (frame.across / 2) * STAYS_WITHIN
  const high = wide * (size.height / size.width)
  return box.west > -wide && box.east < wide && box.south > -high && box.north < high
}

/** The frame for a plan: the one before where it still holds the things and isn't much too wide. */
export function nextFrame(plan: Plan, size: Size, before: CloseFrame | null): CloseFrame {
  const wanted = fresh(plan, size)
  const keeps = before !== null && before.across <= wanted.across * 1.7 && stillHolds(plan, before, size)
  return keeps ? before : wanted
}

/** The same while neither changes: what is drawn in it then need not be drawn again. */
export const frameView = recalled(1, (frame: CloseFrame, size: Size): PlanView =>
  levelView(frame.middle, size.width / frame.across, size.width, size.height),
)

/** Metres between the lines of the plan's grid. */
export function gridStep(across: number): number {
  const wanted = across / 16
  const power = 10 ** Math.floor(Math.log10(wanted))
  return ([1, 2, 5].find((step) => step * power >= wanted) ?? 10) * power
}
