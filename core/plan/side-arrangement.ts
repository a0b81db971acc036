/** One side of a landmark, arranged: as far from it as its wanted size and the subject's both fit with a lens of the bag, clear of it, both in the frame. */
import { rootNear } from '#core/frame/bracketed-root.ts'
import { sideOf } from '#core/frame/fill.ts'
import { destination, geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { Lens } from '#core/optics/lens.ts'
import { newSpot } from '#core/record/new-records.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Shot, Spot } from '#core/record/spot.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { degrees } from '#core/units/angle.ts'
import { spotFollowing } from './arrange.ts'
import { type Assessment, assess } from './assess.ts'
import { settingOf } from './plan-scene.ts'
import { type Plan, planOf } from './plan.ts'
import type { Problem } from './problem.ts'
import { bearingAwayFromLandmark, landmarkShareHere, standForFill, standingAt } from './stand.ts'

/** What a new spot is known by, and when it is planned for until its light has been looked up. */
export interface NewSpotParts {
  readonly id: string
  readonly rank: number
  readonly when: number
}

export interface SideArrangement {
  readonly plan: Plan
  readonly found: Assessment
  /** Both sizes are as wanted, with a lens of the bag and whole in the frame. */
  readonly fits: boolean
}

/** Metres from a landmark's outermost point within which nothing is laid. */
const CLEAR_OF_LANDMARK = 10
/** Metres beyond which a landmark is seldom seen through the air. */
const FARTHEST = 30_000
/** A landmark as high as wanted that is wider than this share of the frame is wanted by its width instead. */
const WIDEST = 0.85
const WIDE_FILL = { share: 0.8, axis: 'width' } as const
/** Share of the frame that stays free at its edges, and between a subject that stands upright and what is beside it. */
const EDGE = 0.04
const BETWEEN = 0.06
/** Relative miss of the landmark's share at which the search ends, and from which it does not count as fitting. */
const SOUGHT = 1e-6
const FITS = 0.02

const SPOILT: ReadonlySet<Problem> = new Set<Problem>([
  'on-top-of-each-other',
  'inside-subject',
  'landmark-behind-camera',
  'landmark-partly-behind-camera',
  'landmark-nearer-than-subject',
  'fill-cannot-be',
  'aim-cannot-be',
  'no-lens-reaches',
  'focal-length-outside-lens',
  'focus-too-near',
])

/** Metres from the landmark's middle to its outermost point on the ground. */
function reachOf(landmark: Landmark, middle: LatLon): number {
  const half = landmark.kind === 'building' ? 0 : landmark.width / 2
  return half + Math.max(...landmarkPoints(landmark).map((at) => geodesicDistance(middle, at)))
}

/** The focal lengths to try, the ordinary one first: as the eye sees with that sensor, then longer and shorter ones that the bag has. */
export function focalLengthsToTry({ bag }: Pick<Shoot, 'bag'>): readonly number[] {
  const { sensorWidth, sensorHeight } = bag.camera
  const usual = 50 * (Math.hypot(sensorWidth, sensorHeight) / Math.hypot(36, 24))
  const wanted = [1, 1.4, 0.7, 2, 0.5, 2.8, 4, 0.35, 6].map((factor) => usual * factor)
  if (bag.lenses.length === 0) return [usual]
  const found = new Set(wanted.flatMap((focal) => bag.lenses.map((lens) => within(lens, focal))))
  return [...found].toSorted((one, other) => Math.abs(Math.log(one / usual)) - Math.abs(Math.log(other / usual)))
}

/** A hair within the ends of a zoom, so that what is solved again on another ground still lies in it. */
function within({ focalMin, focalMax }: Lens, focal: number): number {
  if (focalMin === focalMax) return focalMin
  const inside = Math.min(0.002, Math.log(focalMax / focalMin) / 4)
  return Math.min(focalMax * Math.exp(-inside), Math.max(focalMin * Math.exp(inside), focal))
}

/** What is settled step by step: the sizes, where the subject lies in the frame, how far the camera stands off the line of both. */
interface Layout {
  readonly shot: Pick<Shot, 'focalLength' | 'subjectFill' | 'landmarkFill' | 'placement'>
  /** Degrees. */
  readonly aside: number
}

/** The arrangement on the side that lies toward `bearing` from the landmark's middle, at a focal length; null where there is no such side. */
export function arrangedOnSide(
  shoot: Shoot,
  parts: NewSpotParts,
  bearing: number,
  focalLength: number,
  terrain: ElevationGrid | null,
): SideArrangement | null {
  const [landmark] = shoot.landmarks
  const middle = landmark === undefined ? null : landmarkMiddle(landmarkPoints(landmark))
  if (landmark === undefined || middle === null) return null
  const side: Side = { shoot, parts, bearing, terrain, middle, nearest: reachOf(landmark, middle) }
  const first: Layout = { shot: shotAt(side, focalLength), aside: 0 }
  let made = solved(side, first, Math.max(2 * side.nearest, 200))
  if (made === null) return null
  let layout = first
  for (const settle of [wantedByWidth, putBeside, roomForBoth, tilted]) {
    const next = settle(made.arrangement, layout)
    const again: Solved | null = next === layout ? made : solved(side, next, made.gap)
    if (again === null) continue
    layout = next
    made = again
  }
  return made.arrangement
}

interface Side {
  readonly shoot: Shoot
  readonly parts: NewSpotParts
  readonly bearing: number
  readonly terrain: ElevationGrid | null
  readonly middle: LatLon
  readonly nearest: number
}

interface Solved {
  readonly arrangement: SideArrangement
  /** Metres from the landmark's middle to the subject. */
  readonly gap: number
}

function shotAt(side: Side, focalLength: number): Layout['shot'] {
  const { shot } = newSpot('', side.shoot, side.middle, 0, 0)
  const { subjectFill, landmarkFill, placement } = shot
  return { focalLength, subjectFill, landmarkFill, placement }
}

/** The bare spot so far from the landmark, the camera somewhere on its bearing; null where no bearing leads to the landmark. */
function planAt(side: Side, { shot, aside }: Layout, gap: number, away: number | null): Plan | null {
  const { shoot, parts } = side
  const spot = newSpot(parts.id, shoot, destination(side.middle, side.bearing, gap), parts.rank, parts.when)
  const plan = planOf(shoot, { ...spot, shot: { ...spot.shot, ...shot } }, side.terrain)
  const line = bearingAwayFromLandmark(plan)
  if (line === null) return null
  return standingAt(plan, line + aside, away ?? geodesicDistance(spot.stop.at, spot.standpoint.at))
}

function solved(side: Side, layout: Layout, guess: number): Solved | null {
  const { nearest } = side
  const near = nearest + CLEAR_OF_LANDMARK
  const begun = planAt(side, layout, Math.max(near, guess), null)
  const stood = begun === null ? null : standForFill(begun)
  if (stood?.ok !== true) return null
  const away = geodesicDistance(stood.value.stop.at, stood.value.standpoint.at)
  // The camera stands behind the subject as the landmark sees it, so what is clear of the subject's place is clear of the camera's.
  const excess = (log: number): number | null => {
    const plan = planAt(side, layout, Math.exp(log), away)
    const share = plan === null ? null : landmarkShareHere(plan)
    return share === null || share <= 0 ? null : Math.log(share / layout.shot.landmarkFill.share)
  }
  const [least, most] = [Math.log(near), Math.log(Math.max(near * 2, FARTHEST))]
  const root = rootNear(excess, Math.log(Math.max(near, guess)), least, most, SOUGHT)
  // A landmark too small stays as large as it gets, one too large as small as it gets.
  const gap = Math.exp(root ?? ((excess(most) ?? -1) > 0 ? most : least))
  const plan = planAt(side, layout, gap, away)
  if (plan === null) return null
  const arrangement = judged(plan)
  return { arrangement, gap }
}

function judged(plan: Plan): SideArrangement {
  const { lenses } = plan.shoot.bag
  const { focalLength } = plan.spot.shot
  // With a prime one walks: it is held, since no other focal length is to be had.
  const prime = lenses.some(({ focalMin, focalMax }) => focalMin === focalMax && focalMin === focalLength)
  const spot: Spot = prime ? { ...plan.spot, hold: 'focal-length' } : spotFollowing(plan)
  const made = { ...plan, spot }
  const found = assess(made)
  const { subjectFill, landmarkFill } = spot.shot
  const took = (framing: Assessment['subject'], axis: 'width' | 'height'): number =>
    (axis === 'width' ? framing?.widthFill : framing?.heightFill) ?? 0
  const near = (value: number, wanted: number): boolean => Math.abs(value / wanted - 1) < FITS
  const fits =
    !found.problems.some((problem) => SPOILT.has(problem)) &&
    near(took(found.subject, subjectFill.axis), subjectFill.share) &&
    near(took(found.landmark, landmarkFill.axis), landmarkFill.share) &&
    found.landmark?.whole === true &&
    found.subject?.whole === true
  return { plan: made, found, fits }
}

function wantedByWidth({ found }: SideArrangement, layout: Layout): Layout {
  if ((found.landmark?.widthFill ?? 0) <= WIDEST) return layout
  return { ...layout, shot: { ...layout.shot, landmarkFill: WIDE_FILL } }
}

/** Somebody who stands upright gets the landmark beside them: straight behind, it would grow out of their head. */
function putBeside({ plan, found }: SideArrangement, layout: Layout): Layout {
  const { length, width, height } = plan.shoot.subject
  const { subject, landmark } = found
  if (subject === null || landmark === null || height <= Math.max(length, width)) return layout
  const whole = subject.widthFill + BETWEEN + landmark.widthFill
  if (whole > 1 - 2 * EDGE) return layout
  const apart = (subject.widthFill + landmark.widthFill) / 2 + BETWEEN
  const setting = settingOf(plan, plan.spot.shot.orientation)
  const aside = degrees(Math.atan((apart * sideOf(setting, 'width')) / layout.shot.focalLength))
  const placement = { ...layout.shot.placement, across: (subject.widthFill - whole) / 2 }
  return { shot: { ...layout.shot, placement }, aside: -aside }
}

/** Bounds of both together, from the frame's middle in shares of its height; null without one of them. */
function bothBounds({ subject, landmark }: Assessment): { readonly top: number; readonly bottom: number } | null {
  if (subject === null || landmark === null) return null
  return { top: Math.max(subject.top, landmark.top), bottom: Math.min(subject.bottom, landmark.bottom) }
}

/** A subject that leaves the landmark no room above it, as a low one looked down on, is wanted smaller: from farther back both go in. */
function roomForBoth({ found }: SideArrangement, layout: Layout): Layout {
  const both = bothBounds(found)
  const above = found.landmark?.heightFill ?? 0
  if (both === null || both.top - both.bottom <= 1 - 2 * EDGE || above >= 0.5) return layout
  const room = (1 - 2 * EDGE - above) / (both.top - both.bottom - above)
  const { subjectFill } = layout.shot
  return { ...layout, shot: { ...layout.shot, subjectFill: { ...subjectFill, share: subjectFill.share * room } } }
}

/** The camera tilted so that both together lie in the middle of the frame: nothing is cut, and less of it is bare ground. */
function tilted({ found }: SideArrangement, layout: Layout): Layout {
  const both = bothBounds(found)
  if (both === null) return layout
  const { top, bottom } = both
  const up = Math.max(-0.45, Math.min(0.45, layout.shot.placement.up - (top + bottom) / 2))
  return { ...layout, shot: { ...layout.shot, placement: { ...layout.shot.placement, up } } }
}
