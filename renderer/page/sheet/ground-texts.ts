/** What the sheet says of the ground: how much of the landmark shows, direct sun and how sure it is, how far elevations reach, slopes. */
import type { Assessment } from '#core/plan/assess.ts'
import type { DayLight } from '#core/plan/day-light.ts'
import { groundProfile } from '#core/plan/ground-profile.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { metres } from '#renderer/text/figure.ts'
import {
  clearanceText,
  hiddenSentence,
  lightPlaces,
  lightTimes,
  lightTimesText,
  lowerLineName,
  nearestDoubtAway,
  shownFigure,
} from '#renderer/text/ground-text.ts'
import { momentDoubtAway } from '#renderer/text/light-text.ts'
import { landmarkName, subjectName } from '#renderer/text/names.ts'
import { reachText, reachesAll } from '#renderer/text/reach-text.ts'
import { slopeText, tiltSourceText } from '#renderer/text/tilt-text.ts'
import { groundWords } from '#renderer/words/en-ground.ts'

const { sheet: say } = groundWords

export interface GroundProps {
  readonly plan: Plan
  readonly assessment: Assessment
  /** The light of the spot's own day. */
  readonly daylight: DayLight
  readonly units: UnitSystem
  /** Why there are no elevations, where there are none: no source knows the place, they failed, or did not come in time. */
  readonly groundMissing: 'none-known' | 'failed' | 'late'
}

/** What is said of the way to the landmark; null without one. */
export function waySentence({ plan, assessment, units }: GroundProps): string | null {
  const { ground } = assessment
  if (ground === null || ground.toLandmark === null) return null
  const shown = `${shownFigure(ground.landmarkShown)} ${groundWords.shows(landmarkName(plan.landmark))}`
  const hidden = hiddenSentence(plan, ground.toLandmark, ground.landmarkShown, units)
  return `${ground.landmarkShown === null ? groundWords.unknownNote(landmarkName(plan.landmark)) : shown}. ${hidden}`
}

interface SunAndGround {
  /** "direct sun Cargo bicycle 05:01–18:45, Merrin Bridge 05:36–19:16". */
  readonly direct: string
  /** From where on unknown ground makes any time on the sheet, or the light of the moment, unsure: said here for all of them. */
  readonly unsure: string | null
}

function sunAndGround({ plan, assessment, daylight, units }: GroundProps): SunAndGround {
  const { direct, windows, day, zone } = daylight
  const times = lightPlaces(plan).map(([place, name]) => [name, lightTimes(direct[place], day, zone)] as const)
  const spans = [...windows.common, ...windows.wishes.flatMap((wish) => wish.spans)]
  const aways = [...times.map(([, { unsure }]) => unsure), nearestDoubtAway(spans), momentDoubtAway(assessment.light)]
  const known = aways.filter((away) => away !== null)
  return {
    direct: say.direct(times.map(([name, one]) => groundWords.light.line(name, lightTimesText(one))).join(', ')),
    unsure: known.length === 0 ? null : say.unsure(metres(Math.min(...known), units)),
  }
}

/** "slope under Standpoint 4° to the south (measured), Cargo bicycle level (from elevations)"; null where none is known. */
export function slopesText({ plan, assessment }: GroundProps): string | null {
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
  return parts.length === 0 ? null : say.slopes(parts.join(', '))
}

/** What is said of the ground, but for slopes. */
export function groundTexts(props: GroundProps): string[] {
  const { plan, assessment, units, groundMissing } = props
  if (assessment.ground === null) return [say.missing[groundMissing]]
  const line = groundProfile(plan, assessment.levels)
  const way = waySentence(props)
  const clearance = line === null ? null : clearanceText(plan, line, units)
  const { direct, unsure } = sunAndGround(props)
  return [
    ...(way === null ? [] : [way]),
    ...(clearance === null ? [] : [say.tightest(lowerLineName(plan), clearance)]),
    direct,
    ...(unsure === null ? [] : [unsure]),
    ...(plan.terrain?.sea === true ? [say.sea] : []),
    // On paper there is room for what is missing alone.
    ...(reachesAll(assessment.ground.reach)
      ? []
      : [groundWords.reach.sheet(reachText(assessment.ground.reach, units))]),
  ]
}
