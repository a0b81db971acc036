/** A time of day as people type it, and as it is written in a field: 18:30, 18.30, 1830, 6 pm. */
import { cutShort } from '#core/cut-short.ts'
import { type Result, done, failed } from '#core/result.ts'
import { plainFigure } from '#core/units/figure.ts'

export type ClockReason = 'unreadable'

const TYPED = /^(\d{1,2})(?:[:.h ]?(\d{2}))?\s*(a\.?m\.?|p\.?m\.?)?$/iu

function unreadable(text: string): Result<never, ClockReason> {
  return failed('unreadable', `“${cutShort(text)}” is not a time of day. Write hours and minutes, such as 18:30.`)
}

/** Minutes after midnight, 0..1440; 24:00 is the day's end, 1440. */
export function parseClock(text: string): Result<number, ClockReason> {
  const plain = plainFigure(text)
  const match = TYPED.exec(plain)
  if (match === null) return unreadable(plain)
  const [, hourText = '', minuteText = '0', half] = match
  const minute = Number(minuteText)
  let hour = Number(hourText)
  if (half !== undefined) {
    if (hour < 1 || hour > 12) return unreadable(plain)
    hour = (hour % 12) + (half.toLowerCase().startsWith('p') ? 12 : 0)
  }
  if (minute > 59 || hour > 24 || (hour === 24 && minute > 0)) return unreadable(plain)
  return done(hour * 60 + minute)
}

/** 18:30; the day's end is 24:00. */
export function clockText(minutes: number): string {
  const whole = Math.round(minutes)
  return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`
}
