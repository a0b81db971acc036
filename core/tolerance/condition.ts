/** What an arrangement must go on meeting when it is a little off: each condition, and the ways in which it can fail. */
import type { ScanWishKind } from '#core/record/scan-wishes.ts'
import type { PlacedPlan } from './placed-plan.ts'

/** What is hoped of every picture while it holds: both things whole, enough of the landmark shown, sharp, and the light that is on them. */
export const PICTURE_CONDITIONS = ['subject-whole', 'landmark-whole', 'landmark-shown', 'sharp'] as const
export type PictureCondition = (typeof PICTURE_CONDITIONS)[number]

/** Of the light wishes, or of the sun that falls on the things though nothing is wished of it. */
export const LIGHT_CONDITIONS = [
  'subject-light',
  'landmark-light',
  'subject-sun',
  'landmark-sun',
  'altitude',
  'sun',
  'soft',
  'moonUp',
  'hours',
] as const
export type LightCondition = (typeof LIGHT_CONDITIONS)[number]

/** The scan's demands that are conditions of their own; the light is asked wish by wish instead. */
export type DemandCondition = Exclude<ScanWishKind, 'light'>

export type ConditionKind = PictureCondition | LightCondition | DemandCondition

/** In the order in which they are told. */
export const CUT_SIDES = ['left', 'right', 'top', 'bottom'] as const
export type CutSide = (typeof CUT_SIDES)[number]
/** Cut on one side or on several, as in `cut-left-right`. */
export type Cut = `cut-${string}`

export function cutOn(sides: readonly CutSide[]): Cut {
  return `cut-${CUT_SIDES.filter((side) => sides.includes(side)).join('-')}`
}

/** The sides of a cut; null for what fails otherwise. */
export function cutSides(how: How): readonly CutSide[] | null {
  const [what, ...sides] = how.split('-')
  return what === 'cut' ? CUT_SIDES.filter((side) => sides.includes(side)) : null
}

/** How a condition fails. */
export type How =
  | 'nothing-framed'
  | Cut
  | 'behind-camera'
  | 'hidden'
  | 'ground-unknown'
  | 'not-sharp'
  | 'focus-too-near'
  | 'not-seen'
  | 'in-shade'
  | 'sun-down'
  | 'behind-ground'
  | 'too-square'
  | 'sunlit'
  | 'not-behind'
  | 'sun-too-low'
  | 'sun-too-high'
  | 'sun-in-frame'
  | 'sun-out-of-frame'
  | 'not-soft'
  | 'moon-down'
  | 'outside-hours'
  | 'too-little'
  | 'too-much'
  | 'misplaced'
  | 'no-parking'

export interface Failing {
  readonly kind: ConditionKind
  readonly how: How
}

export interface Condition {
  readonly kind: ConditionKind
  /** How it fails at a placed plan; null while it holds. */
  readonly fails: (placed: PlacedPlan) => How | null
}
