/** Words of a date that is typed or picked: how it may be written, the calendar beside it, its keys. */
import { WEEKDAYS, WEEKDAY_NAMES } from '#core/time/civil.ts'

export const dateWords = {
  /** In a field that has none: no date itself, or it would be taken for one. */
  empty: 'no date',
  hint: 'Such as 14 Jun 2027, 14/6/27 or 2027-06-14. In figures the day comes first. Without a year, the nearest such day. Alt+Down opens a calendar.',
  pick: (label: string) => `${label}: choose from a calendar`,
  pickHint: 'Choose from a calendar',
  calendar: (label: string) => `Calendar: ${label.toLowerCase()}`,
  month: (month: string, year: string) => `${month} ${year}`,
  earlier: 'One month earlier',
  later: 'One month later',
  weekdays: WEEKDAYS,
  weekdayNames: WEEKDAY_NAMES,
  /** Spoken with today's date. */
  today: (day: string) => `${day}, today`,
  gridHint: 'Page Up, Page Down: month, with Shift year',
  keys: [
    [
      'Alt+Down',
      'In a date: opens its calendar. Arrow keys: a day, a week; Page Up, Page Down: a month, with Shift a year; Home, End: Monday, Sunday; Enter chooses',
    ],
  ],
} as const
