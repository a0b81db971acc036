/**
 * The set-up for a plan's wished fill, solved once a frame: what a hand moves is first followed, which solves it for the focal length, and
 * then assessed, which asks for it again. Kept with the scene it was solved for.
 */
import type { FillWish } from '#core/frame/fill.ts'
import { type Scene, type Setting, type SetUp } from '#core/frame/set-up.ts'
import { setUpForFill } from '#core/frame/set-up-for-fill.ts'

interface Solved {
  readonly setting: Setting
  readonly wish: FillWish
  readonly made: SetUp | null
}

const solved = new WeakMap<Scene, Solved>()

function sameSetting(one: Setting, other: Setting): boolean {
  return (
    one.frameWidth === other.frameWidth &&
    one.frameHeight === other.frameHeight &&
    one.placement.across === other.placement.across &&
    one.placement.up === other.placement.up &&
    one.focus.on === other.focus.on
  )
}

/** As `setUpForFill`; the focus that a scene's feature lies at is the scene's own. */
export function solvedFill(scene: Scene, setting: Setting, wish: FillWish): SetUp | null {
  const before = solved.get(scene)
  if (before?.wish.share === wish.share && before.wish.axis === wish.axis && sameSetting(before.setting, setting))
    return before.made
  const made = setUpForFill(scene, setting, wish)
  solved.set(scene, { setting, wish, made })
  return made
}
