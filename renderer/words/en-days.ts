/** Words of the page of days: the year in weeks, the best days, the landmark's sides, alignments, the calendar file. */
import type { Body } from '#core/light/body.ts'
import type { SkyLight } from '#core/light/alignment.ts'
import type { BehindGround } from '#core/light/over-skyline.ts'
import type { TargetName } from '#core/plan/alignment-target.ts'
import { MONTHS, WEEKDAYS } from '#core/time/civil.ts'

const days = (count: number): string => `${count} ${count === 1 ? 'day' : 'days'}`

export const daysWords = {
  title: 'Which days?',
  noSpot: 'No spot is on the board. Go back, make or choose one, and its days show here.',
  working: 'Working it out…',
  notFound: (message: string) =>
    `This could not be worked out: ${message}. Go back to the board and open this page again.`,
  year: {
    heading: (year: number) => `When all wishes hold in ${year}`,
    year: 'Year',
    earlier: 'One year earlier',
    later: 'One year later',
    outside: 'Choose a year from 1900 to 2100.',
    gridLabel: (year: number) => `Minutes of light as wished on each day of ${year}, weeks as columns`,
    weekdays: WEEKDAYS,
    weekdayNames: ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'],
    months: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
    monthNames: MONTHS,
    keys: 'Arrow keys go from day to day, Page Up and Page Down by four weeks; Enter chooses the day.',
    legend: 'Larger square, more minutes',
    none: 'none',
    chosen: 'chosen day',
    dayText: (day: string, minutes: string, spans: string) => `${day}: ${minutes}, ${spans}`,
    dayNone: (day: string) => `${day}: no light as wished`,
    dayMissing: (day: string) => `${day}: the clocks of this place left this day out`,
    dayUnknown: (day: string) => `${day}: not worked out yet`,
    minutes: (count: string) => `${count} min`,
    hours: (hours: string, minutes: string) => (minutes === '0' ? `${hours} h` : `${hours} h ${minutes} min`),
    underOne: 'under 1 min',
    and: (parts: readonly string[]) =>
      parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`,
    noWishes: 'No light is wished yet. Say on the board what you want, under “Light wished”; then the year shows here.',
    toWishes: 'To the wishes',
    wished: (names: readonly string[]) => `Wished: ${names.join(' · ')}`,
    summary: (count: number, year: number) => `${days(count)} of ${year} with light as wished`,
    noDay: (year: number) => `No day of ${year} has light as wished.`,
    never: (wish: string) => `“${wish}” holds on no day of this year by itself.`,
    neverSeen: (wish: string) =>
      `“${wish}” cannot hold: from this standpoint no upright side of it is in the frame. Aim or stand so that it is.`,
    apart: (one: string, other: string) => `“${one}” and “${other}” never hold at the same time in this year.`,
    alone: (wish: string, count: number, all: number) => `“${wish}” holds on ${count} of ${days(all)} by itself.`,
    allTogether: 'Any two of the wishes hold together at some time, but never all of them.',
    what: 'Drop or widen a wish, or try another standpoint.',
  },
  list: {
    chosen: 'The chosen day',
    noneChosen: 'No light as wished on this day.',
    best: (year: number) => `Best of ${year}, a fortnight apart`,
    next: (day: string) => `Next from ${day}`,
    first: (year: number) => `First of ${year}`,
    noNext: (year: number) => `No further day of ${year}.`,
    choose: (day: string) => `Choose ${day}`,
    pick: (day: string, span: string) => `${day}, ${span}: into the calendar file`,
    save: 'Save chosen windows as calendar file',
    saveCount: (count: number) => `Save ${count} ${count === 1 ? 'window' : 'windows'} as calendar file`,
    pickFirst: 'Tick the windows that you want in your calendar.',
    saved: (name: string) => `Saved as ${name}.`,
    clear: 'Untick all',
  },
  calendar: {
    summary: (spot: string) => `Light: ${spot}`,
    fileName: (spot: string) => `${spot} light windows`,
    all: (names: readonly string[]) => `In this time: ${names.join('; ')}.`,
    standpoint: (at: string) => `Standpoint: ${at}`,
    subject: (at: string) => `Subject stops at: ${at}`,
    lens: (lens: string, aperture: string) => `Lens and aperture: ${lens}, ${aperture}`,
    sunNear: (focal: string) =>
      `In this time the sun stands in the frame or within 5° of it (${focal}): never look at it through an optical finder, and don’t leave the lens pointed at it.`,
  },
  sides: {
    heading: 'Which side of the landmark?',
    lead: (name: string) =>
      `Hours of direct sun on each side of ${name}, wherever you stand, over the skyline of the hills around it.`,
    leadLevel: (name: string) =>
      `Hours of direct sun on each side of ${name}, wherever you stand. No elevations here: hills are not counted.`,
    none: 'This spot has no landmark. Give it one under “Subject and bag”.',
    side: 'Side',
    today: (day: string) => day,
    byMonth: (year: number) => `Hours a day, by month of ${year}`,
    litHours: (hours: string) => `${hours} h`,
    notLit: 'never lit',
    spans: (spans: string) => `lit ${spans}`,
    planLabel: (name: string, clock: string) =>
      `Plan of ${name}: white sides are in the sun at ${clock}, dark ones are not`,
    planNote: (clock: string) => `White: in the sun at ${clock}. Dark: in shade.`,
    unsure: (away: string) =>
      `In some directions of the sun the ground is not known from ${away} on and may stand higher: hours by month are then the most that there can be.`,
    planBehind: (clock: string) => `The sun is behind the hills at ${clock}: all sides dark.`,
    planNight: (clock: string) => `The sun is down at ${clock}: all sides dark.`,
    north: 'N',
    grey: 'Grey: the sun is above the level horizon. White: it is on this side.',
    faceNames: {
      segment: (first: number, last: number) => (first === last ? `segment ${first}` : `segments ${first}–${last}`),
      segments: (numbers: string) => `segments ${numbers}`,
    },
    hours: (count: string) => `${count} hours a day`,
  },
  stands: {
    heading: 'When does the sun or moon stand on it?',
    none: 'Alignments need a landmark. Give this spot one under “Subject and bag”.',
    noTop: 'From here nothing can stand on the landmark: it has no place yet, or the lens is within or under it.',
    caution:
      'Whoever aims at the sun: never look at it through an optical finder, use the screen with a proper filter, and don’t leave a long lens pointed at it. It burns eyes, sensor and shutter.',
    hilly:
      'Behind the hill: no part of it stands above the hills, trees and walls seen from the lens. The air near the horizon can move things by a tenth of a degree and more.',
    flat: 'No elevations here: hills between are not counted. The air near the horizon can move things by a tenth of a degree and more.',
    body: 'Body',
    bodies: { sun: 'Sun', moon: 'Moon' } satisfies Record<Body, string>,
    where: 'Where',
    tolerance: 'Within',
    span: 'Years from the chosen day',
    lit: 'Moon lit at least',
    sky: 'Sky',
    skies: { any: 'any', day: 'day', twilight: 'twilight', night: 'night' },
    skyNames: {
      day: 'day',
      civil: 'civil twilight',
      nautical: 'nautical twilight',
      astronomical: 'astronomical twilight',
      night: 'night',
    } satisfies Record<SkyLight, string>,
    hills: 'Behind hills',
    hillsWishes: { marked: 'marked', 'left-out': 'left out' },
    hillsColumn: 'Hills',
    hillNames: {
      clear: 'clear',
      partly: 'partly behind the hill',
      behind: 'behind the hill',
    } satisfies Record<BehindGround, string>,
    hillUnknown: 'unknown',
    /** After "clear" or "partly behind the hill". */
    hillUnsure: (away: string) => `but unknown from ${away} on`,
    found: (count: number, total: number, since: string, behind: number) =>
      `${count === total ? `Found ${count}` : `Found ${total}, ${count} as wished`}${behind === 0 ? '' : `, ${behind} behind the hill`}, from ${since} on`,
    more: (count: number) => `The first ${count} are listed.`,
    again: 'Search from the chosen day',
    working: (share: string) => `Searching: ${share}`,
    noneFound: (body: Body, years: string, since: string) =>
      `The ${body} does not stand there within ${years === '1' ? 'a year' : `${years} years`} from ${since}.`,
    lastYear: 'The years that are computed end with 2100.',
    noneSo: (total: number) =>
      `${total === 1 ? 'One alignment is' : `All ${total} alignments are`} ruled out by what is wished of moon, sky and hills. Widen those wishes.`,
    direction: (bearing: string, altitude: string) => `It would have to stand at ${bearing}, ${altitude} high.`,
    below: (bearing: string, altitude: string) =>
      `It would have to stand at ${bearing}, ${altitude} below the level: the lens looks down on that place.`,
    outOfReach: (body: Body, needed: string, most: string) =>
      `It never does: that takes a declination of ${needed}, and the ${body} stays within ${most} of the celestial equator.`,
    tryElsewhere: 'Move the standpoint, or ask for another place on the landmark.',
    try: 'Move the standpoint, widen the tolerance, or ask for longer.',
    day: 'Day',
    clock: 'Time',
    altitude: 'Altitude',
    near: 'Off by',
    phase: 'Lit',
    waxing: 'waxing',
    waning: 'waning',
    skyColumn: 'Sky',
    choose: (day: string, clock: string) => `Choose ${day}, ${clock}`,
    wheres: {
      top: 'on its top',
      resting: 'resting on its top',
      middle: 'behind its middle',
      'left-edge': 'touching its left edge',
      'right-edge': 'touching its right edge',
    } satisfies Record<TargetName, string>,
    line: 'Line of standpoints for the chosen instant',
    lineLabel: (body: string, landmark: string, when: string) => `${body} behind the middle of ${landmark}, ${when}`,
    lineHint: (when: string) =>
      `Draws on the map from where it stands behind the landmark’s middle at ${when}, on flat ground.`,
    lineHintHills: (when: string) =>
      `Draws on the map from where it stands behind the landmark’s middle at ${when}, as on flat ground; dotted where hills hide it.`,
    lineHidden: (label: string) => `${label}; dotted: behind the hill`,
  },
} as const
