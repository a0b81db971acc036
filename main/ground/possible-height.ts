/** Owns which heights ground can have at all, and what is made of a file that has others. */

/** No ground is higher or lower: Everest has 8,849 m, the Challenger Deep −10,935 m. What stands beyond marks gaps, told or not. */
const HIGHEST = 9_000
const LOWEST = -11_500

export function isPossible(height: number): boolean {
  return height <= HIGHEST && height >= LOWEST
}

/** What a file's samples were, as far as they have been read. */
export interface HeightTally {
  known: number
  /** Higher than any ground, and no mark of gaps so large that nobody could have measured it. */
  tooHigh: number
  most: number
  /** How often each of the first few of those comes. */
  readonly seen: Map<number, number>
}

export function newTally(): HeightTally {
  return { known: 0, tooHigh: 0, most: 0, seen: new Map() }
}

/** Everest in centimetres has 884,900. */
const LARGEST_MISREAD = 1_000_000
const ENOUGH_SEEN = 3
const MOST_SEEN = 16

export function tallyTooHigh(tally: HeightTally, height: number): void {
  if (!(height > HIGHEST && height <= LARGEST_MISREAD)) return
  tally.tooHigh += 1
  if (height > tally.most) tally.most = height
  const before = tally.seen.get(height)
  if (before !== undefined || tally.seen.size < MOST_SEEN) tally.seen.set(height, (before ?? 0) + 1)
}

/** Of all heights: fewer are spikes of the survey, and are gaps. */
const TOO_MANY = 0.01

/** Null when the heights can be metres. */
export function otherUnit({ known, tooHigh, most, seen }: HeightTally, fileName: string): string | null {
  if (seen.size < ENOUGH_SEEN) return null
  // The one that comes most often may be a mark of gaps that the file does not tell.
  const unmarked = tooHigh - Math.max(...seen.values())
  if (unmarked < TOO_MANY * (known + unmarked)) return null
  const figure = Math.round(most).toLocaleString('en')
  return `${fileName} holds heights of up to ${figure}, where no ground is higher than 9,000 m: they look like centimetres or feet. Convert them to metres, for instance by gdal_calc.py, or write the unit into the file, and add it again.`
}
