/**
 * The focal length for a wished fill. Near by, and with the subject placed off the frame's middle, its share does not grow with the focal
 * length all along: the shorter that is, the farther the axis turns from the subject, which is then stretched the more.
 */
import type { LocalPoint } from '#core/geo/local-frame.ts'
import { type Along, type Bracket, narrow } from './bracketed-root.ts'
import { zeroCrossings } from './zero-crossings.ts'
import { type FillWish, imageSize, sideOf } from './fill.ts'
import { extentOf } from './framing.ts'
import {
  type FocusedLook,
  type Scene,
  type Setting,
  type SetUp,
  focalLengthOf,
  lookAt,
  setUp,
  spareOf,
  subjectShare,
} from './set-up.ts'

/** Relative miss of the share at which the search ends; and by which the answer, set up by its focal length alone, may be off. */
const SOLVED = 1e-13
const ANSWERED = 1e-10
/** Millimetres of the shortest image looked for one by one: no lens is as short. */
const SHORTEST = 0.5

/**
 * The set-up whose subject takes the wished share; null when no focal length does it. Of several the longest: it stretches the
 * subject least, a longer lens shows more there, and it is the one that stays as the camera steps back.
 */
export function setUpForFill(scene: Scene, setting: Setting, wish: FillWish): SetUp | null {
  // By the image distance, since aim and focus follow from it at once.
  const miss: Along = (log) => {
    const look = lookAt(scene, setting, Math.exp(log))
    return look === null || focalLengthOf(look) === null
      ? null
      : Math.log(shareOf(scene, setting, look, wish) / wish.share)
  }
  const spare: Along = (log) => {
    const look = lookAt(scene, setting, Math.exp(log))
    return look === null ? null : spareOf(look)
  }
  const made = (log: number | null): SetUp | null => {
    const look = log === null ? null : lookAt(scene, setting, Math.exp(log))
    const focal = look === null ? null : focalLengthOf(look)
    // Set up by its focal length alone, as whoever sets the lens does: that may turn out as another picture.
    const again = focal === null ? null : setUp(scene, setting, focal)
    return again !== null && Math.abs(subjectShare(again, wish.axis) / wish.share - 1) < ANSWERED ? again : null
  }
  const sway = swayOf(scene, setting)
  const longest = Math.log(1000 * farthestOf(scene))
  const near = rootBySlope(miss, Math.min(Math.log(50), longest - 1))
  if (near !== null && growsFrom(near, longest, miss, sway)) {
    const found = made(near)
    if (found !== null) return found
  }
  for (const [one, other] of zeroCrossings({ at: miss, spare }, longest, Math.log(SHORTEST), (log) =>
    sway(Math.exp(log - LONG_STEP)) < SWAY ? LONG_STEP : STEP,
  )) {
    const found = made(narrow((log) => miss(log) ?? Number.NaN, one, other, SOLVED))
    if (found !== null) return found
  }
  return null
}

function shareOf(scene: Scene, setting: Setting, look: FocusedLook, { axis }: FillWish): number {
  const extent = extentOf(look, scene.corners)
  return extent === null ? Number.NaN : imageSize(extent, axis) / sideOf(setting, axis)
}

/** Metres to the subject's farthest corner: the image lies no farther behind the lens than that, being no larger than life. */
function farthestOf({ corners }: Scene): number {
  return Math.max(...corners.map(({ east, north, up }) => Math.hypot(east, north, up)))
}

const SLOPE_ROUNDS = 16

/** A root by secants: from far off the share grows in proportion to the image distance. Null where that leads nowhere. */
function rootBySlope(miss: Along, from: number): number | null {
  let log = from
  let before: Bracket | null = null
  for (let round = 0; round < SLOPE_ROUNDS; round++) {
    const value = miss(log)
    if (value === null) return null
    if (Math.abs(value) < SOLVED) return log
    const slope: number = before === null || log === before.log ? 1 : (value - before.value) / (log - before.log)
    before = { log, value }
    log -= value / (slope > 0.3 ? slope : 1)
  }
  return before !== null && Math.abs(before.value) < ANSWERED ? before.log : null
}

/** Of the logarithm, from one look of the search to the next: while the share may turn, and while it surely grows. */
const STEP = 0.02
const LONG_STEP = 0.3
/** By how much of its own size the share may change with the turning of the axis where it still surely grows with the image. */
const SWAY = 0.3

/** Whether the share stays above the wish from a root on: then no longer lens gives it. */
function growsFrom(root: number, longest: number, miss: Along, sway: (image: number) => number): boolean {
  for (let log = root + STEP; log < longest && sway(Math.exp(log - STEP)) > SWAY; log += STEP) {
    const value = miss(log)
    if (value === null || value < 0) return false
  }
  return true
}

/**
 * By how much of its size, at most, the share changes with the turning of the axis while the image distance grows by a share of its own.
 * The axis turns by so much of the angle at which the subject's centre is placed; a turn stretches most what lies farthest off the axis,
 * and, looking up or down, rolls the subject as well, of which the larger side comes into the smaller.
 */
function swayOf(
  { corners, centre }: Scene,
  { placement, frameWidth, frameHeight }: Setting,
): (image: number) => number {
  const off = Math.hypot(placement.across * frameWidth, placement.up * frameHeight)
  const spread = Math.max(...corners.map((corner) => angleBetween(corner, centre)))
  const steep = Math.atan2(Math.abs(centre.up), Math.hypot(centre.east, centre.north))
  return (image) => {
    if (off === 0) return 0
    const turned = Math.atan(off / image)
    const widest = Math.min(RIGHT_ANGLE, spread + turned)
    const steepest = Math.min(RIGHT_ANGLE, steep + turned)
    return (off / image) * (2 * Math.tan(widest) + LARGER_SIDE * Math.tan(steepest))
  }
}

const RIGHT_ANGLE = Math.PI / 2
/** How many times as large in the frame as its one side the other of a subject is taken to be. */
const LARGER_SIDE = 4

function angleBetween(one: LocalPoint, other: LocalPoint): number {
  const along = one.east * other.east + one.north * other.north + one.up * other.up
  const lengths = Math.hypot(one.east, one.north, one.up) * Math.hypot(other.east, other.north, other.up)
  return Math.acos(Math.max(-1, Math.min(1, along / lengths)))
}
