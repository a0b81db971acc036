/** The lighting: how bright each face is by the sun's true angle on it, or by the sky alone. Brightness and nothing else. */
import { type CameraPoint, type View, toCamera } from '#core/frame/projection.ts'
import type { Sky } from '#core/light/exposure.ts'
import { sunDirection } from '#core/light/incidence.ts'
import type { LightReading } from '#core/plan/light-reading.ts'

/** Steps of brightness: 0 the brightest, those before SHADE in the sun, from SHADE on in its shade. */
export const SHADE = 5
export const DARKEST = 7
/** Where no sun casts light by day, things lie evenly between; by twilight and night they lie in the lower half. */
const CLOUD = 2
const SKYLIGHT = 4
/** Skylight falls from above: so many steps from a face that looks up to one that looks down. */
const SKY_STEPS = DARKEST - SKYLIGHT

export interface Lighting {
  /** Unit vector toward the sun in the camera's right, up and depth; null when it casts no light. */
  readonly sun: CameraPoint | null
  /** Unit vector straight up, likewise. */
  readonly zenith: CameraPoint
  /** Haze takes from the light and gives to the shade. */
  readonly hazy: boolean
  /** The brightest step where the sky alone gives light. */
  readonly even: number
  /** The step of rods and balls, which are round and have one tone. */
  readonly round: number
}

/** Whether the sun casts light and shadow where it reaches: at the subject, unless told of another thing. */
export function castsLight(light: LightReading, sky: Sky, reaches = light.sunOnSubject): boolean {
  return light.sun.up && reaches && (sky === 'clear' || sky === 'hazy')
}

/** Of a thing that the sun reaches, or that lies in the shade of the ground. */
export function lightingOf(view: View, light: LightReading, sky: Sky, reaches = light.sunOnSubject): Lighting {
  const zenith = toCamera(view, { east: 0, north: 0, up: 1 })
  if (!castsLight(light, sky, reaches)) {
    const even = light.sun.up && (reaches || !castsLight(light, sky, true)) ? CLOUD : SKYLIGHT
    return { sun: null, zenith, hazy: false, even, round: even + 2 }
  }
  const sun = toCamera(view, sunDirection(light.sun.azimuth, light.sun.apparent))
  return { sun, zenith, hazy: sky === 'hazy', even: CLOUD, round: roundStep(sun) }
}

/** Of a ball, the camera sees this share lit: (1 + cosine of the angle between the ways to sun and camera) / 2. */
function roundStep(sun: CameraPoint): number {
  const lit = (1 - sun.depth) / 2
  return lit > 0.6 ? 1 : lit > 0.25 ? 3 : 6
}

function dot(one: CameraPoint, other: CameraPoint): number {
  return one.right * other.right + one.up * other.up + one.depth * other.depth
}

/** The step of a face by its outward normal of any length. */
export function toneStep(normal: CameraPoint, lighting: Lighting): number {
  const length = Math.hypot(normal.right, normal.up, normal.depth)
  const { sun, zenith, hazy, even } = lighting
  if (length === 0) return even + 1
  const upward = dot(normal, zenith) / length
  if (sun === null) return even + Math.round(((1 - upward) / 2) * SKY_STEPS)
  const cosine = dot(normal, sun) / length
  if (cosine <= 0) return shadeStep(upward, hazy)
  const first = hazy ? 1 : 0
  return Math.min(SHADE - 1, first + Math.floor((1 - cosine) * (SHADE - first)))
}

/** In shade a face is lit by the sky above it: the more it looks down, the less. */
function shadeStep(upward: number, hazy: boolean): number {
  if (hazy) return upward > -0.35 ? SHADE : SHADE + 1
  return upward > 0.35 ? SHADE : upward > -0.35 ? SHADE + 1 : DARKEST
}
