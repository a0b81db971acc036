/** The camera stood about a subject at one place: the scene from there, and how far off it must be for the subject's fill. */
import { imageSize, sideOf } from '#core/frame/fill.ts'
import { type Scene, type SetUp, type Setting, setUp } from '#core/frame/set-up.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type LocalFrame, localFrame } from '#core/geo/local-frame.ts'
import { type Levels, type KnownLevel, knownLevel, levelsFrom } from '#core/plan/plan.ts'
import { type SubjectPoints, sceneFrom, subjectPoints } from '#core/plan/plan-scene.ts'
import { nearestStand } from '#core/plan/stand.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { awayFrom, planeAt } from './drawn-shape.ts'
import type { FocalSample } from './scan-samples.ts'
import type { ScanTable } from './scan-table.ts'

/** A place with what is known of its ground. */
export interface StopPlace {
  readonly at: LatLon
  readonly plane: LocalFrame
  readonly level: KnownLevel
}

export function stopPlace({ request }: ScanTable, at: LatLon): StopPlace {
  return { at, plane: planeAt(at), level: knownLevel(null, request, at) }
}

/** The subject at a place and a heading; its points are set out again only where its level depends on the camera's. */
export interface TurnedSubject {
  readonly place: StopPlace
  readonly heading: number
  readonly points: (level: number) => SubjectPoints
}

export function turnedSubject({ shoot, shot }: ScanTable, place: StopPlace, heading: number): TurnedSubject {
  let known: { readonly level: number; readonly points: SubjectPoints } | null = null
  return {
    place,
    heading,
    points: (level) => {
      if (known === null || known.level !== level) {
        const ground = localFrame(place.at, level)
        known = { level, points: subjectPoints(shoot.subject, heading, shot.focus.behindFront, ground) }
      }
      return known.points
    },
  }
}

/** Where the camera stands, and what it has before it. */
export interface StandingPlace {
  readonly at: LatLon
  readonly levels: Levels
  readonly lensHeight: number
  readonly frame: LocalFrame
  readonly scene: Scene
}

/** The camera `distance` metres from the subject toward a bearing. */
export function standing(
  { request, foot, landmark, shoot }: ScanTable,
  subject: TurnedSubject,
  bearing: number,
  distance: number,
  lensHeight: number,
): StandingPlace {
  const { plane, level } = subject.place
  const at = awayFrom(plane, bearing, distance)
  const levels = levelsFrom(knownLevel(null, request, at), level, foot, landmark !== null)
  const frame = localFrame(at, levels.standpoint + lensHeight)
  return { at, levels, lensHeight, frame, scene: sceneFrom(frame, subject.points(levels.stop), shoot.refraction) }
}

export interface StoodForFill extends StandingPlace {
  readonly distance: number
  readonly made: SetUp
}

/** Metres from the subject's centre beyond which nobody looks for a standpoint. */
const FARTHEST = 20_000
const ROUNDS = 24
/** Relative miss of the fill at which the search ends: earth-centred coordinates are no finer than a nanometre in some metres. */
const FILLED = 3e-9

/** A distance at which a subject of about this size fills about so much: the first guess. */
export function guessedDistance(
  { shoot, fillAxis }: ScanTable,
  setting: Setting,
  bearing: number,
  heading: number,
  focalLength: number,
  share: number,
): number {
  const { length, width, height } = shoot.subject
  const turn = (bearing - heading) * RADIANS_PER_DEGREE
  const wide = Math.abs(Math.sin(turn)) * length + Math.abs(Math.cos(turn)) * width
  const side = fillAxis === 'width' ? setting.frameWidth : setting.frameHeight
  return (focalLength * (fillAxis === 'width' ? wide : height)) / (share * side)
}

/** Told of the first set-up that nearly fills as wished; false gives the search up. */
export type Glance = (near: StandingPlace, made: SetUp, distance: number) => boolean

/** Relative miss of the fill within which a glance tells what the picture will be like. */
const NEARLY = 0.1

/**
 * The standpoint on a bearing from which the subject takes a share of the frame, by secants over logarithms, the share falling nearly
 * in proportion to the distance; null when there is none, and when the glance says so.
 */
export function standForShare(
  table: ScanTable,
  subject: TurnedSubject,
  bearing: number,
  { focalLength }: FocalSample,
  setting: Setting,
  share: number,
  lensHeight: number,
  guess: number,
  glance: Glance | null = null,
): StoodForFill | null {
  const nearest = Math.log(nearestStand(table.shoot.subject))
  const farthest = Math.log(FARTHEST)
  let [low, high] = [nearest, farthest]
  let log = Math.min(high, Math.max(low, Math.log(guess)))
  let before: { readonly log: number; readonly miss: number } | null = null
  let made: SetUp | null = null
  let unlooked = glance !== null
  for (let round = 0; round < ROUNDS; round++) {
    const distance = Math.exp(log)
    const there = standing(table, subject, bearing, distance, lensHeight)
    made = setUp(there.scene, setting, focalLength, made)
    if (made === null) {
      // Too near for any image.
      low = log
      if (high - low < 1e-9) return null
      before = null
      log = Math.min((low + high) / 2, log + 0.7)
      continue
    }
    const miss = Math.log(imageSize(made.subject, table.fillAxis) / (sideOf(made.view, table.fillAxis) * share))
    if (unlooked && Math.abs(miss) < NEARLY) {
      if (glance !== null && !glance(there, made, distance)) return null
      unlooked = false
    }
    if (Math.abs(miss) < FILLED) return { ...there, distance, made }
    // At the nearest place it still takes less, at the farthest still more.
    if ((log === nearest && miss < 0) || (log === farthest && miss > 0)) return null
    if (miss > 0) low = log
    else high = log
    const slope: number = before === null || log === before.log ? -1 : (miss - before.miss) / (log - before.log)
    before = { log, miss }
    const next: number = log - miss / (slope < -0.2 ? slope : -1)
    if (next > low && next < high) log = next
    else if (next <= low && low === nearest) log = nearest
    else if (next >= high && high === farthest) log = farthest
    else log = (low + high) / 2
  }
  return null
}
