/** The usual cautions that go with the hazards seen at a spot. */
import { HAZARDS, type Hazard } from '#core/record/spot.ts'
import { words } from '#renderer/words/en.ts'

/** The cautions for the hazards seen, then those that hold everywhere; the last leaves the decision where it belongs. */
export function cautionsFor(hazards: readonly Hazard[]): string[] {
  const { cautions } = words.spot
  const seen = HAZARDS.filter((hazard) => hazards.includes(hazard)).map((hazard) => cautions[hazard])
  return [...seen, cautions.weather, cautions.sun, cautions.drones, cautions.always]
}
