/** What is done with trees and walls: one is put across the way to the landmark, named, given a height, removed. */
import { destination, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { ScreenRecord, Shoot } from '#core/plan/shoot.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/shell.ts'
import { mapMiddle } from '#renderer/part/place-box.tsx'
import { changeShoot, undo } from '#renderer/state/edits.ts'
import { tell } from '#renderer/state/notices.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { words } from '#renderer/words/en.ts'

const { screens: say } = groundWords

/** As many as a stored shoot may have. */
export const MOST_SCREENS = 100
/** Metres of a new one: length, height, and how far along the way to the landmark it stands. */
const LENGTH = 40
const HEIGHT = 8
const SHARE = 0.6

/** A line of a length whose middle lies at a place, square to a bearing, from left to right as one looks along it. */
export function lineAcross(middle: LatLon, bearing: number, length: number): readonly [LatLon, LatLon] {
  return [destination(middle, bearing - 90, length / 2), destination(middle, bearing + 90, length / 2)]
}

/** A new screen across the way to the landmark; without one, across the look to the subject at another place. */
export function newScreen(id: string, plan: Plan, otherwise: LatLon | null): ScreenRecord {
  const { standpoint, stop } = plan.spot
  const goal = plan.landmark === null ? null : landmarkMiddle(landmarkPoints(plan.landmark))
  const way = geodesicLine(standpoint.at, goal ?? stop.at)
  const bearing = way.bearing ?? 0
  const middle =
    goal === null ? (otherwise ?? stop.at) : destination(standpoint.at, bearing, Math.max(way.distance * SHARE, 0))
  return { id, name: '', line: lineAcross(middle, bearing, LENGTH), height: HEIGHT }
}

export function addScreen(plan: Plan): void {
  const { shoot } = plan
  if (shoot.screens.length >= MOST_SCREENS) {
    tell('fault', say.full(MOST_SCREENS))
    return
  }
  const added = newScreen(crypto.randomUUID(), plan, mapMiddle())
  void changeShoot(say.edit.add, { ...shoot, screens: [...shoot.screens, added] })
}

export function withScreen(shoot: Shoot, after: ScreenRecord): Shoot {
  return { ...shoot, screens: shoot.screens.map((screen) => (screen.id === after.id ? after : screen)) }
}

export function removeScreen(shoot: Shoot, gone: ScreenRecord, name: string): void {
  void changeShoot(say.edit.remove, { ...shoot, screens: shoot.screens.filter((screen) => screen.id !== gone.id) })
  tell('done', say.removed(name), { label: words.board.undo, run: () => void undo() })
}
