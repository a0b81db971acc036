/** Who is to be named under a map that we painted ourselves: the makers of what it really shows, and of nothing else. */
import type { WindowPart } from '#app/contract/ground.ts'
import { groundMapWords } from '#renderer/words/en-ground-map.ts'

const SKETCH_ATTRIBUTION = 'Orlavay: an island of our own invention'
const COAST_ATTRIBUTION = 'Coast and borders: Natural Earth (public domain)'

/** Id of the demo island's elevations, which the sketch map has a finer drawing of. */
export const DEMO_ELEVATIONS = 'demo'

/** A file of the user's own has no maker we know of: its name stands for it. */
function owedFor({ id, name, attribution }: WindowPart): string {
  if (id === DEMO_ELEVATIONS) return SKETCH_ATTRIBUTION
  return attribution === '' ? groundMapWords.elevationsFrom(name) : attribution
}

/** Those of the elevations that something is drawn from, each once. */
export function elevationCredits(elevations: readonly WindowPart[]): string[] {
  return [...new Set(elevations.map(owedFor))]
}

interface Shown {
  /** Any of the island. */
  readonly island: boolean
  /** The ground is shaded from these. */
  readonly elevations: readonly WindowPart[]
}

export function paintedCredits({ island, elevations }: Shown): string[] {
  const own = island ? [SKETCH_ATTRIBUTION] : []
  return [...new Set([...elevationCredits(elevations), ...own, COAST_ATTRIBUTION])]
}
