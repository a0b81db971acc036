/** Words of the ground on the map: what is shown of it, how it was found, and the map drawn from elevation data. */

/** What the legend says of one way of showing the ground. */
export interface LegendWords {
  readonly clear: string
  /** Null when the other words say it. */
  readonly veiled: string
}

export const groundMapWords = {
  show: 'Show on the map',
  choices: {
    none: 'Nothing',
    landmark: 'Where the landmark is visible',
    standpoint: 'What is visible from the standpoint',
    shade: 'The hills’ shadow',
  },
  share: 'Of its height at least',
  seen: 'Look for',
  seenAt: { ground: 'the bare ground', subject: 'something as high as the subject' },
  byGround: 'By the ground alone: elevation data leaves out trees and buildings, or has them only in part.',
  lit: 'Relief lit',
  litFrom: { sun: 'by the sun at the planned time', 'north-west': 'from the north-west' },
  tooLow: 'The sun is below 3° or down: the relief is lit from the north-west.',
  anyShare: 'anything',
  wholeShare: 'all',
  legend: 'What the shading on the map means',
  landmark: (share: string, name: string): LegendWords => ({
    clear: `${share} of ${name} visible`,
    veiled: 'less, or nothing',
  }),
  atLeast: (share: string) => `at least ${share}`,
  theLandmark: 'the landmark',
  atMiddle: (name: string) => `${name}’s middle`,
  top: (name: string) => `${name}’s top`,
  summit: (top: string): LegendWords => ({ clear: `${top} visible`, veiled: 'hidden' }),
  standpoint: { clear: 'visible from the lens', veiled: 'hidden' } satisfies LegendWords,
  standpointFor: (height: string): LegendWords => ({
    clear: `something ${height} high is visible from the lens, at least in part`,
    veiled: 'hidden',
  }),
  shade: (clock: string): LegendWords => ({
    clear: 'the sun reaches the ground, unless clouds or trees keep it off',
    veiled: `in the hills’ shadow at ${clock}`,
  }),
  unknown: 'unknown',
  /** "grid 20 m, lens 1.1 m above the ground, final" */
  lensUp: (height: string) => `lens ${height} above the ground`,
  cells: (size: string) => `grid ${size}`,
  exact: 'final',
  shadeDone: 'edges accurate to one grid cell',
  preview: 'preview while it moves',
  settling: (percent: string) => `preview; the final one is ${percent} done`,
  working: (percent: string) => `working, ${percent} done`,
  failed: (message: string) => `It could not be worked out: ${message}`,
  none: {
    'no-elevations': 'No elevation data here. Add some in Settings.',
    'no-landmark': 'This spot has no landmark. Choose one to see where it is visible.',
    outside: 'It is outside your elevation data.',
    'sun-down': 'The sun is down: all the ground is in shade.',
  },
  reading: 'Loading elevation data.',
  elevationsFrom: (name: string) => `Ground: ${name}`,
  source: 'Drawn from elevation data',
  sourceHint:
    'Slopes, contours and shores, drawn by Standpoint from the elevation data around the spot. Needs no network where you have elevation files.',
} as const
