/** Solids by the records they come from: built once for each state of a subject or landmark, not for each frame of a drag. */
import { keptWith } from '#core/kept-with.ts'
import type { Solid } from '#core/scene/solid.ts'
import { landmarkSolid } from '#core/scene/solid/landmark-solid.ts'
import { subjectSolid } from '#core/scene/solid/subject-solid.ts'
import type { Subject } from '#core/scene/subject.ts'

const subjects = new WeakMap<Subject, Solid>()

export function solidOfSubject(subject: Subject): Solid {
  const known = subjects.get(subject)
  if (known !== undefined) return known
  const made = subjectSolid(subject)
  subjects.set(subject, made)
  return made
}

/** By the height of the landmark's foot, metres above the ellipsoid. */
export const solidOfLandmark = keptWith(landmarkSolid)
