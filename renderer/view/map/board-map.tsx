/** The map on the board: the base, the plan drawn over it, its controls, and the close plan in its corner. */
import { render } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import { ClosePlan } from '#renderer/view/close-plan/close-plan.tsx'
import { type Fault, Guarded, NotDrawn } from '#renderer/part/guarded.tsx'
import { mapWords } from '#renderer/words/en-map.ts'
import { notDrawnWords } from '#renderer/words/en-not-drawn.ts'
import { type LiveMap, startMap } from './live-map.ts'
import { MapControls } from './map-controls.tsx'
import { Things } from '#renderer/view/overlay/plan-overlay.tsx'

const { parts } = notDrawnWords

export function BoardMap() {
  const holder = useRef<HTMLDivElement>(null)
  const [fault, setFault] = useState<Fault | null>(null)
  const [live, setLive] = useState<LiveMap | null>(null)
  useLayoutEffect(() => {
    if (holder.current === null) return undefined
    const map = startMap(holder.current)
    setLive(map)
    // Leaflet owns the pane's place in the page, so the plan is a drawing of its own within it.
    render(
      <Guarded part={parts.plan} onFault={setFault}>
        <Things pointOf={map.pointOf} />
      </Guarded>,
      map.pane,
    )
    return () => {
      render(null, map.pane)
      setLive(null)
      map.stop()
    }
  }, [])
  return (
    <section class="board-map" aria-label={mapWords.map}>
      <div ref={holder} class="map-holder" />
      {live === null ? null : (
        <Guarded part={parts.controls}>
          <MapControls zoomBy={live.zoomBy} placeInMiddle={live.placeInMiddle} retryTiles={live.retryTiles} />
        </Guarded>
      )}
      {fault === null ? null : (
        <div class="map-over plan-not-drawn">
          <NotDrawn part={parts.plan} fault={fault} />
        </div>
      )}
      <Guarded part={parts.closePlan}>
        <ClosePlan />
      </Guarded>
    </section>
  )
}
