/** How far each step of a face's brightness goes toward white or black, by the sun's height: all that lighting says, as a share. */
import { betweenRows } from './hour-light.ts'

/** How far each step goes toward white in the sun, 0 to 4, and toward black in its shade, 5 to 7. The sun's edge is the widest step. */
export const LIT_STEPS: readonly number[] = [0.44, 0.33, 0.23, 0.14, 0.06, -0.28, -0.4, -0.48]
/** Where the sun's own light is spent the bright sky all around is left: nearly one tone, a little less on what looks down. */
const SUNSET_STEPS: readonly number[] = [-0.3, -0.3025, -0.305, -0.3075, -0.31, -0.36, -0.44, -0.6]
/** Later the light falls from above: what looks up tells a shape in the dark. */
const DUSK_STEPS: readonly number[] = [-0.02, -0.03, -0.04, -0.05, -0.06, -0.3, -0.4, -0.49]

/** Shade is deeper under a low sun: less sky lights it, and no bright ground. */
const DEEPER = 1.25

interface Sunlight {
  readonly altitude: number
  /** Whether the sky without sun is that of sunset, 0, or of dusk, 1. */
  readonly sky: number
  /** How much of the sun's light is left on its long way through the air, 0..1. */
  readonly sun: number
  /** By how much shade is deeper than by day. */
  readonly shade: number
}

const SUNLIGHT: readonly Sunlight[] = [
  { altitude: -12, sky: 1, sun: 0, shade: DEEPER },
  { altitude: -0.3, sky: 0, sun: 0, shade: DEEPER },
  { altitude: 1.5, sky: 0, sun: 0.55, shade: DEEPER },
  { altitude: 4.5, sky: 0, sun: 1, shade: DEEPER },
  { altitude: 15, sky: 0, sun: 1, shade: 1 },
]

function sunlightAt(altitude: number): Sunlight {
  const { from, to, share } = betweenRows(SUNLIGHT, altitude)
  const between = (one: number, other: number): number => one + (other - one) * share
  return {
    altitude,
    sky: between(from.sky, to.sky),
    sun: between(from.sun, to.sun),
    shade: between(from.shade, to.shade),
  }
}

/** 1 by day, 0 once the sun is down: also how dark what it casts is. */
export function sunStrengthAt(altitude: number): number {
  return sunlightAt(altitude).sun
}

/** From the sun's steps to the sky's, so that nothing leaps when the sun goes down. */
export function stepsAt(altitude: number): readonly number[] {
  const { sky, sun, shade } = sunlightAt(altitude)
  return LIT_STEPS.map((lit, step) => {
    const [own, sunset, dusk] = [lit < 0 ? lit * shade : lit, SUNSET_STEPS[step] ?? 0, DUSK_STEPS[step] ?? 0]
    const unlit = sunset + (dusk - sunset) * sky
    return unlit + (own - unlit) * sun
  })
}
