/** Faces are as bright as the sun strikes them, in any light from anywhere. */
import { LIT_STEPS } from '#renderer/view/lens-picture/face-steps.ts'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type View, toCamera } from '#core/frame/projection.ts'
import { sunDirection } from '#core/light/incidence.ts'
import { assess } from '#core/plan/assess.ts'
import type { LightReading } from '#core/plan/light-reading.ts'
import { DARKEST, type Lighting, SHADE, lightingOf, toneStep } from '#renderer/view/lens-picture/lighting.ts'
import { examplePlan } from '#test/help/plans.ts'

const { light, view: exampleView } = assess(examplePlan())
if (exampleView === null) throw new Error('framed')
const VIEW: View = exampleView

function sunAt(azimuth: number, apparent: number, up = true): LightReading {
  return { ...light, sun: { ...light.sun, azimuth, apparent, altitude: apparent, up } }
}

/** The step of a face whose normal lies `incidence` degrees off the sun, toward `around` degrees about it. */
function stepAt(lighting: Lighting, sun: readonly [number, number], incidence: number, around: number): number {
  const [azimuth, altitude] = sun
  const axes = [sunDirection(azimuth, altitude), sunDirection(azimuth + 90, 0), sunDirection(azimuth, altitude + 90)]
  const [tilt, turn] = [(incidence * Math.PI) / 180, (around * Math.PI) / 180]
  const shares = [Math.cos(tilt), Math.sin(tilt) * Math.cos(turn), Math.sin(tilt) * Math.sin(turn)]
  const sum = (axis: 'east' | 'north' | 'up'): number =>
    axes.reduce((total, vector, index) => total + vector[axis] * (shares[index] ?? 0), 0)
  // Of any length, as a face's own normal is.
  const normal = toCamera(VIEW, { east: 3 * sum('east'), north: 3 * sum('north'), up: 3 * sum('up') })
  return toneStep(normal, lighting)
}

const degree = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('in the sun', () => {
  test.each(['clear', 'hazy'] as const)('square on is brighter than raking, raking than shade (%s)', (sky) => {
    fc.assert(
      fc.property(
        fc.tuple(degree(0, 360), degree(-0.5, 90)),
        fc.tuple(degree(0, 29.9), degree(60.1, 89.9), degree(90.1, 180)),
        fc.tuple(degree(0, 360), degree(0, 360), degree(0, 360)),
        (sun, [square, raking, away], around) => {
          const lighting = lightingOf(VIEW, sunAt(...sun), sky)
          const steps = [square, raking, away].map((angle, index) => stepAt(lighting, sun, angle, around[index] ?? 0))
          expect(steps[0]).toBeLessThan(steps[1] ?? 0)
          expect(steps[1]).toBeLessThan(SHADE)
          expect(steps[2]).toBeGreaterThanOrEqual(SHADE)
          expect(steps[2]).toBeLessThanOrEqual(DARKEST)
        },
      ),
    )
  })

  test('haze takes from the brightest and gives to the darkest', () => {
    const sun = [200, 40] as const
    const [clear, hazy] = [lightingOf(VIEW, sunAt(...sun), 'clear'), lightingOf(VIEW, sunAt(...sun), 'hazy')]
    expect(stepAt(hazy, sun, 0, 0)).toBeGreaterThan(stepAt(clear, sun, 0, 0))
    expect(stepAt(hazy, sun, 180, 0)).toBeLessThan(stepAt(clear, sun, 180, 0))
  })

  test('round things are bright with the sun behind the camera and dark against it', () => {
    const round = (turn: number): number => lightingOf(VIEW, sunAt(VIEW.bearing + turn, 5), 'clear').round
    expect(round(180)).toBeLessThan(round(90))
    expect(round(90)).toBeLessThan(round(0))
  })
})

describe('without a sun that casts light', () => {
  test('all that looks one way is lit the same, up brighter than down, wherever the sun is', () => {
    const up = toCamera(VIEW, { east: 0, north: 0, up: 1 })
    const down = toCamera(VIEW, { east: 0, north: 0, up: -1 })
    for (const sky of ['cloudy-bright', 'overcast', 'open-shade'] as const) {
      const steps = [0, 90, 250].map((azimuth) => {
        const lighting = lightingOf(VIEW, sunAt(azimuth, 30), sky)
        return [toneStep(up, lighting), toneStep(down, lighting)]
      })
      expect(new Set(steps.map(String)).size).toBe(1)
      expect(steps[0]?.[0]).toBeLessThan(steps[0]?.[1] ?? 0)
    }
  })

  test('a sky without sun is darker than a clouded day', () => {
    const up = toCamera(VIEW, { east: 0, north: 0, up: 1 })
    const dusk = toneStep(up, lightingOf(VIEW, sunAt(270, -3, false), 'clear'))
    expect(dusk).toBeGreaterThan(toneStep(up, lightingOf(VIEW, sunAt(270, 30), 'overcast')))
  })
})

test('each step has its tone, brighter ones before darker ones', () => {
  const brightness = LIT_STEPS
  expect(brightness).toEqual(brightness.toSorted((one, other) => other - one))
  expect(new Set(brightness).size).toBe(DARKEST + 1)
  // The sun's edge is the widest step.
  expect((brightness[SHADE - 1] ?? 0) - (brightness[SHADE] ?? 0)).toBeGreaterThan(0.3)
})
