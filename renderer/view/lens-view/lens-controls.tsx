/** Beside the frame: how the camera is held, the guides, and the aim in figures. */
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { wrapBearing } from '#core/units/angle.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { FigureField } from '#renderer/part/figure-field.tsx'
import { Segment } from '#renderer/part/segment.tsx'
import { lensViewWords } from '#renderer/words/en-lens-view.ts'
import { centre, place, turnCamera } from './compose.ts'
import { type LensAim, placementForAim } from './composition.ts'
import { cropGuide, thirds, showThirds, showCrop } from './guide-choice.ts'
import { guideCropName } from './guides.tsx'
import { subjectNameIn } from '#renderer/view/lens-picture/picture-text.ts'

export function LensControls({ plan, assessment }: { readonly plan: Plan; readonly assessment: Assessment }) {
  return (
    <div class="lens-controls">
      <Segment
        label={lensViewWords.held}
        value={plan.spot.shot.orientation}
        options={[
          ['lying', lensViewWords.lying],
          ['upright', lensViewWords.upright],
        ]}
        onChoose={turnCamera}
      />
      <button
        type="button"
        class="button button-small"
        aria-pressed={thirds.value}
        onClick={() => showThirds(!thirds.value)}
      >
        {lensViewWords.thirds}
      </button>
      <CropChoice plan={plan} />
      <button type="button" class="button button-small" onClick={centre}>
        {lensViewWords.centre}
      </button>
      <AimFields plan={plan} assessment={assessment} />
    </div>
  )
}

function CropChoice({ plan }: { readonly plan: Plan }) {
  const { crops } = plan.shoot
  const chosen = cropGuide.value
  const options = crops.map((crop) => [guideCropName(crop), guideCropName(crop)] as const)
  const known = chosen !== null && crops.some((crop) => guideCropName(crop) === guideCropName(chosen))
  return (
    <Choice
      label={lensViewWords.crop}
      hideLabel
      value={known ? guideCropName(chosen) : ''}
      options={[['', lensViewWords.wholeFrame], ...options]}
      onChoose={(name) => {
        showCrop(crops.find((crop) => guideCropName(crop) === name) ?? null)
      }}
    />
  )
}

/** The aim typed instead of dragged. The drag keeps the subject's place in the frame; so does this: it looks for that place. */
function AimFields({ plan, assessment }: { readonly plan: Plan; readonly assessment: Assessment }) {
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
    <div class="lens-aim" role="group" aria-label={lensViewWords.aim}>
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
