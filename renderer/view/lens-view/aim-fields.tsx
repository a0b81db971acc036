/** Where the camera is aimed, in figures. */
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { wrapBearing } from '#core/units/angle.ts'
import { FigureField } from '#renderer/part/figure-field.tsx'
import { lensViewWords } from '#renderer/words/en-lens-view.ts'
import { place } from './compose.ts'
import { type LensAim, placementForAim } from './composition.ts'
import { subjectNameIn } from '#renderer/view/lens-picture/picture-text.ts'

/** The aim typed instead of dragged. The drag keeps the subject's place in the frame; so does this: it looks for that place. */
export function AimFields({ plan, assessment }: { readonly plan: Plan; readonly assessment: Assessment }) {
  const { view } = assessment
  if (view === null) return null
  const refuse = (aim: LensAim): string | null =>
    placementForAim(plan, aim) === null ? lensViewWords.noSuchAim(subjectNameIn(plan)) : null
  const take = (aim: LensAim): void => {
    const placement = placementForAim(plan, aim)
    if (placement !== null) place(placement, lensViewWords.changeAim)
  }
  const turned = (bearing: number): LensAim => ({ bearing: wrapBearing(bearing), pitch: view.pitch })
  const tilted = (pitch: number): LensAim => ({ bearing: view.bearing, pitch })
  return (
    <div class="field-row" role="group" aria-label={lensViewWords.aim}>
      <FigureField
        label={lensViewWords.bearing}
        value={view.bearing}
        decimals={1}
        unit={lensViewWords.degree}
        limits={{ least: -360, most: 360 }}
        refuse={(value) => refuse(turned(value))}
        onTake={(value) => take(turned(value))}
      />
      <FigureField
        label={lensViewWords.pitch}
        value={view.pitch}
        decimals={1}
        unit={lensViewWords.degree}
        limits={{ least: -90, most: 90 }}
        refuse={(value) => refuse(tilted(value))}
        onTake={(value) => take(tilted(value))}
      />
    </div>
  )
}
