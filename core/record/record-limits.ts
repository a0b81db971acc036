/** How large and how small the figures of a shoot and its spots may be: beyond, nothing can be computed or drawn that means anything. */
import { MOST_SHARE } from '#core/frame/fill.ts'

export interface RecordLimit {
  readonly least: number
  readonly most: number
}

/** Letters of a name. */
export const NAME_MOST = 10_000
/** Letters of the name of something on the map, which shows it. */
export const DRAWN_NAME_MOST = 200

export const RECORD_LIMITS = {
  /** Metres along one side of the subject: a ring on a finger, a ship with its tugs. */
  subjectSize: { least: 0.01, most: 1_000 },
  /** Metres of a landmark's height and width: a post, a mountain. */
  landmarkSize: { least: 0.01, most: 100_000 },
  deckHeight: { least: 0, most: 100_000 },
  /** Metres of a tree or a wall. */
  obstructionHeight: { least: 0.01, most: 1_000 },
  /** Coefficient k: at 1 light follows the earth round, and no line of sight ends. */
  refraction: { least: -1, most: 0.9 },
  /** Sides of a proportion. */
  cropSide: { least: 0.01, most: 1_000 },
  /** Share of the frame: a subject that is kept at its size may be far away. */
  fill: { least: 1e-9, most: MOST_SHARE },
  /** Places in the order of the shelf. */
  rank: { least: -1e12, most: 1e12 },
} as const satisfies Record<string, RecordLimit>
