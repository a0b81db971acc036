/** Words of what a scan found: the score along the ground, the best arrangements, and why there are none. */
import type { ScanLimit } from '#core/scan/scan-found.ts'

export const scanFoundWords = {
  found: (count: number, good: string, places: string) =>
    count === 1 ? `1 of ${places} meets every must.` : `${good} of ${places} meet every must.`,
  scoreAlong: 'Score along the ground, before refining',
  legendNone: 'a must fails',
  best: 'The best',
  name: (number: number, ground: string) => (ground === '' ? `Best ${number}` : `Best ${number}, ${ground}`),
  mark: (number: number, score: string) => `Best ${number}, score ${score}`,
  score: (score: string) => `score ${score}`,
  stands: (distance: string, height: string) => `camera ${distance} off, lens ${height} up`,
  window: (day: string, span: string) => `${day}, ${span}`,
  at: (day: string, clock: string) => `${day}, ${clock}`,
  tryIt: 'Try on the board',
  trying: 'On the board',
  keep: 'Keep',
  keepNamed: (name: string) => `Keep “${name}” on the shelf`,
  kept: 'On the shelf',
  howMet: 'How it is met',
  caution:
    'A scan knows the elevations at hand and what is drawn, nothing more. Look at the place before anybody stands there: traffic, drops, water, and whose ground it is.',
  met: { fully: 'fully', well: 'met', nearly: 'nearly', partly: 'partly', not: 'not' },
  must: 'must',
  polished: 'refined between the places looked at',
  values: {
    clear: (share: string) => `${share} clear of the edge`,
    cut: (share: string) => `cut by ${share}`,
    apart: (share: string) => `${share} apart`,
    overlap: (share: string) => `overlap by ${share}`,
    offCentre: (share: string) => `${share} off its middle`,
    seen: (share: string) => `${share} seen`,
    offFront: (angle: string) => `${angle} off its front`,
    light: (count: number, of: number) => `${count} of ${of} wishes`,
    unknown: 'cannot be told',
  },
  none: {
    title: 'No place meets every must',
    looked: (count: string, alone: boolean) =>
      `What each rules out of the ${count} combinations looked at${alone ? '; in brackets, what it alone rules out' : ''}:`,
    excludes: (share: string) => share,
    alone: (share: string) => `(${share} alone)`,
    under: (share: string) => `under ${share}`,
    over: (share: string) => `over ${share}`,
    limits: {
      'keep-out': 'Keep-outs',
      lens: 'No lens in the bag gives it',
      'closest-focus': 'Nearer than the lens focuses',
      framing: 'Out of the frame',
      hours: 'Days and hours',
    } satisfies Record<ScanLimit, string>,
    smallest: 'The smallest changes found that would help',
    noSingle: 'No change of a single thing helps. Relax several, or draw more ground.',
    with: (change: string, places: string) => `${change}: ${places} or more`,
    apply: 'Apply and scan again',
    applyNamed: (change: string) => `Apply and scan again: ${change}`,
    edit: (name: string) => `Relax the wish: ${name}`,
    lensLong: (then: string, now: string) => `with ${then} instead of ${now} at the long end`,
    lensShort: (then: string, now: string) => `with ${then} instead of ${now} at the short end`,
    lensOnly: 'Another lens has to come into the bag for it.',
    lensHeight: (end: 'least' | 'most', then: string, now: string) =>
      `with the lens ${end === 'least' ? 'down to' : 'up to'} ${then} instead of ${now}`,
    band: (name: string, end: 'least' | 'most', then: string, now: string) =>
      `${name}: ${end === 'least' ? 'from' : 'to'} ${then} instead of ${now}`,
    figure: (name: string, then: string, now: string) => `${name}: ${then} instead of ${now}`,
    dropped: (name: string) => `${name} as a wish, not a must`,
  },
} as const
