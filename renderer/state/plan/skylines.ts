/** The skylines around the board's things: exactly for where they stand, and while a hand drags only as often as it matters. */
import { computed } from '@preact/signals'
import { type KeptSkylines, skylinesAround } from '#core/plan/kept-skylines.ts'
import { levelsOf } from '#core/plan/plan.ts'
import { type Skylines, skyEyes } from '#core/plan/plan-skylines.ts'
import { dayBoard } from './calm-board.ts'
import { moving } from '#renderer/state/library/library.ts'

/** Metres that a thing under the hand may have moved before its skyline, some milliseconds' work, is looked for again. */
const NEAR = 25

let last: KeptSkylines | null = null

/** The same object for as long as nothing that it depends on has changed; null without elevations. */
export const skylines = computed<Skylines | null>(() => {
  const now = dayBoard.plan.value
  if (now === null || now.terrain === null) return null
  const eyes = skyEyes(now, levelsOf(now), now.terrain)
  const { refraction, obstructions } = now.shoot
  last = skylinesAround(now.terrain, refraction, eyes, last, moving.value ? NEAR : 0, obstructions)
  return last.found
})
