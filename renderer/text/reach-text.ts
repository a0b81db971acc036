/** How far the elevations go, in words. */
import type { KnownReach } from '#core/ground/known-reach.ts'
import { GROUND_REACH, REACH_SLACK } from '#core/ground/rings.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { groundWords as say } from '#renderer/words/en-ground.ts'
import { compassName } from '#core/units/compass.ts'
import { metres } from './figure.ts'

/** Metres by which a reach may fall short of another and still be the same to a reader: a place lies a little off a window's middle. */
const SAME_REACH = 10_000

/** "150 km all around", or where they end sooner. */
export function reachText(reach: KnownReach, units: UnitSystem): string {
  const [most, least] = [reach.most, reach.least].map((distance) => Math.min(GROUND_REACH, distance)) as [
    number,
    number,
  ]
  const whole = (value: number): string => metres(value < 10_000 ? value : Math.round(value / 1000) * 1000, units)
  if (most - least <= SAME_REACH && least > SAME_REACH) return say.reach.around(whole(least))
  return say.reach.ends(whole(least), compassName(reach.leastToward), whole(most))
}

/** Whether they go as far as anything is looked for, on all sides. */
export function reachesAll({ least }: KnownReach): boolean {
  return least >= GROUND_REACH - REACH_SLACK
}
