/** Where the close plan's words go: beside what they name, clear of the things and of each other. */
import { clipSegment } from '#core/frame/line-in-box.ts'
import { HEAD_HEIGHT } from './close-head.tsx'
import { boxAround, inset, placeLabel, textWidth } from '#renderer/view/drawing/pixel-lines.ts'
import type { PlanDrawing } from '#renderer/view/drawing/plan-drawing.ts'
import type { Box, PlanView, Point } from '#renderer/view/drawing/plan-view.ts'

export interface PlacedLabel {
  readonly text: string
  readonly at: Point
}

const SIZE = 12.5
const HIGH = 17

export interface LabelTexts {
  readonly distance: string
  readonly sharp: string | null
  readonly ring: string | null
  readonly landmark: string | null
}

export type PlacedLabels = Readonly<Record<keyof LabelTexts, PlacedLabel | null>>

/** The line to the landmark as it leaves the plan: where its arrow stands and which way it points. */
export interface Leaving {
  readonly from: Point
  readonly at: Point
  /** Degrees, 0 upward, clockwise. */
  readonly turn: number
}

/** Null when the landmark lies within the plan itself, or the line misses it. `head` is what a title takes at the top. */
export function leavingLine(drawing: PlanDrawing, view: PlanView, head = HEAD_HEIGHT): Leaving | null {
  const { landmark, standpoint, subject } = drawing
  if (landmark === null) return null
  const room = { ...inset(view.box, 9), top: view.box.top + head + 6 }
  const seen = clipSegment(standpoint, landmark.at, room)
  if (seen === null) return null
  const [start, at] = seen
  const whole = Math.hypot(at.x - standpoint.x, at.y - standpoint.y)
  // It begins behind the subject: beside the line to the subject it would only be a second one.
  const past = Math.hypot(subject.at.x - standpoint.x, subject.at.y - standpoint.y) + subject.size * 0.4
  const share = whole > past ? past / whole : 0
  const from =
    share === 0
      ? start
      : { x: standpoint.x + (at.x - standpoint.x) * share, y: standpoint.y + (at.y - standpoint.y) * share }
  if (Math.hypot(landmark.at.x - at.x, landmark.at.y - at.y) < 1) return null
  const turn = (Math.atan2(landmark.at.x - standpoint.x, standpoint.y - landmark.at.y) * 180) / Math.PI
  return { from, at, turn }
}

/** Places beside a point, nearest first, on all sides. */
function beside(at: Point, width: number, gap: number): Point[] {
  const aside = width / 2 + gap
  const down = HIGH / 2 + gap
  return [
    { x: at.x + aside, y: at.y },
    { x: at.x - aside, y: at.y },
    { x: at.x, y: at.y + down },
    { x: at.x, y: at.y - down },
    { x: at.x + aside, y: at.y + down },
    { x: at.x - aside, y: at.y + down },
    { x: at.x + aside, y: at.y - down },
    { x: at.x - aside, y: at.y - down },
  ]
}

function alongLine(from: Point, to: Point, width: number): Point[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y)
  if (length < 1) return beside(from, width, 14)
  const across = { x: -(to.y - from.y) / length, y: (to.x - from.x) / length }
  // A flat text needs more room beside a steep line than beside a level one.
  const room = Math.abs(across.x) * (width / 2) + Math.abs(across.y) * (HIGH / 2) + 5
  return [room, room + 14, room + 28, room + 44].flatMap((off) =>
    [0.5, 0.36, 0.64].flatMap((share) =>
      [-1, 1].map((side) => ({
        x: from.x + (to.x - from.x) * share + across.x * off * side,
        y: from.y + (to.y - from.y) * share + across.y * off * side,
      })),
    ),
  )
}

function kiteBox(drawing: PlanDrawing): Box {
  const turn = (drawing.aim * Math.PI) / 180
  const middle = { x: drawing.standpoint.x - Math.sin(turn) * 11, y: drawing.standpoint.y + Math.cos(turn) * 11 }
  return boxAround(middle, 26, 26)
}

/** Small boxes along a line, so that no word is set across it. */
function strung(from: Point, to: Point): Box[] {
  const count = Math.max(1, Math.round(Math.hypot(to.x - from.x, to.y - from.y) / 8))
  return Array.from({ length: count + 1 }, (_, index) => {
    const share = index / count
    return boxAround({ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }, 4, 4)
  })
}

/** Both edges of the wedge as far as they are seen. */
function wedgeEdges(drawing: PlanDrawing, view: PlanView): Box[] {
  const { sharp, standpoint } = drawing
  const [left, , , right] = sharp?.corners ?? []
  return [left, right].flatMap((corner) => {
    if (corner === undefined) return []
    const far = { x: standpoint.x + (corner.x - standpoint.x) * 100, y: standpoint.y + (corner.y - standpoint.y) * 100 }
    const seen = clipSegment(standpoint, far, view.box)
    return seen === null ? [] : strung(seen[0], seen[1])
  })
}

/** Every label that finds room, in order of weight. */
export function placeLabels(
  drawing: PlanDrawing,
  texts: LabelTexts,
  view: PlanView,
  taken: readonly Box[],
  head = HEAD_HEIGHT,
): PlacedLabels {
  const { subject, standpoint, sharp, ring } = drawing
  const reach = Math.max(subject.size, 24)
  const leaving = leavingLine(drawing, view, head)
  // The things and the words set so far must be seen; lines rather should.
  const things: Box[] = [
    ...taken,
    boxAround(subject.at, reach, reach * 0.8),
    kiteBox(drawing),
    boxAround(subject.handle, 14, 14),
    ...(leaving === null ? [] : [boxAround(leaving.at, 13, 13)]),
  ]
  const lines: readonly Box[] = [
    ...strung(standpoint, subject.at),
    ...wedgeEdges(drawing, view),
    ...(ring?.points ?? []).map((point) => boxAround(point, 4, 4)),
    ...(leaving === null ? [] : strung(leaving.from, leaving.at)),
  ]
  const inside = inset(view.box, 5)
  const put = (
    text: string | null,
    must: boolean,
    candidates: (width: number) => readonly Point[],
  ): PlacedLabel | null => {
    if (text === null) return null
    const width = textWidth(text, SIZE) + 4
    const size = { width, height: HIGH }
    // A word that would stick out is pushed back in: it may still find room beside what it names.
    const found = candidates(width).map((at) => ({
      x: Math.max(inside.left + width / 2, Math.min(inside.right - width / 2, at.x)),
      y: at.y,
    }))
    const best = placeLabel(found, size, inside, [...things, ...lines])
    const at = best ?? (must ? placeLabel(found, size, inside, things) : null)
    if (at === null) return null
    things.push(boxAround(at, width, HIGH))
    return { text, at }
  }
  return {
    distance: put(texts.distance, true, (width) => alongLine(standpoint, subject.at, width)),
    landmark: put(leaving === null ? null : texts.landmark, true, (width) => {
      return leaving === null ? [] : [10, 24, 44].flatMap((gap) => beside(leaving.at, width, gap))
    }),
    sharp: put(sharp === null ? null : texts.sharp, true, (width) =>
      [7, 18, 32].flatMap((gap) => (sharp?.corners ?? []).toReversed().flatMap((corner) => beside(corner, width, gap))),
    ),
    ring: put(ring === null ? null : texts.ring, false, (width) =>
      (ring?.points ?? []).flatMap((point) => beside(point, width, 7).slice(0, 4)),
    ),
  }
}
