/** Where a still map looks: at all of a plan, with room around. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { Plan } from '#core/plan/plan.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { placesFitted } from '#renderer/view/drawing/fit.ts'
import { type PlanView, TILE_SIZE, mercatorView } from '#renderer/view/drawing/plan-view.ts'

/** Nearest zoom of a still map. */
const CLOSEST = 19

interface Still {
  readonly view: PlanView
  readonly centre: LatLon
  readonly zoom: number
}

/** Where the map looks: at every place of the plan, with room around. */
export function stillView(plan: Plan, width: number, height: number): Still | null {
  const { spot, landmark } = plan
  const places = [
    spot.stop.at,
    spot.standpoint.at,
    ...(landmark === null ? [] : landmarkPoints(landmark)),
    ...(spot.access.parking === null ? [] : [spot.access.parking]),
  ]
  const room = Math.min(width, height) * 0.12
  const window = { width, height, left: room, right: room, top: room, bottom: room }
  const fitted = placesFitted(places, window, CLOSEST, 0.25)
  if (fitted === null) return null
  const size = TILE_SIZE * 2 ** fitted.zoom
  const middle = mercatorView({ zoom: fitted.zoom, originX: 0, originY: 0, middleLon: fitted.centre.lon, box: NOWHERE })
  const at = middle.toPoint(fitted.centre)
  const look = {
    zoom: fitted.zoom,
    originX: at.x - width / 2,
    originY: Math.max(-size, at.y - height / 2),
    middleLon: fitted.centre.lon,
    box: { left: 0, top: 0, right: width, bottom: height },
  }
  return { view: mercatorView(look), centre: fitted.centre, zoom: fitted.zoom }
}

const NOWHERE = { left: 0, top: 0, right: 0, bottom: 0 }
