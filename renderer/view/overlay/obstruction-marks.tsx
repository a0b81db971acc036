/** Trees and walls on the map, each a line with short ticks that is grabbed whole or by its points; and what hides on the way to the landmark. */
import { obstructionName } from '#renderer/text/ground-text.ts'
import type { Assessment } from '#core/plan/assess.ts'
import { placeAlong } from '#core/plan/ground-profile.ts'
import type { Plan } from '#core/plan/plan.ts'
import { metres } from '#renderer/text/figure.ts'
import { groundLine } from '#renderer/state/plan/board-plan.ts'
import { profilePoint } from '#renderer/state/session/profile-point.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { boxOf } from '#renderer/view/drawing/plan-drawing.ts'
import { About, FocusRing, Grab } from '#renderer/view/drawing/marks.tsx'
import { type PlanView, type Point, distanceBetween } from '#renderer/view/drawing/plan-view.ts'
import { figure, linePath } from '#renderer/text/path-text.ts'
import { inset, overlap } from '#renderer/view/drawing/pixel-lines.ts'

/** Pixels between the ticks of an obstruction, and their length to both sides. */
const TICK_EVERY = 7
const TICK = 3.5
/** Shorter than this on the map, pixels, an obstruction is taken as a whole alone. */
const ENDS_FROM = 34

/** Short strokes across a line, evenly along each of its stretches. */
export function tickStrokes(points: readonly Point[]): string {
  return points
    .slice(1)
    .map((to, index) => {
      const from = points[index] ?? to
      const length = distanceBetween(from, to)
      const count = Math.floor(length / TICK_EVERY)
      if (count === 0) return ''
      const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length }
      return Array.from({ length: count }, (_, tick) => {
        const far = ((tick + 0.5) / count) * length
        const at = { x: from.x + along.x * far, y: from.y + along.y * far }
        return linePath(
          [
            { x: at.x - along.y * TICK, y: at.y + along.x * TICK },
            { x: at.x + along.y * TICK, y: at.y - along.x * TICK },
          ],
          false,
        )
      }).join('')
    })
    .join('')
}

function longest(points: readonly Point[]): number {
  const { left, right, top, bottom } = boxOf(points)
  return Math.hypot(right - left, bottom - top)
}

interface MarksProps {
  readonly plan: Plan
  readonly view: PlanView
  readonly found: Assessment
}

export function ObstructionMarks({ plan, view, found }: MarksProps) {
  const hides = found.ground?.toLandmark?.hiddenBy?.obstruction ?? null
  const { obstructions } = plan.shoot
  const { units } = settings.value
  return (
    <>
      {obstructions.map((obstruction, index) => {
        const points = obstruction.line.map((at) => view.toPoint(at))
        if (!overlap(boxOf(points), inset(view.box, -40))) return null
        const name = obstructionName(obstructions, index)
        const line = linePath(points, false)
        return (
          <g key={obstruction.id} class={hides === index ? 'obstruction-hides' : ''}>
            <Grab
              grip={{ on: 'obstruction', index, end: null }}
              name={groundWords.obstructions.whole(name, metres(obstruction.height, units))}
              pressed={false}
            >
              <path class="obstruction-hit" d={line} />
              <path class="obstruction-halo" d={line} />
              <path class="obstruction-line" d={line + tickStrokes(points)} />
              <path class="focus-line" d={line} />
            </Grab>
            {longest(points) < ENDS_FROM
              ? null
              : points.map((at, end) => (
                  <Grab
                    // Points have no identity of their own but their order.
                    // oxlint-disable-next-line react/no-array-index-key
                    key={end}
                    grip={{ on: 'obstruction', index, end }}
                    name={groundWords.obstructions.end(name, end + 1, points.length)}
                    pressed={false}
                  >
                    <About at={at}>
                      <circle class="hit" r={10} />
                      <circle class="obstruction-end" r={4} />
                      <FocusRing radius={8} />
                    </About>
                  </Grab>
                ))}
          </g>
        )
      })}
    </>
  )
}

/** What hides the most of the landmark, and the point that is read off the profile just now. */
export function OnTheWay({ view, found }: { readonly view: PlanView; readonly found: Assessment }) {
  const by = found.ground?.toLandmark?.hiddenBy ?? null
  const point = profilePoint.value
  // Unless a point is read off it, the line is not worked out with every movement.
  const line = point === null ? null : groundLine.value
  const read = line === null || point === null ? null : view.toPoint(placeAlong(line, Math.min(point, line.length)))
  // An obstruction that hides is told by itself.
  const hides = by === null || by.obstruction !== null ? null : view.toPoint(by.at)
  return (
    <>
      {hides === null || by === null ? null : (
        <g
          class="hides-mark"
          transform={`translate(${figure(hides.x)},${figure(hides.y)})`}
          role="img"
          aria-label={groundWords.map.tightest(metres(by.distance, settings.value.units))}
        >
          <path d="M-9,4.5L0,-5.5L9,4.5" />
          <path d="M-9,4.5L0,-5.5L9,4.5" />
        </g>
      )}
      {read === null ? null : (
        <circle class="profile-point" cx={figure(read.x)} cy={figure(read.y)} r={4.5} aria-hidden="true" />
      )}
    </>
  )
}
