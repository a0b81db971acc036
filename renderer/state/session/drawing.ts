/** A line or an outline while it is being drawn: points set one by one, taken back, ended or refused. Pure; the hand is elsewhere. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import {
  type DrawnShape,
  type DrawnSort,
  MOST_DRAWN_POINTS,
  type ShapeFault,
  shapeFault,
  withoutRepeats,
} from '#core/record/drawn-ground.ts'
import type { DrawnForm } from '#core/record/stopping-ground.ts'

export interface Drawing extends DrawnShape {
  readonly sort: DrawnSort
  /** Why it could not be ended as it is; null again with the next change. */
  readonly refusal: ShapeFault | null
}

export function beginDrawing(sort: DrawnSort, form: DrawnForm): Drawing {
  return { sort, form, points: [], refusal: null }
}

/** With one more point; a point in the very place of the last adds nothing. */
export function withPointSet(drawing: Drawing, at: LatLon): Drawing {
  if (drawing.points.length >= MOST_DRAWN_POINTS) return { ...drawing, refusal: 'too-many' }
  const last = drawing.points.at(-1)
  const again = last !== undefined && last.lat === at.lat && last.lon === at.lon
  return { ...drawing, points: again ? drawing.points : [...drawing.points, at], refusal: null }
}

/** Without its last point; with none left it waits for the first again. */
export function withPointTakenBack(drawing: Drawing): Drawing {
  return { ...drawing, points: drawing.points.slice(0, -1), refusal: null }
}

/** The shape drawn; or the drawing that goes on, with what is wrong. */
export function endDrawing(
  drawing: Drawing,
): { readonly ended: true; readonly shape: DrawnShape } | { readonly ended: false; readonly drawing: Drawing } {
  const { form, points } = drawing
  const shape = { form, points: withoutRepeats({ form, points }) }
  const refusal = shapeFault(shape)
  return refusal === null ? { ended: true, shape } : { ended: false, drawing: { ...drawing, refusal } }
}
