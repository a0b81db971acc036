/** All pictures at one place that meet the musts: the loops over headings, ways to the camera, lenses, heights and fills, cheap first. */
import { geodesicLine } from '#core/geo/geodesic.ts'
import type { SetUp, Setting } from '#core/frame/set-up.ts'
import { wrapBearing } from '#core/units/angle.ts'
import { type MeasuredDemand, metBy, subjectViewMeasure } from './demands.ts'
import {
  type BallFrom,
  type LandmarkBall,
  ballFrom,
  couldShow,
  inView,
  landmarkBall,
  mostShare,
} from './landmark-ball.ts'
import { type Beforehand, type ScanPicture, takeGoodPicture } from './picture.ts'
import type { FocalSample } from './scan-samples.ts'
import { turnSamples } from './scan-places.ts'
import type { ScanTable } from './scan-table.ts'
import { meets } from './score.ts'
import {
  type StandingPlace,
  type StopPlace,
  type TurnedSubject,
  guessedDistance,
  standForShare,
  turnedSubject,
} from './stand-place.ts'

/** Ways from the subject to the camera, the first straight away from the landmark, so that one of them has it behind. */
export function waysToCamera({ landmarkAt, request }: ScanTable, place: StopPlace): number[] {
  const toward = landmarkAt === null ? null : geodesicLine(place.at, landmarkAt).bearing
  const first = toward === null ? 0 : toward + 180
  const count = turnSamples(request.steps.bearing)
  return Array.from({ length: count }, (_, index) => wrapBearing(first + (index * 360) / count))
}

/** The view of the subject from a way; null where none is demanded. */
export function viewMeasured(table: ScanTable, heading: number, way: number): MeasuredDemand | null {
  const demand = table.wishes.subjectView
  return demand === null ? null : metBy('subjectView', table.wishes, subjectViewMeasure(demand, heading, way))
}

/** The landmark as the glances at a place know it. */
export interface Glimpse {
  readonly ball: LandmarkBall
  readonly from: BallFrom
}

/** Null where no must needs the landmark in the frame. */
export function glimpseOf(table: ScanTable, { plane, level }: StopPlace): Glimpse | null {
  const standing = table.landmarkInFrame ? table.standing(table.foot.level ?? level.level ?? 0) : null
  if (standing === null) return null
  const ball = landmarkBall(standing)
  return { ball, from: ballFrom(plane, ball) }
}

/** Combinations of lens, placement, height and fill that are tried on each way. */
export function triedOnWay({ focals, settings, heights, fills }: ScanTable): number {
  return focals.length * settings.length * heights.length * fills.length
}

/** How far off the camera is at most, metres; more than enough. */
function farthestCamera(table: ScanTable, setting: Setting, focalLength: number): number {
  const { length, width, height } = table.shoot.subject
  const least = Math.min(...table.fills.map(({ share }) => share))
  const size = table.fillAxis === 'width' ? Math.hypot(length, width) : height + Math.hypot(length, width)
  const side = table.fillAxis === 'width' ? setting.frameWidth : setting.frameHeight
  return (1.5 * focalLength * size) / (least * side) + 2 * length
}

/** Focal lengths with which the landmark can take the least that it must, from anywhere about the place. */
function reachingFocals(table: ScanTable, glimpse: Glimpse | null): readonly FocalSample[] {
  const must = table.wishes.landmarkFill
  const [setting] = table.settings
  if (glimpse === null || must === null || !must.must || setting === undefined) return table.focals
  const { east, north, up, radius } = glimpse.from
  const far = Math.hypot(east, north, up)
  const side = must.axis === 'width' ? setting.frameWidth : setting.frameHeight
  return table.focals.filter(({ focalLength }) => {
    const nearest = far - farthestCamera(table, setting, focalLength)
    return mostShare(radius, nearest, setting, focalLength, side) >= must.least
  })
}

/** Radians of doubt about a view whose camera stands a tenth nearer or farther than it will. */
function doubt(standing: StandingPlace, distance: number, far: number): number {
  return 0.01 + 0.12 * (Math.abs(standing.scene.centre.up) / distance + distance / Math.max(far, distance))
}

export interface Tried {
  readonly pictures: ScanPicture[]
  /** Combinations tried so far. */
  count: number
  /** Work since it was last put down, in the cost of one picture. */
  work: number
}

/** Work after which it may be put down: some milliseconds. */
export const ENOUGH_WORK = 400
/** What a glance costs of a picture. */
const GLANCE = 0.02

/** What is measured before a picture is taken: of the place, and of the way to the camera there. */
export function knownBeforehand(...measured: readonly (MeasuredDemand | null)[]): Beforehand {
  return new Map(measured.flatMap((demand) => (demand === null ? [] : [[demand.kind, demand] as const])))
}

/** Fills `tried`; `parking` is what is measured of the place itself. Puts the work down now and then. */
export function* picturesAt(
  table: ScanTable,
  place: StopPlace,
  headings: readonly number[],
  parking: MeasuredDemand | null,
  tried: Tried,
): Generator<void, void> {
  const ways = waysToCamera(table, place)
  const glimpse = glimpseOf(table, place)
  const focals = reachingFocals(table, glimpse)
  const onWay = triedOnWay(table)
  if (focals.length === 0) {
    tried.count += headings.length * ways.length * onWay
    return
  }
  for (const heading of headings) {
    const subject = turnedSubject(table, place, heading)
    for (const way of ways) {
      const view = viewMeasured(table, heading, way)
      if (view !== null && view.must && !meets(view.margin)) {
        tried.count += onWay
        continue
      }
      const known = knownBeforehand(parking, view)
      for (const focal of focals) {
        tried.work += onFocal(table, subject, way, focal, known, glimpse, tried.pictures)
        if (tried.work > ENOUGH_WORK) yield
      }
      tried.count += onWay
    }
  }
}

/** One focal length on one way; tells the work it took. */
function onFocal(
  table: ScanTable,
  subject: TurnedSubject,
  way: number,
  focal: FocalSample,
  beforehand: Beforehand,
  glimpse: Glimpse | null,
  pictures: ScanPicture[],
): number {
  let work = 0
  const { focalLength } = focal
  const { length } = table.shoot.subject
  const glance =
    glimpse === null
      ? null
      : (near: StandingPlace, made: SetUp, distance: number): boolean => {
          const { east, north, up } = glimpse.from
          return inView(glimpse.ball, made.view, doubt(near, distance, Math.hypot(east, north, up) - distance))
        }
  for (const setting of table.settings) {
    // How far the last camera stood, against the guess.
    let scale = 1
    for (const { share } of table.fills) {
      const guess = guessedDistance(table, setting, way, subject.heading, focalLength, share)
      work += GLANCE
      if (glimpse !== null && !couldShow(glimpse.from, setting, focalLength, way, guess, guess + length)) continue
      for (const lensHeight of table.heights) {
        work++
        const stood = standForShare(table, subject, way, focal, setting, share, lensHeight, guess * scale, glance)
        if (stood === null) continue
        scale = stood.distance / guess
        const picture = takeGoodPicture(table, { subject, bearing: way, focal, setting, stood }, beforehand)
        if (picture !== null) pictures.push(picture)
      }
    }
  }
  return work
}
