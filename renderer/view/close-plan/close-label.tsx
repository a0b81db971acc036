/** One of the close plan's words at its place. */
import { figure } from '#renderer/text/path-text.ts'
import type { PlacedLabel } from './close-labels.ts'

export function CloseLabel({ label, kind }: { readonly label: PlacedLabel | null; readonly kind: string }) {
  return label === null ? null : (
    <text class={`close-label close-label-${kind}`} x={figure(label.at.x)} y={figure(label.at.y + 4.3)}>
      {label.text}
    </text>
  )
}
