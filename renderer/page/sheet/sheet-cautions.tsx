/** Hazards and cautions: what somebody wrote first, in their own words, then the usual cautions; whose decision it is last. */
import { cautionsOf } from '#renderer/text/hazard-text.ts'
import { lightCautions } from '#renderer/text/light-text.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { spotWords } from '#renderer/words/en-spot.ts'
import { SheetPart } from './sheet-part.tsx'
import type { SheetProps } from './sheet-props.ts'

export function SheetCautions({ plan, assessment }: Pick<SheetProps, 'plan' | 'assessment'>) {
  const { hazards, hazardNote } = plan.spot
  const own = hazardNote.trim()
  const { cautions } = spotWords
  return (
    <SheetPart title={sheetWords.hazards} name="cautions">
      {own === '' ? null : (
        <p class="sheet-own-hazards">
          {sheetWords.ownHazards}: {own}
        </p>
      )}
      {own === '' && hazards.length === 0 ? <p>{sheetWords.noHazards}</p> : null}
      <ul>
        {[
          ...lightCautions(assessment.light, assessment.focalLength),
          ...cautionsOf(hazards),
          cautions.ground,
          cautions.weather,
          cautions.sun,
          cautions.drones,
        ].map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <p class="sheet-always">{cautions.always}</p>
    </SheetPart>
  )
}
