/** What the line of each answer says beside its question: a few words at most, for they stand in a narrow column. */
import type { LightSide } from '#core/light/direction.ts'
import type { Problem } from '#core/plan/problem.ts'
import type { Move } from '#core/tolerance/moves.ts'

/** One or two words for what stands in the way; null for what is only a remark in the answer itself. */
const wrong: Readonly<Record<Problem, string | null>> = {
  'on-top-of-each-other': 'same place',
  'inside-subject': 'inside it',
  'no-landmark': 'no landmark',
  'landmark-behind-camera': 'behind you',
  'landmark-partly-behind-camera': 'partly behind',
  'landmark-nearer-than-subject': 'in front',
  'fill-cannot-be': 'no fit',
  'empty-bag': 'no lens',
  'no-lens-reaches': 'out of reach',
  'focal-length-outside-lens': 'out of reach',
  'focus-too-near': 'too close',
  'aperture-outside-lens': 'not on lens',
  'not-sharp-end-to-end': 'not sharp',
  diffraction: 'diffraction',
  'landmark-level-assumed': null,
  'aim-cannot-be': 'no aim',
  'proportion-not-held': 'not kept',
}

/** Where the light comes from as the camera sees it, in as few words as go. */
const from: Readonly<Record<LightSide, (hand: string | null) => string>> = {
  front: (hand) => (hand === null ? 'from the front' : `from front ${hand}`),
  side: (hand) => (hand === null ? 'from the side' : `from the ${hand}`),
  behind: (hand) => (hand === null ? 'backlit' : `from back ${hand}`),
  above: () => 'from above',
}

const ways: Readonly<Record<Move, string>> = {
  'subject-nearer': 'subject nearer',
  'subject-farther': 'subject farther',
  'subject-left': 'subject to the left',
  'subject-right': 'subject to the right',
  'subject-counter-clockwise': 'subject turned',
  'subject-clockwise': 'subject turned',
  'camera-nearer': 'camera nearer',
  'camera-farther': 'camera farther',
  'camera-left': 'camera to the left',
  'camera-right': 'camera to the right',
  'lens-lower': 'lens lower',
  'lens-higher': 'lens higher',
  earlier: 'earlier',
  later: 'later',
}

export const glanceWords = {
  wrong,
  from,
  ways,
  cut: 'cut off',
  depth: (near: string, far: string) => `${near}–${far}`,
  beyond: (near: string) => `from ${near}`,
  now: (light: string) => `now ${light}`,
  nowDown: 'sun down now',
  never: 'no light',
  neverToday: 'not that day',
  notInFrame: 'not in frame',
  shows: (share: string) => `${share} shows`,
  noLandmark: 'no landmark',
  hidden: 'hidden',
  restHidden: 'the rest is hidden',
  hiddenBy: (away: string) => `hidden by the ground ${away} out`,
  levelGround: 'no elevation data',
  waiting: 'looking …',
  working: 'working …',
  loose: 'plenty',
  fails: 'fails now',
  nothingHeld: 'nothing to check',
  apart: (bearing: string) => `toward ${bearing} true`,
  walk: (minutes: string) => `${minutes} min walk`,
  parked: 'parking noted',
  notNoted: 'not noted',
  hazards: (count: number) => `${count} hazards`,
  unknown: '–',
} as const
