/** The line of standpoints over the map, and the note that names it and takes it away again. */
import { clipSegment } from '#core/frame/line-in-box.ts'
import { useEffect } from 'preact/hooks'
import { page, placing } from '#renderer/state/session/navigation.ts'
import { standpointLine, showStandpointLine } from '#renderer/state/session/standpoint-line.ts'
import { mapLightWords } from '#renderer/words/en-map-light.ts'
import { runsOf } from '#renderer/view/drawing/hidden-runs.ts'
import type { PlanView, Point } from '#renderer/view/drawing/plan-view.ts'
import { figure, linePath } from '#renderer/text/path-text.ts'
import { inset } from '#renderer/view/drawing/pixel-lines.ts'
import { heldGrip } from '#renderer/state/act/held.ts'

/** The stretches of a line that are in sight, each as a path of its own. */
export function seenStretches(points: readonly Point[], view: PlanView): string {
  const room = inset(view.box, -40)
  const stretches: Point[][] = []
  points.slice(1).forEach((to, index) => {
    const from = points[index] ?? to
    const seen = clipSegment(from, to, room)
    if (seen === null) return
    const open = stretches.at(-1)
    const last = open?.at(-1)
    if (open !== undefined && last?.x === seen[0].x && last.y === seen[0].y) open.push(seen[1])
    else stretches.push([...seen])
  })
  return stretches.map((stretch) => linePath(stretch, false)).join('')
}

export function StandpointLineDrawing({ view }: { readonly view: PlanView }) {
  const shown = standpointLine.value
  if (shown === null) return null
  const points = shown.places.map((at) => view.toPoint(at))
  const [path, hidden] = [false, true].map((behind) =>
    runsOf(points, shown.hidden, behind)
      .map((run) => seenStretches(run, view))
      .join(''),
  )
  const top = shown.onTop === null ? null : view.toPoint(shown.onTop)
  return (
    <g aria-hidden="true">
      <path class="standpoint-line-halo" d={path} />
      <path class="standpoint-line" d={path} />
      <path class="standpoint-line-halo" d={hidden} />
      <path class="standpoint-line standpoint-line-hidden" d={hidden} />
      {top === null ? null : (
        <path
          class={shown.onTopHidden ? 'on-top-mark on-top-hidden' : 'on-top-mark'}
          transform={`translate(${figure(top.x)},${figure(top.y)})`}
          d="M0,-6L6,0L0,6L-6,0Z"
        />
      )}
    </g>
  )
}

function remove(): void {
  showStandpointLine(null)
}

function typing(event: KeyboardEvent): boolean {
  return event.target instanceof HTMLElement && event.target.matches('input, textarea, select, [contenteditable]')
}

export function StandpointLineNote() {
  const shown = standpointLine.value
  const there = shown !== null
  useEffect(() => {
    if (!there) return undefined
    const onKey = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || event.defaultPrevented || typing(event)) return
      if (page.peek() !== 'board' || placing.peek() !== null || heldGrip.peek() !== null) return
      event.preventDefault()
      remove()
    }
    addEventListener('keydown', onKey)
    return () => removeEventListener('keydown', onKey)
  }, [there])
  if (shown === null) return null
  return (
    <div class="map-over map-note" role="status">
      <span>{shown.label}</span>
      <button type="button" onClick={remove}>
        {mapLightWords.removeLine}
      </button>
    </div>
  )
}
