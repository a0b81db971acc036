/** The last answer of a question asked of one place and instant, kept: while a camera goes about its subject, the sky stays the same frame after frame. */
import type { LatLon } from '#core/geo/lat-lon.ts'

/** Keeps one answer only, so it costs next to nothing where every question differs. */
export function lastLook<T>(look: (at: LatLon, instant: number) => T): (at: LatLon, instant: number) => T {
  let last: { readonly lat: number; readonly lon: number; readonly instant: number; readonly answer: T } | null = null
  return (at, instant) => {
    const { lat, lon } = at
    if (last !== null && last.lat === lat && last.lon === lon && last.instant === instant) return last.answer
    const answer = look(at, instant)
    last = { lat, lon, instant, answer }
    return answer
  }
}

/** The same for what is alike everywhere. */
export function lastInstant<T>(look: (instant: number) => T): (instant: number) => T {
  let last: { readonly instant: number; readonly answer: T } | null = null
  return (instant) => {
    if (last?.instant !== instant) last = { instant, answer: look(instant) }
    return last.answer
  }
}
