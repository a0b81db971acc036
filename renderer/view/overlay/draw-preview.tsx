/** What is being drawn or would be taken over, and the cross-hair by which keys lead. */
import { useEffect } from 'preact/hooks'
import { drawing, takingAs } from '#renderer/state/session/drawn-ground.ts'
import { crossHairOn, middleOf } from '#renderer/view/hand/cross-hair.ts'
import { pointedPlace } from '#renderer/view/hand/draw-shape.ts'
import type { PlanView } from '#renderer/view/drawing/plan-view.ts'
import { figure, linePath } from '#renderer/text/path-text.ts'
import { pointAtWay, wayPointed } from '#renderer/view/hand/take-way.ts'

export function DrawPreview({ view }: { readonly view: PlanView }) {
  const waits = drawing.value !== null || takingAs.value !== null
  if (!waits) return null
  return (
    <g class="draw-preview" aria-hidden="true">
      <Drawn view={view} />
      <Pointed view={view} />
      {crossHairOn.value ? <CrossHair view={view} /> : null}
    </g>
  )
}

function Drawn({ view }: { readonly view: PlanView }) {
  const now = drawing.value
  if (now === null) return null
  const points = now.points.map((at) => view.toPoint(at))
  const [first] = points
  const last = points.at(-1)
  const pointed = pointedPlace.value
  const next = crossHairOn.value ? middleOf(view) : pointed === null ? null : view.toPoint(pointed)
  const reach = last === undefined || next === null ? '' : linePath([last, next], false)
  const closing =
    now.form === 'line' || first === undefined || points.length < 2
      ? ''
      : linePath([next ?? last ?? first, first], false)
  return (
    <>
      {now.form === 'area' ? (
        <path class="draw-field" d={linePath(next === null ? points : [...points, next], true)} />
      ) : null}
      <path class="draw-halo" d={linePath(points, false) + reach} />
      <path class="draw-line" d={linePath(points, false)} />
      <path class="draw-reach" d={reach + closing} />
      {points.map((at, index) => (
        // Points have no identity of their own but their order.
        // oxlint-disable-next-line react/no-array-index-key
        <circle key={index} class="draw-point" cx={figure(at.x)} cy={figure(at.y)} r={3.6} />
      ))}
    </>
  )
}

function Pointed({ view }: { readonly view: PlanView }) {
  const keys = crossHairOn.value && takingAs.value !== null
  useEffect(() => {
    if (keys) pointAtWay(view.toPlace(middleOf(view)))
  }, [keys, view])
  const way = wayPointed.value
  if (way === null || takingAs.value === null) return null
  const path = linePath(
    way.shape.points.map((at) => view.toPoint(at)),
    way.shape.form === 'area',
  )
  return (
    <>
      {way.shape.form === 'area' ? <path class="draw-field" d={path} /> : null}
      <path class="draw-halo" d={path} />
      <path class="draw-line" d={path} />
    </>
  )
}

function CrossHair({ view }: { readonly view: PlanView }) {
  const { x, y } = middleOf(view)
  const arms = 'M-16,0H-4M4,0H16M0,-16V-4M0,4V16'
  return (
    <g transform={`translate(${figure(x)},${figure(y)})`}>
      <path class="cross-hair-halo" d={arms} />
      <path class="cross-hair" d={arms} />
    </g>
  )
}
