/** The ground on the sheet: the profile in small, how much of the landmark shows, first and last direct sun. */
import { groundProfile } from '#core/plan/ground-profile.ts'
import {
  clearanceText,
  hiddenSentence,
  lightPlaces,
  lightTimes,
  lightTimesText,
  lowerLineName,
  reachText,
  reachesAll,
  shownFigure,
} from '#renderer/text/ground-text.ts'
import { slopeText, tiltSourceText } from '#renderer/text/tilt-text.ts'
import { ProfileDrawing, exaggerationText, profilePicture } from '#renderer/view/profile/profile-drawing.tsx'
import { metres } from '#renderer/text/figure.ts'
import { landmarkName, subjectName } from '#renderer/text/names.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import type { SheetProps } from './sheet-props.ts'

const { sheet: say } = groundWords

type GroundProps = Pick<SheetProps, 'plan' | 'assessment' | 'daylight' | 'units' | 'groundMissing'>

/** What is said of the way to the landmark; null without one. */
export function waySentence({ plan, assessment, units }: GroundProps): string | null {
  const { ground } = assessment
  if (ground === null || ground.toLandmark === null) return null
  const shown = `${shownFigure(ground.landmarkShown)} ${groundWords.shows(landmarkName(plan.landmark))}`
  const hidden = hiddenSentence(plan, ground.toLandmark, ground.landmarkShown, units)
  return `${ground.landmarkShown === null ? groundWords.unknownNote(landmarkName(plan.landmark)) : shown}. ${hidden}`
}

/** "direct sun Cargo bicycle 05:01–18:45, Merrin Bridge 05:36–19:16". */
export function directSunLine({ plan, daylight, units }: GroundProps): string {
  const { direct, day, zone } = daylight
  const times = lightPlaces(plan).map(([place, name]) => [name, lightTimes(direct[place], day, zone)] as const)
  const away = times.reduce((least, [, { unsure }]) => Math.min(least, unsure ?? Infinity), Infinity)
  const inWords = say.direct(times.map(([name, one]) => groundWords.light.line(name, lightTimesText(one))).join(', '))
  return away === Infinity ? inWords : say.unsure(inWords, metres(away, units))
}

/** In the row of its words, and, where the sheet is so full that its pictures are small, beside them. */
const ROOMS = {
  row: { width: 340, height: 66, left: 34, right: 8, top: 4, bottom: 13 },
  picture: { width: 266, height: 130, left: 36, right: 8, top: 6, bottom: 21 },
} as const

export function SheetProfile(props: GroundProps & { readonly at: keyof typeof ROOMS }) {
  const { plan, assessment, units, at } = props
  const line = groundProfile(plan, assessment.levels)
  if (line === null) return null
  const picture = profilePicture(line, ROOMS[at], units)
  return (
    <figure class={`sheet-profile sheet-profile-${at}`}>
      <ProfileDrawing line={line} picture={picture} units={units} sentence={waySentence(props) ?? ''} cursor={null} />
      <figcaption>{exaggerationText(picture.exaggeration)}</figcaption>
    </figure>
  )
}

/** "slope under Standpoint 4° to the south (measured), Cargo bicycle level (from elevations)"; nothing where none is known. */
function slopeTexts({ plan, assessment }: GroundProps): string[] {
  const { standpoint, stop } = assessment.under
  const parts = (
    [
      [groundWords.under.standpoint, standpoint],
      [subjectName(plan.shoot.subject), stop],
    ] as const
  ).flatMap(([name, under]) => {
    const [slope, source] = [slopeText(under), tiltSourceText(under)]
    return slope === null || source === null ? [] : [say.slope(name, slope, source)]
  })
  return parts.length === 0 ? [] : [say.slopes(parts.join(', '))]
}

function texts(props: GroundProps): string[] {
  const { plan, assessment, units, groundMissing } = props
  if (assessment.ground === null) return [say.missing[groundMissing]]
  const line = groundProfile(plan, assessment.levels)
  const way = waySentence(props)
  const clearance = line === null ? null : clearanceText(plan, line, units)
  return [
    ...(way === null ? [] : [way]),
    ...(clearance === null ? [] : [say.tightest(lowerLineName(plan), clearance)]),
    directSunLine(props),
    ...(plan.terrain?.sea === true ? [say.sea] : []),
    // On paper there is room for what is missing alone.
    ...(reachesAll(assessment.ground.reach)
      ? []
      : [groundWords.reach.sheet(reachText(assessment.ground.reach, units))]),
  ]
}

export function SheetGround(props: GroundProps) {
  const { standpoint, stop } = props.assessment.under
  // What somebody measured stays on the fullest sheet too.
  const measured = [standpoint, stop].some(
    ({ slope, aspect }) => slope.from === 'measured' || aspect.from === 'measured',
  )
  return (
    <div class="sheet-ground">
      <dl>
        <div>
          <dt>{say.row}</dt>
          <dd>
            {texts(props).join(' · ')}
            {slopeTexts(props).map((text) => (
              <span key={text} class={measured ? undefined : 'sheet-slopes'}>
                {` · ${text}`}
              </span>
            ))}
          </dd>
        </div>
      </dl>
      <SheetProfile {...props} at="row" />
    </div>
  )
}
