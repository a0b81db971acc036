/** Hazards in words: what was seen at a spot, the user's own words on it first, and the cautions that go with each. */
import { HAZARDS, type Hazard, type Spot } from '#core/record/spot.ts'
import { spotWords } from '#renderer/words/en-spot.ts'

const { cautions } = spotWords

/** Cautions that hold everywhere; the last leaves the decision where it belongs. */
export const CAUTIONS_ALWAYS: readonly string[] = [cautions.weather, cautions.sun, cautions.drones, cautions.always]

type Seen = Pick<Spot, 'hazards' | 'hazardNote'>

/** What the user wrote stands by itself, whatever kinds are ticked. */
function ownWords({ hazardNote }: Seen): string[] {
  const note = hazardNote.trim()
  return note === '' ? [] : [note]
}

/** The cautions for kinds of hazard, in the fixed order. */
export function cautionsOf(hazards: readonly Hazard[]): string[] {
  return HAZARDS.filter((hazard) => hazards.includes(hazard)).map((hazard) => cautions[hazard])
}

/** Everything that is known of a spot's hazards, one sentence each; empty when nobody wrote one down. */
export function hazardSentences(spot: Seen): string[] {
  return [...ownWords(spot), ...cautionsOf(spot.hazards)]
}

/** The hazards seen, a word or two each: the kinds, then the user's own words. */
export function hazardsSeen(spot: Seen): string[] {
  const kinds = HAZARDS.filter((hazard) => spot.hazards.includes(hazard))
  const note = ownWords(spot)
  // What "other" stands for says more than the word.
  const named = note.length > 0 ? kinds.filter((kind) => kind !== 'other') : kinds
  return [...named.map((kind) => spotWords.hazards[kind]), ...note]
}
