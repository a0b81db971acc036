/** The focal length for a fill of every usual subject, from right beside it on: held to a sweep over all focal lengths. */
import { type Arbitrary, assert, constantFrom, integer, oneof, property, record } from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  FOCUS_ON,
  type Scene,
  type Setting,
  type SetUp,
  focalLengthOf,
  lookAt,
  setUp,
  subjectShare,
} from '#core/frame/set-up.ts'
import { setUpForFill } from '#core/frame/set-up-for-fill.ts'
import { type LocalPoint, localFrame } from '#core/geo/local-frame.ts'
import { boxCorners, subjectPoint } from '#core/scene/box.ts'
import { SUBJECT_KINDS, SUBJECT_PRESETS, type SubjectKind } from '#core/scene/subject.ts'

const FRAME = localFrame({ lat: 47, lon: 8 }, 0)

interface Stand {
  readonly kind: SubjectKind
  readonly heading: number
  /** Natural logarithm of the metres to the box. */
  readonly off: number
  readonly lensHeight: number
  readonly across: number
  readonly up: number
  readonly on: (typeof FOCUS_ON)[number]
  readonly upright: boolean
  readonly axis: 'width' | 'height'
  /** Natural logarithm of the wished share. */
  readonly share: number
}

/** Any number from one to another, all as likely: among doubles nearly all lie next to 0. */
function number(min: number, max: number): Arbitrary<number> {
  return integer({ min: 0, max: 1_000_000 }).map((part) => min + ((max - min) * part) / 1_000_000)
}

const SHOTS = record<Stand>({
  kind: constantFrom(...SUBJECT_KINDS),
  heading: number(0, 360),
  off: oneof(number(Math.log(0.2), Math.log(1)), number(Math.log(0.2), Math.log(30))),
  lensHeight: number(0.1, 2.6),
  across: oneof(constantFrom(0), number(-0.5, 0.5)),
  up: oneof(constantFrom(0), number(-0.5, 0.5)),
  on: constantFrom(...FOCUS_ON),
  upright: constantFrom(false, true),
  axis: constantFrom('width', 'height'),
  share: number(Math.log(0.02), Math.log(20)),
})

/** The subject north of the camera, its box so far off along that line. */
function sceneAt({ kind, heading, off, lensHeight }: Stand): Scene {
  const size = SUBJECT_PRESETS[kind]
  const subject = { kind, name: '', features: [], ...size }
  const turn = (heading * Math.PI) / 180
  const halfDepth = Math.min(
    size.length / 2 / Math.max(1e-9, Math.abs(Math.cos(turn))),
    size.width / 2 / Math.max(1e-9, Math.abs(Math.sin(turn))),
  )
  const before = ({ east, north, up }: LocalPoint): LocalPoint => ({
    east,
    north: north + halfDepth + Math.exp(off),
    up: up - lensHeight,
  })
  return {
    frame: FRAME,
    corners: boxCorners(subject, heading).map(before),
    centre: before({ east: 0, north: 0, up: size.height / 2 }),
    feature: before(subjectPoint(heading, size.length / 4, 0, size.height / 2)),
    refraction: 0,
  }
}

function settingAt({ across, up, on, upright }: Stand): Setting {
  const [frameWidth, frameHeight] = upright ? [24, 36] : [36, 24]
  return { frameWidth, frameHeight, placement: { across, up }, focus: { on, behindFront: 0 } }
}

interface Tried {
  readonly focal: number
  readonly made: SetUp
  readonly miss: number
}

/** The longest of the focal lengths at which the share passes the wish, by trying one after the other from the longest on. */
function longestBySweep(scene: Scene, setting: Setting, share: number, axis: Stand['axis']): number | null {
  const tryOut = (focal: number): Tried | null => {
    const made = setUp(scene, setting, focal)
    return made === null ? null : { focal, made, miss: subjectShare(made, axis) - share }
  }
  let longer: Tried | null = null
  // Nothing is focused beyond its farthest corner, nor shown larger than life.
  const longest = 500 * Math.max(...scene.corners.map(({ east, north, up }) => Math.hypot(east, north, up)))
  for (let focal = longest; focal > 0.5; focal /= 1.02) {
    const tried = tryOut(focal)
    if (tried !== null && longer !== null && tried.miss > 0 !== longer.miss > 0) {
      let [low, high] = [tried, longer]
      for (let halving = 0; halving < 60; halving++) {
        const middle = tryOut(Math.sqrt(low.focal * high.focal))
        if (middle === null) break
        if (middle.miss > 0 === low.miss > 0) low = middle
        else high = middle
      }
      // Else one focal length has two pictures, or a gap: the share leaps over the wish and never is it.
      if (Math.abs(low.miss - high.miss) < 1e-9 * share) return low.focal
    }
    longer = tried
  }
  return null
}

describe('the focal length for a fill of a usual subject, from 0.2 m before it on', () => {
  it('is the longest that a sweep over all of them finds, gives the fill, and is missing only where the sweep finds none', () => {
    let [found, none, near] = [0, 0, 0]
    assert(
      property(SHOTS, (stand) => {
        const [scene, setting, share, { axis }] = [sceneAt(stand), settingAt(stand), Math.exp(stand.share), stand]
        const made = setUpForFill(scene, setting, { share, axis })
        const swept = longestBySweep(scene, setting, share, axis)
        if (made === null) {
          none++
          expect(swept).toBeNull()
          return
        }
        found++
        if (stand.off < Math.log(0.5)) near++
        const alone = setUp(scene, setting, made.focalLength)
        expect(Math.abs((alone === null ? 0 : subjectShare(alone, axis)) / share - 1)).toBeLessThan(1e-9)
        // The sweep may step over what is crossed and crossed back, never the other way round.
        expect(made.focalLength).toBeGreaterThan((swept ?? 0) * (1 - 1e-7))
      }),
      { numRuns: 200 },
    )
    expect(found).toBeGreaterThan(40)
    expect(near).toBeGreaterThan(5)
    expect(none).toBeGreaterThan(0)
  }, 120_000)
})

describe('a set-up from right beside a usual subject', () => {
  it('has aim and focus that belong together at whatever focal length, and is there for every look at the subject', () => {
    assert(
      property(SHOTS, number(Math.log(8), Math.log(300)), (stand, log) => {
        const [scene, setting, focal] = [sceneAt(stand), settingAt(stand), Math.exp(log)]
        const made = setUp(scene, setting, focal)
        if (made !== null) {
          // 1 / f = 1 / u + 1 / v.
          const sum = 1 / (made.focusDistance * 1000) + 1 / made.view.imageDistance
          expect(Math.abs(sum * focal - 1)).toBeLessThan(1e-10)
          expect(made.subject.partlyBehind).toBe(false)
        }
        const look = lookAt(scene, setting, focal)
        const had = look === null ? null : focalLengthOf(look)
        // The search goes by steps of a fiftieth: a stretch of looks that is narrower may be missed.
        const isWide = [0.96, 1.04].every((part) => {
          const beside = lookAt(scene, setting, focal * part)
          return beside !== null && focalLengthOf(beside) !== null
        })
        if (had !== null && isWide) expect(setUp(scene, setting, had)).not.toBeNull()
      }),
      { numRuns: 1000 },
    )
  })
})
