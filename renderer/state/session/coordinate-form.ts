/** The form in which the page writes coordinates; every form is read whatever is shown. */
import { type ReadonlySignal, signal } from '@preact/signals'
import { formatCoordinates, formatDecimal } from '#core/geo/coordinate-format.ts'
import type { CoordinateForm } from '#core/geo/coordinate-text.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'

const coordinateFormSignal = signal<CoordinateForm>('decimal')
export const coordinateForm: ReadonlySignal<CoordinateForm> = coordinateFormSignal

export function writePlacesAs(form: CoordinateForm): void {
  coordinateFormSignal.value = form
}

/** The place in the form chosen, or in degrees where that form has no words for it. */
export function writtenPlace(at: LatLon): string {
  return formatCoordinates(at, coordinateForm.value) ?? formatDecimal(at)
}
