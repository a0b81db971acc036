/** Which lens of the bag reaches the wished focal length, and what the others give instead. */
import { type Lens, reaches, widestAt } from '#core/optics/lens.ts'
import type { FillWish } from './fill.ts'
import { type Scene, type SetUp, type Setting, setUp, subjectShare } from './set-up.ts'

export interface LensOffer {
  readonly lensId: string
  /** Millimetres: the wished focal length where the lens reaches it, else its nearest end. */
  readonly focalLength: number
  readonly reaches: boolean
  /** Which end it stops at when it doesn't reach; null when it does. */
  readonly end: 'short' | 'long' | null
  /** Share of the wished side that the subject takes with it; null when it can't focus so near. */
  readonly gives: number | null
  /** Widest f-number there, as marked. */
  readonly widest: number
  /** True when the focus lies nearer than the lens allows. */
  readonly tooNear: boolean
}

/** Metres from the sensor to the plane of focus, as makers print closest focus: thin lens, u + v. */
export function fromSensor(made: SetUp): number {
  return made.focusDistance + made.view.imageDistance / 1000
}

function offer(
  lens: Lens,
  wanted: number,
  scene: Scene,
  setting: Setting,
  wish: FillWish,
  solved: SetUp | null,
): LensOffer {
  const there = reaches(lens, wanted)
  const focalLength = Math.min(lens.focalMax, Math.max(lens.focalMin, wanted))
  const made = solved?.focalLength === focalLength ? solved : setUp(scene, setting, focalLength, solved)
  return {
    lensId: lens.id,
    focalLength,
    reaches: there,
    end: there ? null : wanted < lens.focalMin ? 'short' : 'long',
    gives: made === null ? null : subjectShare(made, wish.axis),
    widest: widestAt(lens, focalLength),
    tooNear: made !== null && fromSensor(made) < lens.closestFocus,
  }
}

/** What each lens of the bag offers toward a focal length, in the bag's order; `solved` is the set-up at the wanted one, if known. */
export function lensOffers(
  lenses: readonly Lens[],
  wanted: number,
  scene: Scene,
  setting: Setting,
  wish: FillWish,
  solved: SetUp | null = null,
): LensOffer[] {
  return lenses.map((lens) => offer(lens, wanted, scene, setting, wish, solved))
}

/**
 * The offer to take: the lens asked for, else among those that reach and focus the widest opening, else the nearest end.
 * Null when the bag is empty.
 */
export function chooseOffer(offers: readonly LensOffer[], wanted: number, lensId: string | null): LensOffer | null {
  const asked = offers.find((candidate) => candidate.lensId === lensId)
  if (asked !== undefined) return asked
  const miss = (candidate: LensOffer): number => Math.abs(Math.log(candidate.focalLength / wanted))
  let best: LensOffer | null = null
  for (const candidate of offers) {
    if (best === null || better(candidate, best)) best = candidate
  }
  return best

  function better(one: LensOffer, other: LensOffer): boolean {
    if (one.reaches !== other.reaches) return one.reaches
    if (!one.reaches && miss(one) !== miss(other)) return miss(one) < miss(other)
    if (one.tooNear !== other.tooNear) return other.tooNear
    return one.widest < other.widest
  }
}
