/** The map's scale bar: a length people would name, in their units, as long as it is in the window's middle. */
import type { UnitSystem } from '#core/units/length.ts'
import { metres } from '#renderer/text/figure.ts'
import { niceLength } from '#renderer/view/drawing/nice-length.ts'

/** Longest bar in pixels. */
const LONGEST = 110

export function ScaleBar({ pixelsPerMetre, units }: { readonly pixelsPerMetre: number; readonly units: UnitSystem }) {
  const length = niceLength(LONGEST / pixelsPerMetre, units)
  const width = Math.round(length * pixelsPerMetre)
  return (
    <svg class="scale-bar" width={width + 20} height={30} role="img" aria-label={metres(length, units)}>
      <text x={width / 2 + 10} y={13}>
        {metres(length, units)}
      </text>
      <path d={`M10,18v8M${width + 10},18v8`} />
      <path class="scale-line" d={`M10,22h${width}`} />
    </svg>
  )
}
