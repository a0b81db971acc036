/** What stands in the way of a scan, or should be known before it starts: every trouble at once, each with its ground and figures. */
import { ringCrossesItself } from '#core/geo/ring-crossing.ts'
import { elevationAtPlace } from '#core/ground/elevation-grid.ts'
import { type WishKind, contradictions } from '#core/light/light-wish.ts'
import { landmarkOf } from '#core/plan/plan.ts'
import type { Band, ScanWishKind, ScanWishes } from '#core/record/scan-wishes.ts'
import type { StoppingGround } from '#core/record/stopping-ground.ts'
import { civilDay } from '#core/time/civil.ts'
import { LANDMARK_DEMANDS, demandsMade } from './demands.ts'
import { areaOf, planeBoxAround, onPlane, planeAt } from './drawn-shape.ts'
import { type KeptOutGround, subjectKeptOut } from './kept-out.ts'
import type { ScanRequest, ScanSteps } from './scan-request.ts'
import { scanCost } from './scan-cost.ts'
import type { ScanCost } from './scan-found.ts'
import { keptOutOf, measuredLine, sampledPlaces } from './scan-places.ts'

/** Bands that may have been drawn upside down. */
export type BandName = 'subjectFill' | 'landmarkFill' | 'subjectView' | 'softness' | 'lensHeight'

type TroubleReason =
  | { readonly reason: 'no-ground' | 'empty-bag' | 'hours-empty' | 'no-parking' }
  /** Metres of a line, square metres of an area. */
  | { readonly reason: 'line-too-short'; readonly length: number }
  | { readonly reason: 'area-too-few-corners'; readonly corners: number }
  | { readonly reason: 'area-crosses-itself' | 'wholly-kept-out' | 'ground-without-elevation' }
  | { readonly reason: 'area-empty'; readonly area: number }
  | { readonly reason: 'no-landmark'; readonly demands: readonly ScanWishKind[] }
  | { readonly reason: 'band-upside-down'; readonly band: BandName; readonly least: number; readonly most: number }
  | { readonly reason: 'contradictory-light'; readonly pairs: readonly (readonly [WishKind, WishKind])[] }
  /** `needed` is the least share of the frame that they take together, of 1. */
  | { readonly reason: 'contradictory-demands'; readonly demands: readonly ScanWishKind[]; readonly needed: number }
  | { readonly reason: 'days-backwards' | 'no-such-day'; readonly from: string; readonly until: string }
  /** `steps` would be coarse enough. */
  | { readonly reason: 'too-many'; readonly cost: ScanCost; readonly steps: ScanSteps }

/** `ground` is the id of the stopping ground that it is about; null for the scan as a whole. */
export type ScanTrouble = TroubleReason & { readonly ground: string | null; readonly refuses: boolean }

/** Metres and square metres below which a line or an area is a slip of the hand. */
const SHORTEST = 1
const SMALLEST = 1

/** Pictures, and combinations of them with instants, beyond which nobody would wait: some minutes of two cores. */
export const MOST_PICTURES = 20_000_000
export const MOST_COMBINATIONS = 25_000_000_000

function tooMany({ pictures, combinations }: ScanCost): boolean {
  return pictures > MOST_PICTURES || combinations > MOST_COMBINATIONS
}

/** Each in turn made coarser, as far as it stays of use. */
const COARSEST: Readonly<Partial<ScanSteps>> = { place: 1000, bearing: 20, heading: 60, minutes: 60 }

/** Steps coarse enough for a request: places farther apart first, since polishing looks between them; the request's own where they will do. */
export function coarser(request: ScanRequest): ScanSteps {
  let { steps } = request
  const wider = (name: 'place' | 'bearing' | 'heading' | 'minutes', by: number): void => {
    steps = { ...steps, [name]: Math.max(steps[name], Math.min(COARSEST[name] ?? Infinity, steps[name] * by)) }
  }
  for (let round = 0; round < 40 && tooMany(scanCost({ ...request, steps })); round++) {
    wider('place', 1.5)
    if (round % 3 === 2) {
      wider('minutes', 2)
      wider('bearing', 1.5)
      wider('heading', 1.5)
    }
  }
  return steps
}

const whole = (trouble: TroubleReason, refuses = true): ScanTrouble => ({ ...trouble, ground: null, refuses })

function groundTroubles(ground: StoppingGround): ScanTrouble[] {
  const about = (trouble: TroubleReason): ScanTrouble => ({ ...trouble, ground: ground.id, refuses: true })
  if (ground.form === 'line') {
    const { length } = measuredLine(ground.points)
    return length < SHORTEST ? [about({ reason: 'line-too-short', length })] : []
  }
  const [first] = ground.points
  const corners = ground.points.length
  if (first === undefined || corners < 3) return [about({ reason: 'area-too-few-corners', corners })]
  if (ringCrossesItself(ground.points)) return [about({ reason: 'area-crosses-itself' })]
  const plane = planeAt(first)
  const shape = ground.points.map((at) => onPlane(plane, at))
  const area = areaOf(shape)
  const { west, east, south, north } = planeBoxAround(shape)
  // Long and thin is a ground; without any width it is none.
  return area < SMALLEST || area < 1e-6 * Math.hypot(east - west, north - south) ** 2
    ? [about({ reason: 'area-empty', area })]
    : []
}

/** Samples of one ground that are looked at for keep-outs and elevations: at a glance, and closely. */
const GLANCES = 100
const CLOSE_LOOKS = 20_000

/** Steps so coarse that a ground has about so many samples at most. */
function stepsFor({ steps }: ScanRequest, { form, points }: StoppingGround, samples: number): ScanSteps {
  if (form === 'line') return { ...steps, place: Math.max(steps.place, measuredLine(points).length / samples) }
  const [first] = points
  if (first === undefined) return steps
  const plane = planeAt(first)
  const { west, east, south, north } = planeBoxAround(points.map((at) => onPlane(plane, at)))
  return { ...steps, place: Math.max(steps.place, Math.sqrt(((east - west) * (north - south)) / samples)) }
}

function whollyKeptOut(request: ScanRequest, ground: StoppingGround, out: KeptOutGround): boolean {
  if (out.subject.length === 0) return false
  if (ground.points.some((at) => !subjectKeptOut(out, at)) && ground.form === 'line') return false
  return [GLANCES, CLOSE_LOOKS].every(
    (samples) => sampledPlaces(ground, { steps: stepsFor(request, ground, samples) }, out).length === 0,
  )
}

function withoutElevation(request: ScanRequest, ground: StoppingGround, out: KeptOutGround): boolean {
  const { terrain } = request
  if (terrain === null) return true
  return sampledPlaces(ground, { steps: stepsFor(request, ground, GLANCES) }, out).some(
    ({ at }) => elevationAtPlace(terrain, at) === null,
  )
}

const BANDS: readonly BandName[] = ['subjectFill', 'landmarkFill', 'subjectView', 'softness', 'lensHeight']

function upsideDown(wishes: ScanWishes): ScanTrouble[] {
  return BANDS.flatMap((band) => {
    const bandWish: Band | null = wishes[band]
    if (bandWish === null || bandWish.least <= bandWish.most) return []
    return [whole({ reason: 'band-upside-down', band, least: bandWish.least, most: bandWish.most })]
  })
}

/** Musts that can't be met together wherever one stands: what has to be in the frame takes more than the frame. */
function contradictoryDemands({ subjectFill, landmarkFill, landmarkWhole, landmarkPlace }: ScanWishes): ScanTrouble[] {
  const contradiction = (demands: readonly ScanWishKind[], needed: number): ScanTrouble[] =>
    needed > 1 ? [whole({ reason: 'contradictory-demands', demands, needed })] : []
  const wholeMust = landmarkWhole?.must === true
  const fillMust = landmarkFill?.must === true ? landmarkFill : null
  const alone = wholeMust && fillMust !== null ? contradiction(['landmarkFill', 'landmarkWhole'], fillMust.least) : []
  if (alone.length > 0) return alone
  const beside = landmarkPlace?.must === true && landmarkPlace.where !== 'behind' ? landmarkPlace : null
  if (beside === null || !wholeMust || subjectFill?.must !== true || subjectFill.axis !== 'width') return []
  const landmark = fillMust?.axis === 'width' ? fillMust.least : 0
  const demands: ScanWishKind[] = ['subjectFill', ...(landmark > 0 ? (['landmarkFill'] as const) : []), 'landmarkPlace']
  return contradiction(demands, subjectFill.least + beside.gap + landmark)
}

function wishTroubles(request: ScanRequest): ScanTrouble[] {
  const { shoot, spot, parkings } = request
  const wishes = shoot.scanWishes
  const troubles = [...upsideDown(wishes), ...contradictoryDemands(wishes)]
  const landmark = landmarkOf(shoot, spot)
  const asking = demandsMade(shoot).filter((kind) => LANDMARK_DEMANDS.has(kind))
  const musts = asking.filter((kind) => wishes[kind]?.must === true)
  if (landmark === null && asking.length > 0) {
    troubles.push(whole({ reason: 'no-landmark', demands: asking }, musts.length > 0))
  }
  if (shoot.bag.lenses.length === 0) troubles.push(whole({ reason: 'empty-bag' }))
  const pairs = contradictions(shoot.light)
  if (wishes.light !== null && pairs.length > 0)
    troubles.push(whole({ reason: 'contradictory-light', pairs }, wishes.light.must))
  if (wishes.parking !== null && parkings.length === 0)
    troubles.push(whole({ reason: 'no-parking' }, wishes.parking.must))
  return [...troubles, ...timeTroubles(request)]
}

function timeTroubles({ shoot, zone }: ScanRequest): ScanTrouble[] {
  const { days, hours } = shoot.scanWishes
  const troubles: ScanTrouble[] = []
  if (hours !== null && hours.from === hours.until) troubles.push(whole({ reason: 'hours-empty' }))
  if (days === null) return troubles
  if (days.from > days.until) return [...troubles, whole({ reason: 'days-backwards', ...days })]
  const both = [civilDay(days.from, zone), civilDay(days.until, zone)]
  return both.every(({ ok }) => ok) ? troubles : [...troubles, whole({ reason: 'no-such-day', ...days })]
}

/** All of them, those of the grounds first. A scan that one of them refuses is not to be started. `cost` may be at hand already. */
export function scanTroubles(request: ScanRequest, cost: ScanCost = scanCost(request)): readonly ScanTrouble[] {
  const { stoppingGround, scanWishes } = request.shoot
  if (stoppingGround.length === 0) return [whole({ reason: 'no-ground' }), ...wishTroubles(request)]
  const out = keptOutOf(request)
  const shapes = stoppingGround.flatMap(groundTroubles)
  const spoilt = new Set(shapes.map(({ ground }) => ground))
  const fine = stoppingGround.filter(({ id }) => !spoilt.has(id))
  const kept = fine.filter((ground) => whollyKeptOut(request, ground, out))
  const left = fine.filter((ground) => !kept.includes(ground))
  const bare = scanWishes.landmarkShown === null ? [] : left.filter((ground) => withoutElevation(request, ground, out))
  const wishes = wishTroubles(request)
  const days = wishes.some(({ reason }) => reason === 'days-backwards' || reason === 'no-such-day')
  return [
    ...shapes,
    // Another ground may still do.
    ...kept.map(({ id }) => ({ reason: 'wholly-kept-out' as const, ground: id, refuses: left.length === 0 })),
    ...bare.map(({ id }) => ({ reason: 'ground-without-elevation' as const, ground: id, refuses: false })),
    ...wishes,
    ...(days ? [] : costTroubles(request, cost)),
  ]
}

function costTroubles(request: ScanRequest, cost: ScanCost): ScanTrouble[] {
  return tooMany(cost) ? [whole({ reason: 'too-many', cost, steps: coarser(request) })] : []
}
