/** What properties are tried with in many tests. */
import { type Arbitrary, double } from 'fast-check'

/** Any number from one to another, both among them, the odd ones first. */
export function number(min: number, max: number): Arbitrary<number> {
  return double({ min, max, noNaN: true })
}
