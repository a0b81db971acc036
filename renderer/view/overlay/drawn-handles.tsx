/** The handles of the drawn ground that is chosen: its points, a small one in the middle of each leg, and its name. */
import { type Drawn, type DrawnSort, MOST_DRAWN_POINTS, legCount } from '#core/record/drawn-ground.ts'
import { chosenPoint } from '#renderer/state/session/drawn-ground.ts'
import { stoppingWords as say } from '#renderer/words/en-stopping.ts'
import { boxOf } from '#renderer/view/drawing/plan-drawing.ts'
import { apart } from './drawn-strokes.ts'
import { About, FocusRing, Grab } from '#renderer/view/drawing/marks.tsx'
import { type PlanView, type Point, distanceBetween } from '#renderer/view/drawing/plan-view.ts'
import { figure } from '#renderer/text/path-text.ts'
import { inset } from '#renderer/view/drawing/pixel-lines.ts'

/** Points nearer to one another than this, pixels, are shown only when the map is brought nearer. */
const APART = 22
/** A leg shorter than this has no handle of its own. */
const LEG_FROM = 38

interface NameProps extends Pick<HandlesProps, 'drawn' | 'name' | 'view'> {
  readonly points: readonly Point[]
}

interface HandlesProps {
  readonly drawn: Drawn
  readonly sort: DrawnSort
  readonly index: number
  readonly name: string
  readonly view: PlanView
}

export function DrawnHandles({ drawn, sort, index, name, view }: HandlesProps) {
  const points = drawn.points.map((at) => view.toPoint(at))
  const room = inset(view.box, -10)
  const seen = ({ x, y }: Point): boolean => x > room.left && x < room.right && y > room.top && y < room.bottom
  const count = points.length
  const legs = count >= MOST_DRAWN_POINTS ? 0 : legCount(drawn)
  return (
    <g class={`drawn-handles drawn-${sort}`}>
      {Array.from({ length: legs }, (_, leg) => {
        const from = points[leg]
        const to = points[(leg + 1) % count]
        if (from === undefined || to === undefined || distanceBetween(from, to) < LEG_FROM) return null
        const at = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }
        return seen(at) ? (
          <Grab
            key={`leg ${leg}`}
            grip={{ on: 'drawn-leg', sort, index, at: leg }}
            name={say.leg(name, leg + 1)}
            pressed={false}
          >
            <About at={at}>
              <circle class="hit" r={10} />
              <circle class="drawn-leg-mark" r={3} />
              <FocusRing radius={8} />
            </About>
          </Grab>
        ) : null
      })}
      {apart(points, APART).map((point) => {
        const at = points[point]
        return at !== undefined && seen(at) ? (
          <Grab
            key={`point ${point}`}
            grip={{ on: 'drawn-point', sort, index, at: point }}
            name={say.point(name, point + 1, count)}
            pressed={chosenPoint.value === point}
          >
            <About at={at}>
              <circle class="hit" r={11} />
              <rect class="drawn-point-mark" x={-4.5} y={-4.5} width={9} height={9} />
              <FocusRing radius={9} />
            </About>
          </Grab>
        ) : null
      })}
      <NameOf drawn={drawn} points={points} name={name} view={view} />
    </g>
  )
}

/** Inside an area, beside the middle of a line, where either is in sight. */
function NameOf({ drawn, points, name, view }: NameProps) {
  const { box } = view
  const sum = points.reduce((so, at) => ({ x: so.x + at.x, y: so.y + at.y }), { x: 0, y: 0 })
  const [before, after] = [points[Math.floor((points.length - 1) / 2)], points[Math.floor(points.length / 2)]]
  if (before === undefined || after === undefined) return null
  const middle = { x: (before.x + after.x) / 2, y: (before.y + after.y) / 2 }
  const wanted =
    drawn.form === 'area' ? { x: sum.x / points.length, y: sum.y / points.length } : { x: middle.x, y: middle.y - 20 }
  const { left, right, top, bottom } = boxOf(points)
  if (right < box.left || left > box.right || bottom < box.top || top > box.bottom) return null
  const x = Math.max(box.left + 60, Math.min(box.right - 60, wanted.x))
  const y = Math.max(box.top + 70, Math.min(box.bottom - 30, wanted.y))
  return (
    <text class="drawn-label" x={figure(x)} y={figure(y)} aria-hidden="true">
      {name.length > 40 ? `${name.slice(0, 39)}…` : name}
    </text>
  )
}
