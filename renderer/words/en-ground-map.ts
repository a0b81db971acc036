/** Words of the ground on the map: what is shown of it, how it was found, and the map drawn from the elevations. */

/** What the legend says of one way of showing the ground. */
export interface LegendWords {
  readonly clear: string
  /** Null when the other words say it. */
  readonly veiled: string
}

export const groundMapWords = {
  show: 'Show on the map',
  choices: {
    none: 'Nothing more',
    landmark: 'Where the landmark shows',
    standpoint: 'What the standpoint sees',
    shade: 'The hills’ shadow',
  },
  share: 'Of its height at least',
  seen: 'Look for',
  seenAt: { ground: 'the bare ground', subject: 'something as high as the subject' },
  byGround: 'By the ground alone: trees and buildings are not in the elevations, or only in part.',
  lit: 'Relief lit',
  litFrom: { sun: 'by the sun of the chosen time', 'north-west': 'from the north-west' },
  tooLow: 'The sun stands below 3° or is down: the relief is lit from the north-west.',
  anyShare: 'anything',
  wholeShare: 'all',
  legend: 'What the veil on the map says',
  landmark: (share: string, name: string): LegendWords => ({
    clear: `${share} of ${name} shows`,
    veiled: 'less, or nothing',
  }),
  atLeast: (share: string) => `at least ${share}`,
  theLandmark: 'the landmark',
  atMiddle: (name: string) => `${name}’s middle`,
  top: (name: string) => `${name}’s top`,
  summit: (top: string): LegendWords => ({ clear: `${top} shows`, veiled: 'hidden' }),
  standpoint: { clear: 'seen from the lens', veiled: 'hidden' } satisfies LegendWords,
  standpointFor: (height: string): LegendWords => ({
    clear: `what stands ${height} high is seen from the lens, in part at least`,
    veiled: 'hidden',
  }),
  shade: (clock: string): LegendWords => ({
    clear: 'the sun reaches the ground, unless clouds or trees keep it off',
    veiled: `in the hills’ shadow at ${clock}`,
  }),
  unknown: 'unknown',
  /** "at 20 m cells, lens 1.1 m above the ground, exact" */
  lensUp: (height: string) => `lens ${height} above the ground`,
  cells: (size: string) => `at ${size} cells`,
  exact: 'exact',
  shadeDone: 'its edges true to a cell',
  preview: 'preview while it moves',
  settling: (percent: string) => `preview; the exact one is ${percent} done`,
  working: (percent: string) => `being worked out, ${percent} done`,
  failed: (message: string) => `It could not be worked out: ${message}`,
  none: {
    'no-elevations': 'No elevations are known here. Settings tell where they come from.',
    'no-landmark': 'This spot looks at no landmark. Choose one to see where it shows.',
    outside: 'It lies beyond the elevations at hand.',
    'sun-down': 'The sun is down: all the ground is in the shade.',
  },
  reading: 'The elevations are being read.',
  elevationsFrom: (name: string) => `Ground: ${name}`,
  source: 'Drawn from the elevations',
  sourceHint:
    'Slopes, contours and shores, drawn by Standpoint from the elevations around the spot. Needs no network where elevation files are at hand.',
} as const
