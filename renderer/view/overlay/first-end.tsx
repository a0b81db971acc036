/** The end of a span that has been placed while its other end has not: seen, so that one knows from where the other is meant. */
import { placing } from '#renderer/state/session/navigation.ts'
import { figure } from '#renderer/text/path-text.ts'
import { mapView } from '#renderer/view/drawing/map-look.ts'

export function FirstEnd() {
  const view = mapView.value
  const wish = placing.value
  if (view === null || wish?.what !== 'new-landmark' || wish.from === null) return null
  const { x, y } = view.toPoint(wish.from)
  return <circle class="corner-handle" cx={figure(x)} cy={figure(y)} r={6} />
}
