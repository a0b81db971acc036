/** What to set on the camera, as rows of the sheet. */
import type { Crop } from '#core/frame/crop.ts'
import type { Framing } from '#core/frame/framing.ts'
import { declination } from '#core/geo/declination.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { magneticBearing } from '#core/sheet/content.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { aperture, bearing, degreesText, metres, millimetres, rounded, share } from '#renderer/text/figure.ts'
import { shutterText } from '#renderer/text/light-text.ts'
import { cropName, lensTaken } from '#renderer/text/names.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'

interface SettingsProps {
  readonly plan: Plan
  readonly assessment: Assessment
  readonly units: UnitSystem
  /** The crop chosen over the view through the lens; null for the whole frame. */
  readonly crop: Crop | null
}

function fills(framing: Framing | null): string {
  return framing === null ? sheetWords.unknown : sheetWords.fills(share(framing.widthFill), share(framing.heightFill))
}

function pitchText(pitch: number): string {
  if (Math.abs(pitch) < 0.05) return sheetWords.pitchLevel
  return pitch > 0 ? sheetWords.pitchUp(degreesText(pitch)) : sheetWords.pitchDown(degreesText(-pitch))
}

function lensText({ plan, assessment }: SettingsProps): string {
  const { lenses } = plan.shoot.bag
  return lensTaken(lenses, assessment.lens) ?? (lenses.length === 0 ? sheetWords.noLens : sheetWords.unknown)
}

function heldText({ plan, crop }: SettingsProps): string {
  const held = sheetWords.orientation[plan.spot.shot.orientation]
  return crop === null ? sheetWords.uncropped(held) : sheetWords.cropped(held, cropName(crop))
}

/** Aperture, focus and what is sharp; unknown where nothing is framed. */
function sharpRows({ plan, assessment, units }: SettingsProps): [string, string][] {
  const { sharp } = assessment
  const { focus } = plan.spot.shot
  if (sharp === null) {
    return [sheetWords.aperture, sheetWords.focus, sheetWords.sharp].map((name) => [name, sheetWords.unknown])
  }
  const where =
    focus.on === 'feature' ? sheetWords.focusOn.feature(metres(focus.behindFront, units)) : sheetWords.focusOn[focus.on]
  const far = sharp.limits.far === null ? sheetWords.infinity : metres(sharp.limits.far, units)
  return [
    [sheetWords.aperture, aperture(sharp.used.mark)],
    [sheetWords.focus, sheetWords.focusAt(metres(sharp.focusDistance, units), where)],
    [sheetWords.sharp, sheetWords.sharpFrom(metres(sharp.limits.near, units), far)],
  ]
}

function exposureText({ plan, assessment }: SettingsProps): string {
  const { sharp, light } = assessment
  const { seconds } = light.exposure
  if (seconds === null) return lightWords.estimate.unknown
  if (sharp === null) return sheetWords.unknown
  const set = lightWords.exposureText(shutterText(seconds), aperture(sharp.used.mark), rounded(plan.shoot.iso, 0))
  return sheetWords.estimate(set, lightWords.skies[plan.shoot.sky])
}

function aimText({ plan, assessment }: SettingsProps): string {
  const { view } = assessment
  if (view === null) return sheetWords.unknown
  const { at, elevation } = plan.spot.standpoint
  const magnetic = magneticBearing(view.bearing, declination(at, elevation, plan.spot.when))
  const [aim, tilt] = [bearing(view.bearing), pitchText(view.pitch)]
  return magnetic === null ? sheetWords.aim(aim, tilt) : sheetWords.aimMagnetic(aim, bearing(magnetic), tilt)
}

/** The rows in the order in which one sets a camera up: name, words. */
export function settingRows(props: SettingsProps): [string, string][] {
  const { plan, assessment } = props
  const { focalLength } = assessment
  return [
    [sheetWords.lens, lensText(props)],
    [sheetWords.focal, focalLength === null ? sheetWords.unknown : millimetres(focalLength)],
    ...sharpRows(props),
    [sheetWords.exposure, exposureText(props)],
    [sheetWords.held, heldText(props)],
    [sheetWords.camera, aimText(props)],
    [sheetWords.subjectFills, fills(assessment.subject)],
    ...(plan.landmark === null
      ? []
      : [[sheetWords.landmarkFills, fills(assessment.landmark)] satisfies [string, string]]),
  ]
}

export function SheetSettings(props: SettingsProps) {
  return (
    <dl class="sheet-rows">
      {settingRows(props).map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  )
}
