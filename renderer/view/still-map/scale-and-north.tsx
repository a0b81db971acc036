/** What tells a still drawing's size and turn: a bar of a round length in one corner, north in another. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { metres } from '#renderer/text/figure.ts'
import { niceLength } from '#renderer/view/drawing/nice-length.ts'
import type { PlanView } from '#renderer/view/drawing/plan-view.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'

interface ScaleProps {
  readonly view: PlanView
  readonly centre: LatLon
  readonly width: number
  readonly height: number
  readonly units: UnitSystem
}

export function StillScale({ view, centre, width, height, units }: ScaleProps) {
  const perMetre = view.pixelsPerMetre(centre)
  const length = niceLength((width * 0.28) / perMetre, units)
  const across = length * perMetre
  const x = width - across - 12
  const y = height - 12
  return (
    <g class="still-scale" aria-hidden="true">
      <path d={`M${x},${y - 4}v8M${x + across},${y - 4}v8M${x},${y}h${across}`} class="still-scale-halo" />
      <path d={`M${x},${y - 4}v8M${x + across},${y - 4}v8M${x},${y}h${across}`} class="still-scale-line" />
      <text x={x + across / 2} y={y - 7} class="still-scale-text">
        {metres(length, units)}
      </text>
    </g>
  )
}

export function North({ width }: { readonly width: number }) {
  return (
    <g class="still-north" transform={`translate(${width - 20},28)`} aria-hidden="true">
      <path d="M0,-16L5,0L0,-3L-5,0Z" />
      <text y={12}>{sheetWords.north}</text>
    </g>
  )
}
