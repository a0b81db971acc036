/** How high the ground lies under the pointer, beside the scale. It follows every move, so it is not read out. */
import { computed, signal } from '@preact/signals'
import { elevationAtPlace } from '#core/ground/elevation-grid.ts'
import { elevation } from '#renderer/text/figure.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { terrain } from '#renderer/state/plan/terrain.ts'
import { mapLook, mapView } from '#renderer/view/drawing/map-look.ts'
import type { Point } from '#renderer/view/drawing/plan-view.ts'

/** From the map's corner; null while no pointer is over the map. */
const pointer = signal<Point | null>(null)

/** Watches the pointer over a map. Returns a function that ends the watch. */
export function followPointer(holder: HTMLElement): () => void {
  let corner: Point | null = null
  const onMove = (event: PointerEvent): void => {
    // A finger hides what it points at and leaves no pointer behind.
    if (event.pointerType === 'touch') return
    // Where the map lies is looked up once a visit: asked with each move it would have the page laid out twice a frame.
    corner ??= holder.getBoundingClientRect()
    pointer.value = { x: event.clientX - corner.x, y: event.clientY - corner.y }
  }
  const onLeave = (): void => {
    pointer.value = null
    corner = null
  }
  const moved = new ResizeObserver(() => {
    corner = null
  })
  moved.observe(holder)
  holder.addEventListener('pointermove', onMove)
  holder.addEventListener('pointerleave', onLeave)
  return () => {
    moved.disconnect()
    holder.removeEventListener('pointermove', onMove)
    holder.removeEventListener('pointerleave', onLeave)
    pointer.value = null
  }
}

const height = computed(() => {
  const at = pointer.value
  const look = mapLook.value
  const view = mapView.value
  const grid = terrain.value
  if (at === null || look === null || view === null || grid === null) return null
  return elevationAtPlace(grid, view.toPlace({ x: look.box.left + at.x, y: look.box.top + at.y }))
})

export function PointerHeight() {
  if (height.value === null) return null
  return (
    <p class="map-over pointer-height" aria-hidden="true">
      {elevation(height.value, settings.value.units)}
    </p>
  )
}
