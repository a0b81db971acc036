/** What is looked at to tell why nothing was found: a part of the scan's own combinations, and others just beyond what is wished. */
import type { Lens } from '#core/optics/lens.ts'
import type { ScanRequest } from './scan-request.ts'
import type { Relaxation } from './scan-found.ts'
import type { ScanPlace } from './scan-places.ts'
import { type FocalSample, instantSamples } from './scan-samples.ts'
import { triedOnWay } from './place-pictures.ts'
import type { ScanTable } from './scan-table.ts'

/** One thing other than it is wished: with it something might be found. */
export interface Beyond extends Omit<Relaxation, 'places'> {
  /** How much is asked of the user, about in half-widths of a band: what is small comes first. */
  readonly pain: number
}

export interface Try {
  readonly focal: FocalSample
  readonly share: number
  readonly lensHeight: number
  /** Null for one of the scan's own combinations. */
  readonly beyond: Beyond | null
  /** Its demands: of one beyond a fill, with the band widened to it. */
  readonly table: ScanTable
}

/** By how much focal lengths, fills and heights are tried beyond their ends. */
const LONGER = [1.25, 1.5, 2, 3, 4]
const SHORTER = [0.8, 0.65, 0.5]
const FILLS_LESS = [0.8, 0.6, 0.4]
const FILLS_MORE = [1.25, 1.7]
const HEIGHTS_OFF = [0.3, 1, 2]
/** Metres and millimetres that are tried at all. */
const LOWEST = 0.2
const HIGHEST = 5
const SHORTEST = 8

/** Pain of a lens twice as long, and of a metre of height. */
const LENS_PAIN = 4
const HEIGHT_PAIN = 1.5

function ends(lenses: readonly Lens[]): { readonly longest: Lens; readonly shortest: Lens } | null {
  const [first] = lenses
  if (first === undefined) return null
  return {
    longest: lenses.reduce((one, other) => (other.focalMax > one.focalMax ? other : one), first),
    shortest: lenses.reduce((one, other) => (other.focalMin < one.focalMin ? other : one), first),
  }
}

interface BeyondLens {
  readonly focal: FocalSample
  readonly beyond: Beyond
}

/** The bag's longest lens reaching farther, its shortest wider, whole millimetres; all else of them as it is. */
function lensesBeyond(lenses: readonly Lens[]): BeyondLens[] {
  const found = ends(lenses)
  if (found === null) return []
  const { longest, shortest } = found
  const pain = (now: number, to: number): number => LENS_PAIN * Math.abs(Math.log2(to / now))
  const longer = LONGER.map((ratio): BeyondLens => {
    const [now, to] = [longest.focalMax, Math.ceil(longest.focalMax * ratio)]
    const focal = { lens: { ...longest, focalMax: to }, focalLength: to }
    return { focal, beyond: { of: 'lens-long', now, to, end: 'most', pain: pain(now, to) } }
  })
  const wider = SHORTER.map((ratio) => Math.floor(shortest.focalMin * ratio))
    .filter((to) => to >= SHORTEST)
    .map((to): BeyondLens => {
      const now = shortest.focalMin
      const focal = { lens: { ...shortest, focalMin: to }, focalLength: to }
      return { focal, beyond: { of: 'lens-short', now, to, end: 'least', pain: pain(now, to) } }
    })
  return [...longer, ...wider]
}

function heightsBeyond({ wishes }: ScanTable): Beyond[] {
  const { least, most } = wishes.lensHeight
  const pain = (off: number): number => HEIGHT_PAIN * off
  const tenth = (height: number): number => Math.round(height * 10) / 10
  return HEIGHTS_OFF.flatMap((off): Beyond[] => [
    { of: 'lens-height', now: least, to: tenth(least - off), end: 'least', pain: pain(off) },
    { of: 'lens-height', now: most, to: tenth(most + off), end: 'most', pain: pain(off) },
  ]).filter(({ to }) => to >= LOWEST && to <= HIGHEST)
}

/** Fills beyond the wished band, in whole hundredths: the scan looks within the band alone, must or wish. */
function fillsBeyond({ wishes }: ScanTable): Beyond[] {
  const wish = wishes.subjectFill
  if (wish === null) return []
  const { least, most } = wish
  const half = Math.max((most - least) / 2, 0.05)
  const less = FILLS_LESS.map((ratio) => Math.floor(least * ratio * 100) / 100).filter((to) => to > 0)
  const more = FILLS_MORE.map((ratio) => Math.ceil(most * ratio * 100) / 100).filter((to) => to <= 1)
  return [
    ...less.map((to): Beyond => ({ of: 'subjectFill', now: least, to, end: 'least', pain: (least - to) / half })),
    ...more.map((to): Beyond => ({ of: 'subjectFill', now: most, to, end: 'most', pain: (to - most) / half })),
  ]
}

function withFill(table: ScanTable, { end, to }: Beyond): ScanTable {
  const { subjectFill } = table.wishes
  if (subjectFill === null || end === null) return table
  return { ...table, wishes: { ...table.wishes, subjectFill: { ...subjectFill, [end]: to } } }
}

/** Everything that is tried on each way to the camera, for every placement. */
export function triesOf(table: ScanTable): Try[] {
  const { focals, fills, heights, shoot } = table
  const shares = fills.map(({ share }) => share)
  const over = (
    of: readonly FocalSample[],
    taking: readonly number[],
    at: readonly number[],
    beyond: Beyond | null,
    own = table,
  ): Try[] =>
    of.flatMap((focal) =>
      taking.flatMap((share) => at.map((lensHeight) => ({ focal, share, lensHeight, beyond, table: own }))),
    )
  return [
    ...over(focals, shares, heights, null),
    ...lensesBeyond(shoot.bag.lenses).flatMap(({ focal, beyond }) => over([focal], shares, heights, beyond)),
    ...fillsBeyond(table).flatMap((beyond) => over(focals, [beyond.to], heights, beyond, withFill(table, beyond))),
    ...heightsBeyond(table).flatMap((beyond) => over(focals, shares, [beyond.to], beyond)),
  ]
}

/** Of a list so many at most, evenly, its ends among them. */
export function everyFew<One>(list: readonly One[], most: number): One[] {
  if (list.length <= most) return [...list]
  if (most < 2) return list.slice(0, Math.max(0, most))
  return Array.from({ length: most }, (_, index) => list[Math.round((index * (list.length - 1)) / (most - 1))]).filter(
    (one): one is One => one !== undefined,
  )
}

/** The scan's own combinations looked at, of all parts together, before there is thinning; places and ways kept at the least. */
const LOOKED = 8_000
const LEAST_PLACES = 8
const LEAST_WAYS = 9

export interface Thinning {
  readonly places: readonly ScanPlace[]
  /** Every so many ways to the camera are looked at. */
  readonly stride: number
}

export function thinning(table: ScanTable, places: readonly ScanPlace[], ways: number): Thinning {
  const headings = Math.max(1, ...places.map((place) => place.headings.length))
  const onWay = headings * triedOnWay(table)
  const stride = Math.max(1, Math.min(Math.floor(ways / LEAST_WAYS), Math.ceil((LEAST_PLACES * ways * onWay) / LOOKED)))
  const each = Math.max(1, Math.ceil(ways / stride) * onWay)
  return { places: everyFew(places, Math.max(LEAST_PLACES, Math.floor(LOOKED / each))), stride }
}

/** Instants looked at where the light must be met, and where it needn't, within the wished hours and outside together. */
const INSTANTS = 64
const FEW_INSTANTS = 12

export interface WhyInstants {
  readonly instants: readonly number[]
  /** How many of them, the first, lie within the wished hours. */
  readonly within: number
}

export function whyInstants(request: ScanRequest): WhyInstants {
  const must = request.shoot.scanWishes.light?.must === true
  const own = instantSamples(request)
  const known = new Set(own)
  // Only wished hours leave any out; and what is told of them is their share, so both sides are thinned alike.
  const hoursMatter = request.shoot.scanWishes.hours !== null
  const others = hoursMatter ? instantSamples(request, false).filter((instant) => !known.has(instant)) : []
  const most = must ? INSTANTS : FEW_INSTANTS
  const share = own.length / Math.max(1, own.length + others.length)
  const within = everyFew(own, Math.max(2, Math.round(most * share)))
  const outside = everyFew(others, Math.max(1, most - within.length))
  return { instants: [...within, ...outside], within: within.length }
}
