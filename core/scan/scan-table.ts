/** What is the same at every place of a scan, made ready once: samples, settings, the landmark's points, keep-outs, demands. */
import { type FillWish, type FrameAxis } from '#core/frame/fill.ts'
import type { Setting } from '#core/frame/set-up.ts'
import { type Crop, cropSize } from '#core/frame/crop.ts'
import type { EarthPoint } from '#core/geo/local-frame.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { LightWishes } from '#core/light/light-wish.ts'
import type { Camera } from '#core/optics/sensor.ts'
import { type StandingPost, footOnGrid, postsOnGrid } from '#core/plan/landmark-shown.ts'
import { settingFor } from '#core/plan/plan-scene.ts'
import { type KnownLevel, footLevel, landmarkOf } from '#core/plan/plan.ts'
import type { ScanWishKind, ScanWishes } from '#core/record/scan-wishes.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Shot, Spot } from '#core/record/spot.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle, landmarkBoundingPoints } from '#core/scene/bounding-points.ts'
import { demandsMade } from './demands.ts'
import { type KeptOutGround } from './kept-out.ts'
import type { ScanRequest } from './scan-request.ts'
import { keptOutOf } from './scan-places.ts'
import {
  type FocalSample,
  fillSamples,
  focalSamples,
  heightSamples,
  instantSamples,
  looksAtLight,
  placementSamples,
} from './scan-samples.ts'

/** The landmark with its foot at one level: earth-centred points, and posts on the elevations. */
export interface StandingLandmark {
  readonly level: number
  readonly boundingPoints: readonly EarthPoint[]
  readonly posts: readonly StandingPost[]
}

export interface ScanTable {
  readonly request: ScanRequest
  readonly shoot: Shoot
  readonly spot: Spot
  readonly shot: Shot
  readonly camera: Camera
  readonly wishes: ScanWishes
  readonly light: LightWishes
  readonly terrain: ElevationGrid | null
  readonly landmark: Landmark | null
  readonly landmarkAt: LatLon | null
  readonly foot: KnownLevel
  /** Demands that count, and the sum of their weights. */
  readonly demands: readonly ScanWishKind[]
  readonly weights: number
  /** Whether a must needs a part of the landmark in the frame. */
  readonly landmarkInFrame: boolean
  readonly focals: readonly FocalSample[]
  readonly fills: readonly FillWish[]
  readonly fillAxis: FrameAxis
  readonly heights: readonly number[]
  /** The camera's setting for each placement tried. */
  readonly settings: readonly Setting[]
  /** Millimetres of the crops in the shot's orientation, where the landmark must be whole in them too. */
  readonly crops: readonly { readonly width: number; readonly height: number }[]
  readonly lit: boolean
  readonly instants: readonly number[]
  readonly out: KeptOutGround
  /** The landmark at a foot level; kept while the level stays. */
  readonly standing: (level: number) => StandingLandmark | null
}

const IN_FRAME: readonly ScanWishKind[] = ['landmarkFill', 'landmarkWhole', 'landmarkPlace']

function cropsThatCount(shoot: Shoot, setting: Setting): ScanTable['crops'] {
  if (shoot.scanWishes.landmarkWhole?.crops !== true) return []
  return shoot.crops.map((crop: Crop) => cropSize(crop, setting.frameWidth, setting.frameHeight))
}

function rememberedStanding(
  landmark: Landmark | null,
  terrain: ElevationGrid | null,
  { from }: KnownLevel,
): ScanTable['standing'] {
  let known: StandingLandmark | null = null
  return (level) => {
    if (landmark === null) return null
    if (known?.level !== level) {
      const posts = terrain === null ? [] : postsOnGrid(terrain, landmark, footOnGrid(terrain, landmark, level, from))
      known = { level, boundingPoints: landmarkBoundingPoints(landmark, level), posts }
    }
    return known
  }
}

export function scanTable(request: ScanRequest, instants: readonly number[] = instantSamples(request)): ScanTable {
  const { shoot, spot, terrain, steps } = request
  const { shot } = spot
  const { camera, lenses } = shoot.bag
  const landmark = landmarkOf(shoot, spot)
  const wishes = shoot.scanWishes
  const demands = demandsMade(shoot)
  const fills = fillSamples(request)
  const settings = placementSamples(request).map((placement) =>
    settingFor(camera, { placement, focus: shot.focus }, shot.orientation),
  )
  const [setting] = settings
  const foot = footLevel(landmark, request)
  return {
    request,
    shoot,
    spot,
    shot,
    camera,
    wishes,
    light: shoot.light,
    terrain,
    landmark,
    landmarkAt: landmark === null ? null : landmarkMiddle(landmarkPoints(landmark)),
    foot,
    demands,
    weights: demands.reduce((sum, kind) => sum + (wishes[kind]?.weight ?? 0), 0),
    landmarkInFrame: IN_FRAME.some((kind) => wishes[kind]?.must === true),
    focals: focalSamples(lenses, steps.focalLengths),
    fills,
    fillAxis: fills[0]?.axis ?? shot.subjectFill.axis,
    heights: heightSamples(wishes, steps.heights),
    settings,
    crops: setting === undefined ? [] : cropsThatCount(shoot, setting),
    lit: looksAtLight(request),
    instants,
    out: keptOutOf(request),
    standing: rememberedStanding(landmark, terrain, foot),
  }
}
