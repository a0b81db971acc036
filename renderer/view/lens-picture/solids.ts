/** Solids by the records they come from: built once for each state of a subject or landmark, not for each frame of a drag. */
import { type PlacedParts, convexParts } from '#core/scene/convex-parts.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import type { Solid } from '#core/scene/solid.ts'
import { type PlacedSolid, landmarkSolid } from '#core/scene/solid/landmark-solid.ts'
import { subjectSolid } from '#core/scene/solid/subject-solid.ts'
import type { Subject } from '#core/scene/subject.ts'

const subjects = new WeakMap<Subject, Solid>()
const castParts = new WeakMap<Landmark, { readonly base: number; readonly placed: PlacedParts | null }>()
const landmarks = new WeakMap<Landmark, { readonly base: number; readonly placed: PlacedSolid | null }>()

export function solidOfSubject(subject: Subject): Solid {
  const known = subjects.get(subject)
  if (known !== undefined) return known
  const made = subjectSolid(subject)
  subjects.set(subject, made)
  return made
}

export function solidOfLandmark(landmark: Landmark, base: number): PlacedSolid | null {
  const known = landmarks.get(landmark)
  if (known !== undefined && known.base === base) return known.placed
  const placed = landmarkSolid(landmark, base)
  landmarks.set(landmark, { base, placed })
  return placed
}

/** The convex parts that cast the landmark's shadow. */
export function partsOfLandmark(landmark: Landmark, base: number): PlacedParts | null {
  const known = castParts.get(landmark)
  if (known !== undefined && known.base === base) return known.placed
  const placed = convexParts(landmark, base)
  castParts.set(landmark, { base, placed })
  return placed
}
