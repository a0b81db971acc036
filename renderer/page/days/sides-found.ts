/** The lit hours of the landmark's sides over a year, put together from the worker's updates. */
import type { FacesDayUpdate, FacesYearUpdate } from './days-job.ts'

export type DayOfSides = Pick<FacesDayUpdate, 'sunUp' | 'faces'> | null

/** Twelve months, each with mean hours a day by side; null until known. */
export type YearOfSides = readonly (readonly (number | null)[] | null)[]

export const NO_MONTHS: YearOfSides = Array.from({ length: 12 }, () => null)

export function withDay(_found: DayOfSides, update: FacesDayUpdate): DayOfSides {
  return { sunUp: update.sunUp, faces: update.faces }
}

export function withMonth(found: YearOfSides, update: FacesYearUpdate): YearOfSides {
  return found.map((hours, month) => (month === update.month ? update.hours : hours))
}
