/** Records with figures beyond their limits, as older versions let them in: brought to the nearest limit, and told. */
import { z } from 'zod'

/** One figure that was brought within its limits, by the way to it and what it is now. */
export const mendedShape = z.object({ field: z.string(), now: z.number() })
export type Mended = z.infer<typeof mendedShape>

/** The nearest place that can be is another place: coordinates are never moved. */
const PLACES: ReadonlySet<PropertyKey> = new Set(['lat', 'lon'])

/** The value itself where it fits or where something else than a figure is wrong with it: the caller's own check tells that. */
export function mendFigures(shape: z.ZodType, value: unknown): { readonly value: unknown; readonly mended: Mended[] } {
  const checked = shape.safeParse(value)
  if (checked.success) return { value, mended: [] }
  const mended: Mended[] = []
  const copy = structuredClone(value)
  for (const issue of checked.error.issues) {
    const now = limitOf(issue)
    const key = issue.path.at(-1)
    if (now === null || key === undefined || PLACES.has(key)) continue
    const holder = holderOf(copy, issue.path.slice(0, -1))
    if (holder === null) continue
    holder[key] = now
    mended.push({ field: issue.path.map(String).join('.'), now })
  }
  return mended.length === 0 ? { value, mended } : { value: copy, mended }
}

/** Null for anything but a figure beyond an end that it may still have. */
function limitOf(issue: z.core.$ZodIssue): number | null {
  if (issue.code !== 'too_small' && issue.code !== 'too_big') return null
  if (issue.origin !== 'number' && issue.origin !== 'int') return null
  if (issue.inclusive === false) return null
  return Number(issue.code === 'too_small' ? issue.minimum : issue.maximum)
}

function holderOf(value: unknown, path: readonly PropertyKey[]): Record<PropertyKey, unknown> | null {
  let at: unknown = value
  for (const key of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return null
    at = (at as Record<PropertyKey, unknown>)[key]
  }
  return typeof at === 'object' && at !== null ? (at as Record<PropertyKey, unknown>) : null
}
