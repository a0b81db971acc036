/** Words of the page of days: the year in weeks, the best days, the landmark's sides, alignments, the calendar file. */
import type { Body } from '#core/light/body.ts'
import type { SkyLight } from '#core/light/alignment.ts'
import type { BehindGround } from '#core/light/over-skyline.ts'
import type { TargetName } from '#core/plan/alignment-target.ts'
import { MONTHS, WEEKDAYS, WEEKDAY_NAMES } from '#core/time/civil.ts'

const days = (count: number): string => `${count} ${count === 1 ? 'day' : 'days'}`

export const daysWords = {
  title: 'Which days?',
  noSpot: 'No spot is open. Go back, add or choose one, and its days show here.',
  working: 'Working it out…',
  notFound: (message: string) =>
    `This could not be worked out: ${message}. Go back to the board and open this page again.`,
  year: {
    heading: (year: number) => `When the light is right in ${year}`,
    year: 'Year',
    earlier: 'One year earlier',
    later: 'One year later',
    outside: 'Choose a year from 1900 to 2100.',
    gridLabel: (year: number) => `Minutes of the light you want on each day of ${year}, weeks as columns`,
    weekdays: WEEKDAYS,
    weekdayNames: WEEKDAY_NAMES,
    months: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
    monthNames: MONTHS,
    keys: 'Arrow keys go from day to day, Page Up and Page Down by four weeks; Enter chooses the day.',
    legend: 'Larger square, more minutes',
    none: 'none',
    chosen: 'planned day',
    dayText: (day: string, minutes: string, spans: string) => `${day}: ${minutes}, ${spans}`,
    dayNone: (day: string) => `${day}: light never right`,
    dayMissing: (day: string) => `${day}: skipped in this time zone`,
    dayUnknown: (day: string) => `${day}: not worked out yet`,
    minutes: (count: string) => `${count} min`,
    hours: (hours: string, minutes: string) => (minutes === '0' ? `${hours} h` : `${hours} h ${minutes} min`),
    underOne: 'under 1 min',
    and: (parts: readonly string[]) =>
      parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`,
    noWishes:
      'No light conditions yet. Set them on the board, under “When is the light right?”; then the year shows here.',
    toWishes: 'To the light conditions',
    wished: (names: readonly string[]) => `Conditions: ${names.join(' · ')}`,
    summary: (count: number, year: number) =>
      `${days(count)} in ${year} ${count === 1 ? 'has' : 'have'} the light you want`,
    noDay: (year: number) => `No day in ${year} has the light you want.`,
    never: (wish: string) => `“${wish}” happens on no day of this year.`,
    neverSeen: (wish: string) =>
      `“${wish}” cannot happen: no upright side of it is in the frame. Turn or move the camera.`,
    apart: (one: string, other: string) => `“${one}” and “${other}” never happen at the same time in this year.`,
    alone: (wish: string, count: number, all: number) => `“${wish}” alone happens on ${count} of ${days(all)}.`,
    allTogether: 'Any two of these happen together, but never all.',
    what: 'Clear or loosen a condition, or try another standpoint.',
  },
  list: {
    chosen: 'The planned day',
    noneChosen: 'The light is never right on this day.',
    best: (year: number) => `Best of ${year}, two weeks apart`,
    next: (day: string) => `Next from ${day}`,
    first: (year: number) => `First of ${year}`,
    noNext: (year: number) => `No further day of ${year}.`,
    choose: (day: string) => `Choose ${day}`,
    pick: (day: string, span: string) => `${day}, ${span}: into the calendar file`,
    save: 'Save ticked windows as calendar file',
    saveCount: (count: number) => `Save ${count} ${count === 1 ? 'window' : 'windows'} as calendar file`,
    pickFirst: 'Tick the windows that you want in your calendar.',
    saved: (name: string) => `Saved as ${name}.`,
    clear: 'Untick all',
  },
  calendar: {
    summary: (spot: string) => `Light: ${spot}`,
    fileName: (spot: string) => `${spot} light windows`,
    /** "15:29–17:35 local time at the spot (UTC−2)": the file's own times show on the reader's clock. */
    localTime: (span: string, offset: string) => `${span} local time at the spot (${offset})`,
    all: (names: readonly string[]) => `In this time: ${names.join('; ')}.`,
    standpoint: (at: string) => `Standpoint: ${at}`,
    subject: (at: string) => `Subject stops at: ${at}`,
    lens: (lens: string, aperture: string) => `Lens and aperture: ${lens}, ${aperture}`,
    sunNear: (focal: string) =>
      `In this time the sun is in the frame or within 5° of it (${focal}): never look at it through an optical finder, and don’t leave the lens pointed at it.`,
  },
  sides: {
    heading: 'Which side of the landmark?',
    lead: (name: string) =>
      `Hours of direct sun on each side of ${name}, wherever you stand. Hills around it are counted.`,
    leadLevel: (name: string) =>
      `Hours of direct sun on each side of ${name}, wherever you stand. No elevation data here: hills are not counted.`,
    none: 'This spot has no landmark. Give it one under “Subject and bag”.',
    side: 'Side',
    today: (day: string) => day,
    byMonth: (year: number) => `Hours a day, by month of ${year}`,
    litHours: (hours: string) => `${hours} h`,
    notLit: 'never lit',
    planLabel: (name: string, clock: string) =>
      `Plan of ${name}: white sides are in the sun at ${clock}, dark ones are not`,
    planNote: (clock: string) => `White: in the sun at ${clock}. Dark: in shade.`,
    unsure: (away: string) =>
      `Toward the sun elevation data is missing in places from ${away} on. Ground may be higher there, so hours by month are at most these.`,
    planBehind: (clock: string) => `The sun is behind the hills at ${clock}: all sides dark.`,
    planNight: (clock: string) => `The sun is down at ${clock}: all sides dark.`,
    north: 'N',
    grey: 'Grey: the sun is above the level horizon. White: it is on this side.',
    faceNames: {
      segment: (first: number, last: number) => (first === last ? `segment ${first}` : `segments ${first}–${last}`),
      segments: (numbers: string) => `segments ${numbers}`,
    },
  },
  stands: {
    heading: 'When do sun or moon line up with it?',
    none: 'Alignments need a landmark. Give this spot one under “Subject and bag”.',
    noTop:
      'From here nothing can line up with the landmark: it is not on the map yet, or the lens is inside or under it.',
    caution:
      'If you aim at the sun: never look at it through an optical finder, use live view and a solar filter, and don’t leave a long lens pointed at it. It burns eyes, sensor and shutter.',
    hilly:
      'Behind the hill: no part of it is above the hills, trees and walls seen from the lens. The air near the horizon can move things by a tenth of a degree and more.',
    flat: 'No elevation data here: hills in between are not counted. The air near the horizon can move things by a tenth of a degree and more.',
    body: 'Sun or moon',
    bodies: { sun: 'Sun', moon: 'Moon' } satisfies Record<Body, string>,
    where: 'Where',
    tolerance: 'How exactly',
    span: 'Search ahead, years',
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
      `${total} found from ${since}${count === total ? '' : `, ${count} fit your settings`}${behind === 0 ? '' : behind === count ? ', all behind the hill' : `, ${behind} behind the hill`}`,
    more: (count: number) => `The first ${count} are listed.`,
    again: 'Search from the planned day',
    working: (share: string) => `Searching: ${share}`,
    noneFound: (body: Body, years: string, since: string) =>
      `The ${body} does not line up within ${years === '1' ? 'a year' : `${years} years`} from ${since}.`,
    lastYear: 'The search ends with the year 2100.',
    noneSo: (total: number) =>
      `Your moon, sky and hill settings rule out ${total === 1 ? 'the only one' : `all ${total}`}. Loosen them.`,
    direction: (bearing: string, altitude: string) => `It would have to be at ${bearing}, ${altitude} high.`,
    below: (bearing: string, altitude: string) =>
      `It would have to be at ${bearing}, ${altitude} below level: the lens looks down on that point.`,
    outOfReach: (body: Body, needed: string, most: string) =>
      `Never from here: the ${body} does not get that far ${needed.startsWith('−') ? 'south' : 'north'} (declination ${needed} needed, ${most} at most).`,
    tryElsewhere: 'Move the standpoint, or choose another point on the landmark.',
    try: 'Move the standpoint, accept less exactly, or search more years.',
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
    line: 'Show where to stand at the planned time',
    lineLabel: (body: string, landmark: string, when: string) => `${body} behind the middle of ${landmark}, ${when}`,
    lineHint: (when: string) =>
      `Draws on the map from where it is behind the landmark’s middle at ${when}, on flat ground.`,
    lineHintHills: (when: string) =>
      `Draws on the map from where it is behind the landmark’s middle at ${when}, as on flat ground; dotted where hills hide it.`,
    lineHidden: (label: string) => `${label}; dotted: behind the hill`,
  },
} as const
