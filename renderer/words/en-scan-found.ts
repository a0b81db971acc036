/** Words of what a scan found: the score along the ground, the best arrangements, and why there are none. */
import type { ScanLimit } from '#core/scan/scan-found.ts'

export const scanFoundWords = {
  found: (count: number, good: string, places: string) =>
    count === 1 ? `1 of ${places} meets every must.` : `${good} of ${places} meet every must.`,
  scoreAlong: 'Score along the line, first pass',
  legendNone: 'misses a must',
  best: 'The best',
  name: (number: number, ground: string) => (ground === '' ? `Best ${number}` : `Best ${number}, ${ground}`),
  mark: (number: number, score: string) => `Best ${number}, score ${score} of 100`,
  score: (score: string) => `score ${score} of 100`,
  stops: (along: string | null, heading: string) =>
    `${along === null ? '' : `${along} along the line, `}facing ${heading}`,
  stands: (distance: string, height: string) => `camera ${distance} away, lens ${height} high`,
  window: (day: string, span: string) => `${day}, ${span}`,
  at: (day: string, clock: string) => `${day}, ${clock}`,
  tryIt: 'Try on the board',
  trying: 'On the board',
  keep: 'Save to the shelf',
  keepNamed: (name: string) => `Save to the shelf: “${name}”`,
  kept: 'On the shelf',
  howMet: 'What is met',
  caution:
    'A scan goes by the elevation data loaded and by what you have drawn, nothing more. Look at the place before anybody stands there: traffic, drops, water, and whose ground it is.',
  met: { fully: 'fully', well: 'met', nearly: 'nearly', partly: 'partly', not: 'not' },
  must: 'must',
  polished: 'fine-tuned between the tested positions',
  values: {
    clear: (share: string) => `${share} clear of the edge`,
    cut: (share: string) => `cut by ${share}`,
    apart: (share: string) => `${share} apart`,
    overlap: (share: string) => `overlap by ${share}`,
    offCentre: (share: string) => `${share} off its middle`,
    seen: (share: string) => `${share} visible`,
    offFront: (angle: string) => `${angle} off its front`,
    light: (count: number, of: number) => `${count} of ${of} conditions`,
    unknown: 'unknown',
  },
  none: {
    title: 'No position meets every must',
    looked: (count: string, alone: boolean) =>
      `How much each rules out of the ${count} combinations tested${alone ? ' (in brackets: by itself)' : ''}:`,
    excludes: (share: string) => share,
    alone: (share: string) => `(${share} alone)`,
    under: (share: string) => `under ${share}`,
    over: (share: string) => `over ${share}`,
    limits: {
      'keep-out': 'Keep-outs',
      lens: 'No lens in the bag gives it',
      'closest-focus': 'Closer than the lens can focus',
      framing: 'Out of the frame',
      hours: 'Dates and hours',
    } satisfies Record<ScanLimit, string>,
    smallest: 'The smallest changes found that would help',
    noSingle: 'No single change helps. Loosen several, or draw more places to stop.',
    with: (change: string, places: string) => `${change}: ${places} or more`,
    apply: 'Apply and scan again',
    applyNamed: (change: string) => `Apply and scan again: ${change}`,
    edit: (name: string) => `Loosen: ${name}`,
    lensLong: (then: string, now: string) => `with ${then} instead of ${now} at the long end`,
    lensShort: (then: string, now: string) => `with ${then} instead of ${now} at the short end`,
    lensOnly: 'This needs a lens that is not in the bag.',
    lensHeight: (end: 'least' | 'most', then: string, now: string) =>
      `with the lens ${end === 'least' ? 'down to' : 'up to'} ${then} instead of ${now}`,
    band: (name: string, end: 'least' | 'most', then: string, now: string) =>
      `${name}: ${end === 'least' ? 'from' : 'to'} ${then} instead of ${now}`,
    figure: (name: string, then: string, now: string) => `${name}: ${then} instead of ${now}`,
    dropped: (name: string) => `${name}: prefer, not must`,
  },
} as const
