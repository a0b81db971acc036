/** What to set on the camera, as rows of the sheet. */
import type { Assessment } from '#core/plan/assess.ts'
import type { Framing } from '#core/frame/framing.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { aperture, bearing, degreesText, metres, millimetres, share } from '#renderer/text/figure.ts'
import { lensTaken } from '#renderer/text/names.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'

interface SettingsProps {
  readonly plan: Plan
  readonly assessment: Assessment
  readonly units: UnitSystem
}

function fills(framing: Framing | null): string {
  return framing === null ? sheetWords.unknown : sheetWords.fills(share(framing.widthFill), share(framing.heightFill))
}

function pitchText(pitch: number): string {
  if (Math.abs(pitch) < 0.05) return sheetWords.pitchLevel
  return pitch > 0 ? sheetWords.pitchUp(degreesText(pitch)) : sheetWords.pitchDown(degreesText(-pitch))
}

/** The rows in the order in which one sets a camera up: name, words. */
export function settingRows({ plan, assessment, units }: SettingsProps): [string, string][] {
  const { shot, standpoint, stop } = plan.spot
  const { sharp, view, lens, focalLength } = assessment
  const rows: [string, string][] = [
    [sheetWords.lens, lensTaken(plan.shoot.bag.lenses, lens) ?? sheetWords.noLens],
    [
      sheetWords.focal,
      focalLength === null
        ? sheetWords.unknown
        : `${millimetres(focalLength)}, ${sheetWords.orientation[shot.orientation]}`,
    ],
  ]
  if (sharp !== null) {
    const where =
      shot.focus.on === 'feature'
        ? sheetWords.focusOn.feature(metres(shot.focus.behindFront, units))
        : sheetWords.focusOn[shot.focus.on]
    const far = sharp.limits.far === null ? sheetWords.infinity : metres(sharp.limits.far, units)
    rows.push(
      [sheetWords.aperture, aperture(sharp.used.mark)],
      [sheetWords.focus, sheetWords.focusAt(metres(sharp.focusDistance, units), where)],
      [sheetWords.sharp, sheetWords.sharpFrom(metres(sharp.limits.near, units), far)],
    )
  }
  const aim = view === null ? '' : `; ${sheetWords.aim(bearing(view.bearing), pitchText(view.pitch))}`
  rows.push(
    [sheetWords.held, `${sheetWords.lensHeight(metres(standpoint.lensHeight, units))}${aim}`],
    [sheetWords.heading, bearing(stop.heading)],
    [sheetWords.subjectFills, fills(assessment.subject)],
  )
  if (plan.landmark !== null) rows.push([sheetWords.landmarkFills, fills(assessment.landmark)])
  return rows
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
