/** The map on the board: the base, the plan drawn over it, its controls, and the close plan in its corner. */
import { render } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import { ClosePlan } from '#renderer/view/close-plan/close-plan.tsx'
import { mapWords } from '#renderer/words/en-map.ts'
import { type LiveMap, startMap } from './live-map.ts'
import { MapControls } from './map-controls.tsx'
import { MapFaults, MapGuarded } from '#renderer/part/map-guarded.tsx'
import { Things } from '#renderer/view/overlay/plan-overlay.tsx'

export function BoardMap() {
  const holder = useRef<HTMLDivElement>(null)
  const [live, setLive] = useState<LiveMap | null>(null)
  useLayoutEffect(() => {
    if (holder.current === null) return undefined
    const map = startMap(holder.current)
    setLive(map)
    // Leaflet owns the pane's place in the page, so the plan is a drawing of its own within it.
    render(
      <MapGuarded>
        <Things pointOf={map.pointOf} />
      </MapGuarded>,
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
        <MapControls zoomBy={live.zoomBy} placeInMiddle={live.placeInMiddle} retryTiles={live.retryTiles} />
      )}
      <MapGuarded>
        <ClosePlan />
      </MapGuarded>
      <MapFaults />
    </section>
  )
}
