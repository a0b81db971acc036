/** The light that is to go on holding: the shoot's light wishes, and the sun on the things where nothing is wished of it. */
import type { LightSkyline, LightScene } from '#core/light/light-scene.ts'
import { SUN_RISE_ALTITUDE } from '#core/light/day-events.ts'
import { type LightWishes, NO_WISHES, type WishKind, wishesMade } from '#core/light/light-wish.ts'
import { LIT_FROM, SHADE_UNTIL, type SunLook, cosineReached, wishMargin } from '#core/light/wish-margin.ts'
import { overSkyline } from '#core/light/over-skyline.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import type { How, LightCondition } from './condition.ts'

export type SkyCondition = Exclude<LightCondition, 'hours'>

/** A condition of the light as a margin that is not below zero while it holds. */
export interface LightAsked {
  readonly kind: SkyCondition
  /** The wish that it is, and the wishes it is read from; null for sun that merely falls on a thing. */
  readonly wish: { readonly kind: Exclude<WishKind, 'hours'>; readonly wishes: LightWishes } | null
}

const OF_WISH: Readonly<Record<Exclude<WishKind, 'hours'>, SkyCondition>> = {
  subject: 'subject-light',
  landmark: 'landmark-light',
  altitude: 'altitude',
  sun: 'sun',
  soft: 'soft',
  moonUp: 'moonUp',
}

function skylineOf(kind: SkyCondition, { skylines }: LightScene): LightSkyline | null {
  if (kind === 'subject-light' || kind === 'subject-sun') return skylines.subject
  return kind === 'sun' ? skylines.lens : skylines.landmark
}

export function heldMargin({ kind, wish }: LightAsked, scene: LightScene, instant: number, sun: SunLook): number {
  return wish === null
    ? overSkyline(skylineOf(kind, scene), sun)
    : wishMargin(wish.kind, wish.wishes, scene, instant, sun)
}

/**
 * All that is asked of the light, whether it holds or not. A thing of which no light is wished is asked to stay lit if its seen
 * sides are, else to stay in the sun if the sun is on it: a rim of light counts too. Of a landmark that isn't there nothing is asked.
 */
export function lightAsked(
  wishes: LightWishes,
  scene: LightScene,
  landmark: 'none' | 'out-of-frame' | 'in-frame',
  instant: number,
  sun: SunLook,
): LightAsked[] {
  const made = wishesMade(wishes)
    .filter((kind) => kind !== 'hours')
    .filter((kind) => kind !== 'landmark' || landmark !== 'none')
    .map((kind): LightAsked => ({ kind: OF_WISH[kind], wish: { kind, wishes } }))
  const unasked = (['subject', 'landmark'] as const).flatMap((thing): LightAsked[] => {
    if (wishes[thing] !== null || (thing === 'landmark' && landmark !== 'in-frame')) return []
    const lit: LightAsked = {
      kind: `${thing}-light`,
      wish: { kind: thing, wishes: { ...NO_WISHES, [thing]: 'lit' } },
    }
    if (heldMargin(lit, scene, instant, sun) >= 0) return [lit]
    const onIt: LightAsked = { kind: `${thing}-sun`, wish: null }
    return heldMargin(onIt, scene, instant, sun) >= 0 ? [onIt] : []
  })
  return [...made, ...unasked]
}

/** Of several margins the one that is least, in words. */
function leastOf(parts: readonly (readonly [number, How])[]): How {
  return parts.reduce((least, part) => (part[0] < least[0] ? part : least))[1]
}

/** The sun is gone: below the level horizon, or behind the ground. */
function gone(sun: SunLook): How {
  return sun.altitude < SUN_RISE_ALTITUDE ? 'sun-down' : 'behind-ground'
}

/** How a condition fails where its margin is below zero: by the part of it that is farthest off. */
export function lightHow(asked: LightAsked, scene: LightScene, sun: SunLook): How {
  const { kind, wish } = asked
  const up = overSkyline(skylineOf(kind, scene), sun)
  if (wish === null) return gone(sun)
  const { wishes } = wish
  if (wish.kind === 'subject' || wish.kind === 'landmark') {
    const lightWish = wishes[wish.kind] ?? 'lit'
    if (lightWish === 'back-lit') return up < 0 ? gone(sun) : 'not-behind'
    const sides = scene[wish.kind]
    if (lightWish === 'in-shade') {
      if (cosineReached(sides, sun.direction, SHADE_UNTIL) === null) return 'not-seen'
      return sun.altitude < SUN_RISE_ALTITUDE ? 'sun-down' : 'sunlit'
    }
    const reached = cosineReached(sides, sun.direction, LIT_FROM)
    if (reached === null) return 'not-seen'
    if (lightWish === 'raking' && up >= 0 && reached >= 0) return 'too-square'
    return leastOf([
      [up * RADIANS_PER_DEGREE, gone(sun)],
      [reached, 'in-shade'],
    ])
  }
  if (wish.kind === 'sun') {
    if (wishes.sun === 'out-of-frame') return 'sun-in-frame'
    return up < 0 ? gone(sun) : 'sun-out-of-frame'
  }
  if (wish.kind === 'soft') return 'not-soft'
  if (wish.kind === 'moonUp') return 'moon-down'
  const { altitude } = wishes
  return altitude !== null && sun.apparent > altitude.most ? 'sun-too-high' : 'sun-too-low'
}
