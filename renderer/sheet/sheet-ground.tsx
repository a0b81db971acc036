/** The ground on the sheet: the profile in small, how much of the landmark shows, first and last direct sun. */
import { groundProfile } from '#core/plan/ground-profile.ts'
import {
  clearanceText,
  hiddenSentence,
  lightPlaces,
  lightTimes,
  lightTimesText,
  shownFigure,
} from '#renderer/answers/ground-text.ts'
import { ProfileDrawing, exaggerationText, profilePicture } from '#renderer/ground/profile-drawing.tsx'
import { landmarkName } from '#renderer/state/names.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import type { SheetProps } from './sheet-document.tsx'

const { sheet: say } = groundWords

const ROOM = { width: 718, height: 64, left: 42, right: 8, top: 6, bottom: 15 } as const

type GroundProps = Pick<SheetProps, 'plan' | 'assessment' | 'daylight' | 'units' | 'groundLate'>

/** What is said of the way to the landmark; null without one. */
export function waySentence({ plan, assessment, units }: GroundProps): string | null {
  const { ground } = assessment
  if (ground === null || ground.toLandmark === null) return null
  const shown = `${shownFigure(ground.landmarkShown)} ${groundWords.shows(landmarkName(plan.landmark))}`
  const hidden = hiddenSentence(plan, ground.toLandmark, ground.landmarkShown, units)
  return `${ground.landmarkShown === null ? groundWords.unknownNote(landmarkName(plan.landmark)) : shown}. ${hidden}`
}

/** "direct sun Cargo bicycle 05:01–18:45, Merrin Bridge 05:36–19:16". */
export function directText({ plan, daylight }: GroundProps): string {
  const { direct, day, zone } = daylight
  return say.direct(
    lightPlaces(plan)
      .map(([place, name]) => groundWords.light.line(name, lightTimesText(lightTimes(direct[place], day, zone))))
      .join(', '),
  )
}

export function SheetGround(props: GroundProps) {
  const { plan, assessment, units, groundLate } = props
  const line = groundProfile(plan, assessment.levels)
  const way = waySentence(props)
  const picture = line === null ? null : profilePicture(line, ROOM, units)
  const clearance = line === null ? null : clearanceText(plan, line, units)
  const texts =
    assessment.ground === null
      ? [groundLate ? say.late : say.level]
      : [
          ...(way === null ? [] : [way]),
          ...(clearance === null ? [] : [`${groundWords.lineToFoot.toLowerCase()}: ${clearance}`]),
          directText(props),
          ...(picture === null ? [] : [exaggerationText(picture.exaggeration).toLowerCase()]),
        ]
  return (
    <>
      <dl class="sheet-ground">
        <div>
          <dt>{say.row}</dt>
          <dd>{texts.join(' · ')}</dd>
        </div>
      </dl>
      {line === null || picture === null ? null : (
        <figure class="sheet-profile">
          <ProfileDrawing line={line} picture={picture} units={units} sentence={way ?? ''} cursor={null} />
        </figure>
      )}
    </>
  )
}
