/** The dotted line to the landmark with its distance and bearing on a plate, wherever a stretch of it is in sight. */
import { clipSegment } from '#core/frame/line-in-box.ts'
import type { Assessment } from '#core/plan/assess.ts'
import { bearing, metres } from '#renderer/text/figure.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { coveredBoxes } from './covered.ts'
import type { PlanDrawing } from './plan-drawing.ts'
import { Plate } from './marks.tsx'
import type { Box, PlanView, Point } from './plan-view.ts'
import { linePath } from '#renderer/text/path-text.ts'
import { boxAround, inset, placeLabel, textWidth } from './pixel-lines.ts'

const LABEL_SIZE = 13
const PLATE_HIGH = 21
/** Where along the line in sight the plate is tried, the middle first. */
const SHARES = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.82]

export interface SightlinePlate {
  readonly at: Point
  readonly text: string
  readonly width: number
}

export interface PlacedSightline {
  readonly line: readonly [Point, Point]
  /** Null when it finds no room. */
  readonly plate: SightlinePlate | null
}

function midway(from: Point, to: Point, share: number): Point {
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }
}

/** `rather` are boxes that the plate leaves free where it can. Null without a landmark, or when nothing of the line is in sight. */
export function placeSightline(
  drawing: PlanDrawing,
  reading: Assessment,
  view: PlanView,
  rather: readonly Box[],
): PlacedSightline | null {
  const { landmark, standpoint, subject } = drawing
  const to = reading.toLandmark
  if (landmark === null || to === null) return null
  const line = clipSegment(standpoint, landmark.at, inset(view.box, -10))
  if (line === null) return null
  const distance = metres(to.distance, settings.value.units)
  const text = to.bearing === null ? distance : mapWords.sightline(distance, bearing(to.bearing))
  const width = textWidth(text, LABEL_SIZE) + 22
  const size = { width, height: PLATE_HIGH }
  const candidates = SHARES.map((share) => midway(line[0], line[1], share))
  const inside = inset(view.box, 6)
  const things = [boxAround(subject.at, 48, 48), boxAround(standpoint, 36, 36), boxAround(landmark.at, 24, 24)]
  const must = [...coveredBoxes(view.box), ...things]
  const at = placeLabel(candidates, size, inside, [...must, ...rather]) ?? placeLabel(candidates, size, inside, must)
  return { line, plate: at === null ? null : { at, text, width } }
}

export function plateBox({ at, width }: SightlinePlate): Box {
  return boxAround(at, width, PLATE_HIGH)
}

export function SightlineMark({ line, plate }: PlacedSightline) {
  return (
    <>
      <path class="sightline" d={linePath(line, false)} />
      {plate === null ? null : <Plate {...plate} />}
    </>
  )
}
