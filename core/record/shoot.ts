/** A shoot: one job, with its subject, landmarks, camera, lenses and what is wished of the picture. */
import type { Crop } from '#core/frame/crop.ts'
import type { Lens } from '#core/optics/lens.ts'
import type { Camera } from '#core/optics/sensor.ts'
import type { Sky } from '#core/light/exposure.ts'
import type { LightWishes } from '#core/light/light-wish.ts'
import type { Obstruction } from '#core/ground/obstruction.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import type { Subject } from '#core/scene/subject.ts'
import type { KeepOut } from './keep-out.ts'
import type { ScanWishes } from './scan-wishes.ts'
import type { StoppingGround } from './stopping-ground.ts'

export interface Bag {
  readonly camera: Camera
  readonly lenses: readonly Lens[]
}

/** As many obstructions as a shoot may have. */
export const MOST_OBSTRUCTIONS = 100

/** An obstruction with its name and its handle. */
export interface ObstructionRecord extends Obstruction {
  readonly id: string
  readonly name: string
}

export interface Shoot {
  readonly id: string
  /** Grows by one with every saved change; a save names the revision it started from. */
  readonly revision: number
  readonly name: string
  readonly subject: Subject
  readonly landmarks: readonly Landmark[]
  readonly bag: Bag
  readonly crops: readonly Crop[]
  /** Refraction coefficient for sightlines. */
  readonly refraction: number
  /** Time zone by its IANA name; null for the one found from the place. */
  readonly zone: string | null
  /** Trees, walls, houses that hide what is behind them, drawn by the user: the elevations do not know them. */
  readonly obstructions: readonly ObstructionRecord[]
  /** Where the subject may stop, where nobody may stand, and what the picture should be: what a scan goes by. */
  readonly stoppingGround: readonly StoppingGround[]
  readonly keepOuts: readonly KeepOut[]
  readonly scanWishes: ScanWishes
  readonly light: LightWishes
  /** What the sky is expected to be, for the exposure. */
  readonly sky: Sky
  readonly iso: number
  /** Epoch milliseconds at which it was made. */
  readonly madeAt: number
}
