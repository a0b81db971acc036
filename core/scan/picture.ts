/** A picture of a scan: one arrangement but for its instant, with every demand measured that doesn't hang on the light. */
import { type Framing, type Extent, extentOf, framingOf } from '#core/frame/framing.ts'
import { fromSensor } from '#core/frame/lens-choice.ts'
import type { SetUp, Setting } from '#core/frame/set-up.ts'
import { sharpnessOf } from '#core/plan/assess.ts'
import { eyeOnGrid } from '#core/plan/ground-reading.ts'
import { shownShare } from '#core/plan/landmark-shown.ts'
import { seenFrom } from '#core/plan/plan-scene.ts'
import type { ScanWishKind } from '#core/record/scan-wishes.ts'
import {
  type Measure,
  type MeasuredDemand,
  landmarkFillMeasure,
  landmarkPlaceMeasure,
  landmarkShownMeasure,
  landmarkWholeMeasure,
  metBy,
  softnessMeasure,
  subjectFillMeasure,
} from './demands.ts'
import { cameraKeptOut } from './kept-out.ts'
import { framesBoth } from './picture-limits.ts'
import type { ScanLimit } from './scan-found.ts'
import type { FocalSample } from './scan-samples.ts'
import type { ScanTable } from './scan-table.ts'
import { NEVER, meets } from './score.ts'
import type { StandingPlace, TurnedSubject } from './stand-place.ts'

export interface Arranged {
  readonly subject: TurnedSubject
  readonly bearing: number
  readonly focal: FocalSample
  readonly setting: Setting
  readonly stood: StandingPlace & { readonly made: SetUp }
}

export interface ScanPicture extends Arranged {
  /** In the order of the demands, light left out. */
  readonly measured: readonly MeasuredDemand[]
  /** Sum of weight times degree over them. */
  readonly worth: number
}

/** What is measured of a picture as a whole. */
export interface Framed {
  readonly subject: Framing
  readonly landmarkExtent: Extent | null
  readonly landmark: Framing | null
}

function framed(table: ScanTable, { stood, setting }: Arranged): Framed {
  const { made, levels, frame } = stood
  const { frameWidth, frameHeight } = setting
  const standing = table.standing(levels.landmark)
  const landmarkExtent =
    standing === null ? null : extentOf(made.view, seenFrom(frame, standing.boundingPoints, table.shoot.refraction))
  return {
    subject: framingOf(made.subject, frameWidth, frameHeight),
    landmarkExtent,
    landmark: landmarkExtent === null ? null : framingOf(landmarkExtent, frameWidth, frameHeight),
  }
}

/** The limits that leave a picture out, keep-outs and what the camera can do; `early` stops at the first. */
export function limitsOf(table: ScanTable, arranged: Arranged, early: boolean): ScanLimit[] {
  const { stood, subject, focal } = arranged
  const limits: ScanLimit[] = []
  if (fromSensor(stood.made) < focal.lens.closestFocus) limits.push('closest-focus')
  if (early && limits.length > 0) return limits
  if (cameraKeptOut(table.out, subject.place.at, stood.at)) limits.push('keep-out')
  return limits
}

/** Measures that hang on the place or on the way to the camera alone. */
export type Beforehand = ReadonlyMap<ScanWishKind, MeasuredDemand>

/** The ground last: it costs the most. */
const CHEAP_FIRST: readonly ScanWishKind[] = [
  'subjectFill',
  'landmarkWhole',
  'landmarkFill',
  'landmarkPlace',
  'softness',
  'landmarkShown',
]

export interface Taken {
  readonly picture: ScanPicture
  readonly frame: Framed
  readonly limits: readonly ScanLimit[]
}

/** The picture with all its demands and limits, however many are missed. */
export function takePicture(table: ScanTable, arranged: Arranged, beforehand: Beforehand): Taken {
  const frame = framed(table, arranged)
  const limits = limitsOf(table, arranged, false)
  if (!framesBoth(frame.subject, arranged.stood.made.subject, frame.landmark, frame.landmarkExtent))
    limits.push('framing')
  const measured = new Map(beforehand)
  for (const kind of CHEAP_FIRST) {
    if (table.demands.includes(kind)) measured.set(kind, measureIn(table, arranged, frame, kind))
  }
  return { picture: pictureOf(table, arranged, measured), frame, limits }
}

/** The same for a picture that must meet all musts and limits: null at the first that it misses. */
export function takeGoodPicture(table: ScanTable, arranged: Arranged, beforehand: Beforehand): ScanPicture | null {
  if (limitsOf(table, arranged, true).length > 0) return null
  const frame = framed(table, arranged)
  if (!framesBoth(frame.subject, arranged.stood.made.subject, frame.landmark, frame.landmarkExtent)) return null
  const measured = new Map(beforehand)
  for (const kind of CHEAP_FIRST) {
    if (!table.demands.includes(kind)) continue
    const found = measureIn(table, arranged, frame, kind)
    if (found.must && !meets(found.margin)) return null
    measured.set(kind, found)
  }
  return pictureOf(table, arranged, measured)
}

function pictureOf(
  table: ScanTable,
  arranged: Arranged,
  found: ReadonlyMap<ScanWishKind, MeasuredDemand>,
): ScanPicture {
  const measured: MeasuredDemand[] = []
  let worth = 0
  for (const kind of table.demands) {
    const demand = found.get(kind)
    if (demand === undefined) continue
    measured.push(demand)
    worth += demand.weight * demand.degree
  }
  return { ...arranged, measured, worth }
}

function measureIn(table: ScanTable, arranged: Arranged, frame: Framed, kind: ScanWishKind): MeasuredDemand {
  return metBy(kind, table.wishes, measureOf(table, arranged, frame, kind) ?? { value: null, margin: NEVER })
}

function measureOf(table: ScanTable, arranged: Arranged, frame: Framed, kind: ScanWishKind): Measure | null {
  const { wishes } = table
  const { subject, landmarkExtent } = frame
  const landmark = landmarkExtent?.partlyBehind === true ? null : frame.landmark
  if (kind === 'subjectFill') return wishes.subjectFill && subjectFillMeasure(wishes.subjectFill, subject)
  if (kind === 'landmarkFill') return wishes.landmarkFill && landmarkFillMeasure(wishes.landmarkFill, landmark)
  if (kind === 'landmarkPlace')
    return wishes.landmarkPlace && landmarkPlaceMeasure(wishes.landmarkPlace, subject, landmark)
  if (kind === 'landmarkWhole') return landmarkWholeMeasure(wholeFramings(table, landmark, landmarkExtent))
  if (kind === 'softness') {
    const { stood, focal } = arranged
    const sharp = sharpnessOf(table.camera, focal.lens, table.shot.aperture, stood.made, landmarkExtent)
    return wishes.softness && softnessMeasure(wishes.softness, sharp.landmark?.share ?? null)
  }
  return (
    wishes.landmarkShown && landmarkShownMeasure(wishes.landmarkShown, shownOf(table, arranged), table.terrain !== null)
  )
}

function wholeFramings(
  { crops }: ScanTable,
  landmark: Framing | null,
  extent: Extent | null,
): readonly Framing[] | null {
  if (landmark === null || extent === null) return null
  return [landmark, ...crops.map(({ width, height }) => framingOf(extent, width, height))]
}

/** Share of the landmark's height that the ground lets the lens see. */
function shownOf({ terrain, standing, shoot }: ScanTable, { stood }: Arranged): number | null {
  const landmark = standing(stood.levels.landmark)
  if (terrain === null || landmark === null) return null
  const eye = eyeOnGrid(terrain, stood.at, stood.levels, stood.lensHeight)
  return shownShare(landmark.posts, terrain, eye, shoot)
}
