/** Drawn ground on the map: stopping ground as a ladder or an edge with ticks inward, keep-outs hatched in their true width. */
import type { ComponentChildren } from 'preact'
import type { DrawnShape, DrawnSort } from '#core/record/drawn-ground.ts'
import type { KeepOut } from '#core/record/keep-out.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { StoppingGround, Turn } from '#core/record/stopping-ground.ts'
import { removeDrawn } from '#renderer/state/act/drawn-acts.ts'
import { drawnName, keepOutText, sizeText, stoppingText } from '#renderer/text/drawn-text.ts'
import { chooseDrawn, drawnShown, isChosen } from '#renderer/state/session/drawn-ground.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { stoppingWords as say } from '#renderer/words/en-stopping.ts'
import { boxOf } from '#renderer/view/drawing/plan-drawing.ts'
import { DrawnHandles } from './drawn-handles.tsx'
import { barPairs, endBar, inwardTicks, rungs, runsClockwise, stations, tip } from './drawn-strokes.ts'
import { type PlanView, type Point, distanceBetween } from '#renderer/view/drawing/plan-view.ts'
import { SHAKE } from '#renderer/view/hand/press.ts'
import { seenStretches } from './standpoint-line.tsx'
import { figure, linePath } from '#renderer/text/path-text.ts'
import { inset, overlap } from '#renderer/view/drawing/pixel-lines.ts'
import './drawn-ground.css'

const HATCH = 'hatch-keep-out'

/** Pixels between rungs by the turn they show, between ticks of an area's edge, and between pairs of bars. */
const RUNGS_EVERY: Readonly<Record<Turn, number>> = { along: 11, 'either-way': 19, free: 8 }
const TICKS_EVERY = 8
const TICK = 6
const BARS_EVERY = 26
/** A keep-out is drawn at least so wide, pixels, and its bars stand out so far. */
const NARROWEST = 4
const BARS_OUT = 5

interface PickProps {
  readonly shoot: Shoot
  readonly sort: DrawnSort
  readonly index: number
  readonly text: string
  readonly children: ComponentChildren
}

/** Where a pointer went down last, to tell a press from a drag of the map. */
let down: Point = { x: 0, y: 0 }

/** One thing drawn, to be chosen by a press or a key. */
function Pick({ shoot, sort, index, text, children }: PickProps) {
  const drawn = sort === 'stopping' ? shoot.stoppingGround[index] : shoot.keepOuts[index]
  if (drawn === undefined) return null
  const name = drawnName(shoot, sort, index)
  const chosen = isChosen(sort, drawn.id)
  const choose = (): void => chooseDrawn({ sort, id: drawn.id })
  const onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Enter' || event.key === ' ') choose()
    else if (event.key === 'Delete' || event.key === 'Backspace') removeDrawn(shoot, sort, drawn, name)
    else if (event.key === 'Escape' && chosen) chooseDrawn(null)
    else return
    event.preventDefault()
    event.stopPropagation()
  }
  const size = sizeText(drawn, settings.value.units)
  return (
    <g
      class={`grab drawn-pick drawn-${sort}${chosen ? ' chosen' : ''}`}
      tabindex={0}
      role="button"
      aria-pressed={chosen}
      aria-label={`${say.whole(name, say.forms[drawn.form], size, text)}. ${say.chooseHint}`}
      onPointerDown={(event) => {
        down = { x: event.clientX, y: event.clientY }
      }}
      onClick={(event) => {
        if (distanceBetween(down, { x: event.clientX, y: event.clientY }) <= SHAKE) choose()
      }}
      onKeyDown={onKey}
    >
      <title>{name}</title>
      {children}
    </g>
  )
}

interface Laid {
  readonly points: readonly Point[]
  /** The line's stretches in sight, or the whole outline. */
  readonly path: string
  readonly view: PlanView
}

/** The shape in the view's pixels; null when none of it is in sight. */
function laid({ form, points }: DrawnShape, view: PlanView, around: number): Laid | null {
  const at = points.map((place) => view.toPoint(place))
  if (at.length === 0 || !overlap(boxOf(at), inset(view.box, -40 - around))) return null
  return { points: at, path: form === 'area' ? linePath(at, true) : seenStretches(at, view), view }
}

function StoppingLine({ points, path, view, turn }: Laid & { readonly turn: Turn }) {
  const box = inset(view.box, -20)
  const back = points.toReversed()
  return (
    <>
      <path class="drawn-hit" d={path} />
      <path class="stopping-halo" d={path} />
      <path class="stopping-rail" d={path} />
      <path class="stopping-bed" d={path} />
      <path class="stopping-rung" d={rungs(stations(points, false, RUNGS_EVERY[turn], box), turn)} />
      {turn === 'free' ? (
        <path class="stopping-rung stopping-end" d={endBar(points) + endBar(back)} />
      ) : (
        <path class="stopping-tip" d={tip(points) + (turn === 'either-way' ? tip(back) : '')} />
      )}
      <path class="focus-line" d={path} />
    </>
  )
}

function StoppingArea({ points, path, view }: Laid) {
  const ticks = inwardTicks(stations(points, true, TICKS_EVERY, inset(view.box, -20)), runsClockwise(points), TICK)
  return (
    <>
      <path class="drawn-hit drawn-fill" d={path} />
      <path class="stopping-field" d={path} />
      <path class="stopping-edge" d={path + ticks} />
      <path class="focus-line" d={path} />
    </>
  )
}

function KeepOutLine({ points, path, view, keepOut }: Laid & { readonly keepOut: KeepOut }) {
  const scale = view.pixelsPerMetre(keepOut.points[0] ?? view.toPlace(points[0] ?? { x: 0, y: 0 }))
  const width = Math.max(NARROWEST, keepOut.width * scale)
  return (
    <>
      <path class="drawn-hit" d={path} stroke-width={figure(Math.max(16, width))} />
      <path class="keep-out-side" d={path} stroke-width={figure(width + 2.4)} />
      <path class="keep-out-paper" d={path} stroke-width={figure(width)} />
      <path class="keep-out-body" d={path} stroke-width={figure(width)} stroke={`url(#${HATCH})`} />
      {keepOut.noCrossing ? (
        <path
          class="keep-out-bar"
          d={barPairs(stations(points, false, BARS_EVERY, inset(view.box, -20)), width / 2 + BARS_OUT)}
        />
      ) : null}
      <path class="focus-line" d={path} />
    </>
  )
}

function KeepOutArea({ points, path, view, keepOut }: Laid & { readonly keepOut: KeepOut }) {
  return (
    <>
      <path class="drawn-hit drawn-fill" d={path} />
      <path class="keep-out-area" d={path} fill={`url(#${HATCH})`} />
      {keepOut.noCrossing ? (
        <path class="keep-out-bar" d={barPairs(stations(points, true, BARS_EVERY, inset(view.box, -20)), BARS_OUT)} />
      ) : null}
      <path class="focus-line" d={path} />
    </>
  )
}

function Stopping({ ground, shape }: { readonly ground: StoppingGround; readonly shape: Laid }) {
  return ground.form === 'line' ? <StoppingLine {...shape} turn={ground.turn} /> : <StoppingArea {...shape} />
}

function Kept({ keepOut, shape }: { readonly keepOut: KeepOut; readonly shape: Laid }) {
  return keepOut.form === 'line' ? (
    <KeepOutLine {...shape} keepOut={keepOut} />
  ) : (
    <KeepOutArea {...shape} keepOut={keepOut} />
  )
}

/** Strokes against the landmark's hatch, so that the two are told apart where they meet. */
export function KeepOutHatch() {
  return (
    <pattern id={HATCH} width={6} height={6} patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
      <rect class="keep-out-hatch" width={1.3} height={6} />
    </pattern>
  )
}

export function DrawnMarks({ shoot, view }: { readonly shoot: Shoot; readonly view: PlanView }) {
  if (!drawnShown.value) return null
  const { units } = settings.value
  return (
    <g>
      {shoot.keepOuts.map((keepOut, index) => {
        const shape = laid(keepOut, view, keepOut.width * view.pixelsPerMetre(keepOut.points[0] ?? { lat: 0, lon: 0 }))
        return shape === null ? null : (
          <Pick key={keepOut.id} shoot={shoot} sort="keep-out" index={index} text={keepOutText(keepOut, units)}>
            <Kept keepOut={keepOut} shape={shape} />
          </Pick>
        )
      })}
      {shoot.stoppingGround.map((ground, index) => {
        const shape = laid(ground, view, 0)
        return shape === null ? null : (
          <Pick key={ground.id} shoot={shoot} sort="stopping" index={index} text={stoppingText(ground)}>
            <Stopping ground={ground} shape={shape} />
          </Pick>
        )
      })}
    </g>
  )
}

/** The points of the chosen one, over everything else drawn. */
export function ChosenDrawnHandles({ shoot, view }: { readonly shoot: Shoot; readonly view: PlanView }) {
  if (!drawnShown.value) return null
  for (const sort of ['stopping', 'keep-out'] as const) {
    const all = sort === 'stopping' ? shoot.stoppingGround : shoot.keepOuts
    const index = all.findIndex(({ id }) => isChosen(sort, id))
    const drawn = all[index]
    if (drawn !== undefined) {
      return <DrawnHandles drawn={drawn} sort={sort} index={index} name={drawnName(shoot, sort, index)} view={view} />
    }
  }
  return null
}
