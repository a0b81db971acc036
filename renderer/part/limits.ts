/** What a figure's field accepts, and the sentence for what it refuses. */
import { type Result, done, failed } from '#core/result.ts'
import { words } from '#renderer/words/en.ts'

export interface Limits {
  /** Least value, itself allowed unless `moreThanLeast`. */
  readonly least: number
  readonly most: number
  /** True when the value must be more than the least, as a size must be more than 0. */
  readonly moreThanLeast?: boolean
}

/** The typed figure when it lies within its limits; else the sentence to show, which names the field. */
export function withinLimits(
  read: Result<number>,
  label: string,
  limits: Limits,
  print: (value: number) => string,
): Result<number> {
  const { field } = words.shoot
  if (!read.ok) return read.fault.reason === 'empty' ? failed('empty', field.needed(label)) : read
  const { value } = read
  const tooSmall = limits.moreThanLeast === true ? value <= limits.least : value < limits.least
  if (tooSmall) {
    const sentence = limits.moreThanLeast === true ? field.more : field.least
    return failed('too-small', sentence(label, print(limits.least)))
  }
  if (value > limits.most) return failed('too-large', field.most(label, print(limits.most)))
  return done(value)
}
