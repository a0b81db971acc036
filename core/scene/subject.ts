/** The subject: what is brought along and photographed, a box with a heading, and the presets by kind. */

export const SUBJECT_KINDS = [
  'bicycle',
  'cargo-bicycle',
  'motorcycle',
  'car',
  'van',
  'person',
  'couple',
  'horse',
  'boat-on-trailer',
  'other',
] as const
export type SubjectKind = (typeof SUBJECT_KINDS)[number]

/** A named place along the subject that one may focus on. */
export interface SubjectFeature {
  readonly name: string
  /** Metres behind the front end, 0..length. */
  readonly behindFront: number
}

export interface Subject {
  readonly kind: SubjectKind
  readonly name: string
  /** Metres, front to back; greater than 0. */
  readonly length: number
  /** Metres, side to side; greater than 0. */
  readonly width: number
  /** Metres, ground to top; greater than 0. */
  readonly height: number
  readonly features: readonly SubjectFeature[]
}

/** Ordinary sizes by kind, metres (common practice, no source). */
export const SUBJECT_PRESETS: Readonly<Record<SubjectKind, Pick<Subject, 'length' | 'width' | 'height'>>> = {
  bicycle: { length: 1.8, width: 0.6, height: 1.05 },
  'cargo-bicycle': { length: 2.5, width: 0.65, height: 1.2 },
  motorcycle: { length: 2.15, width: 0.8, height: 1.2 },
  car: { length: 4.4, width: 1.8, height: 1.45 },
  van: { length: 5.4, width: 2, height: 2.4 },
  person: { length: 0.3, width: 0.5, height: 1.75 },
  couple: { length: 0.4, width: 1.1, height: 1.8 },
  horse: { length: 2.4, width: 0.6, height: 2.1 },
  'boat-on-trailer': { length: 7.5, width: 2.4, height: 2.6 },
  other: { length: 1, width: 1, height: 1 },
}
