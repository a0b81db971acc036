/** Where the numbered marks of the best spots lie on the map: the subject's own rectangle, a stub of the sightline, a plate that finds room. */
import type { Subject } from '#core/scene/subject.ts'
import { degrees } from '#core/units/angle.ts'
import type { ScanResult } from '#renderer/state/session/scan-shown.ts'
import { pointMoved, toward } from '#renderer/view/drawing/plan-drawing.ts'
import type { Box, PlanView, Point } from '#renderer/view/drawing/plan-view.ts'
import { figure } from '#renderer/text/path-text.ts'
import { boxAround, inset, placeLabel, textWidth } from '#renderer/view/drawing/pixel-lines.ts'

/** Pixels along a subject that would be drawn smaller than can be seen, and the least across. */
const LEAST_LONG = 19
const LEAST_WIDE = 6.5
/** Pixels of the stub, from the middle. */
const STUB = 30
const PLATE_HIGH = 17
const FONT = 12.5
/** Pixels from the middle at which plates are tried. */
const PLATE_AWAY = [19, 27, 38] as const
const WAYS = [90, -90, 180, 45, -45, 135, -135, 0] as const

export interface ResultMark {
  readonly id: string
  readonly number: number
  readonly at: Point
  readonly heading: number
  /** Its rectangle with the notch, front up, around 0, 0. */
  readonly body: string
  readonly stub: Point
  readonly plate: { readonly at: Point; readonly width: number; readonly height: number }
}

/** A rectangle that runs out into the notch at its front, in the subject's proportions as far as they can be seen. */
function bodyPath(subject: Pick<Subject, 'length' | 'width'>, pixelsPerMetre: number): string {
  const long = Math.max(LEAST_LONG, subject.length * pixelsPerMetre)
  const wide = Math.max(LEAST_WIDE, Math.min(long, (long * subject.width) / Math.max(subject.length, 0.01)))
  const [x, y] = [wide / 2, long / 2]
  const shoulder = Math.min(long * 0.4, wide * 0.7)
  return `M${figure(-x)},${figure(y)}V${figure(shoulder - y)}L0,${figure(-y)}L${figure(x)},${figure(shoulder - y)}V${figure(y)}Z`
}

function bearingBetween(from: Point, to: Point): number {
  return degrees(Math.atan2(to.x - from.x, from.y - to.y))
}

/** Those in sight, the best first: the best find room for their plates before the others. */
export function placeMarks(
  results: readonly ScanResult[],
  subject: Pick<Subject, 'length' | 'width'>,
  view: PlanView,
): ResultMark[] {
  const room = inset(view.box, -30)
  const seen = results
    .map((result) => ({ result, at: view.toPoint(result.candidate.at) }))
    .filter(({ at }) => at.x >= room.left && at.x <= room.right && at.y >= room.top && at.y <= room.bottom)
  const taken: Box[] = seen.map(({ at }) => boxAround(at, LEAST_LONG, LEAST_LONG))
  return seen.map(({ result, at }) => {
    const { candidate, number, id } = result
    const way = bearingBetween(at, view.toPoint(candidate.standpoint))
    const width = textWidth(String(number), FONT) + 9
    const tries = PLATE_AWAY.flatMap((away) => WAYS.map((turn) => pointMoved(at, toward(way + turn), away)))
    const plate = placeLabel(tries, { width, height: PLATE_HIGH }, inset(view.box, -40), taken) ?? tries[0] ?? at
    taken.push(boxAround(plate, width, PLATE_HIGH))
    return {
      id,
      number,
      at,
      heading: candidate.heading,
      body: bodyPath(subject, view.pixelsPerMetre(candidate.at)),
      stub: pointMoved(at, toward(way), STUB),
      plate: { at: plate, width, height: PLATE_HIGH },
    }
  })
}
