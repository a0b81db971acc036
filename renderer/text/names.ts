/** What things are called on the page: the user's own name, else a plain word for the kind. */
import type { Lens } from '#core/optics/lens.ts'
import { isPrime } from '#core/optics/lens.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import type { Subject } from '#core/scene/subject.ts'
import { rounded } from './figure.ts'
import { words } from '#renderer/words/en.ts'

export function shootName(shoot: Pick<Shoot, 'name'>): string {
  return shoot.name.trim() === '' ? words.board.untitledShoot : shoot.name
}

export function spotName(spot: Pick<Spot, 'name'>): string {
  return spot.name.trim() === '' ? words.board.untitledSpot : spot.name
}

export function subjectName(subject: Pick<Subject, 'name' | 'kind'>): string {
  return subject.name.trim() === '' ? words.shoot.subjectKinds[subject.kind] : subject.name
}

export function landmarkName(landmark: Pick<Landmark, 'name'> | null): string {
  if (landmark === null || landmark.name.trim() === '') return words.shoot.unnamedLandmark
  return landmark.name
}

/** 85 mm, 24–70 mm. */
export function focalRange(lens: Lens): string {
  const [short, long] = [rounded(lens.focalMin, 1), rounded(lens.focalMax, 1)]
  return `${isPrime(lens) ? short : `${short}–${long}`} mm`
}

/** What a lens is, in the trade's way: 24–70 mm f/2.8, 70–200 mm f/4–5.6. */
export function lensRange(lens: Lens): string {
  const [wide, narrow] = [rounded(lens.widestAtMin, 1), rounded(lens.widestAtMax, 1)]
  return `${focalRange(lens)} f/${isPrime(lens) || wide === narrow ? wide : `${wide}–${narrow}`}`
}

export function lensName(lens: Lens): string {
  return lens.name.trim() === '' ? lensRange(lens) : lens.name
}

/** The lens of a bag that an assessment took; null when it took none. */
export function lensTaken(lenses: readonly Lens[], taken: { readonly lensId: string } | null): string | null {
  const lens = lenses.find(({ id }) => id === taken?.lensId)
  return lens === undefined ? null : lensName(lens)
}

export function cropName(crop: { readonly wide: number; readonly high: number }): string {
  return `${rounded(crop.wide, 2)}:${rounded(crop.high, 2)}`
}
