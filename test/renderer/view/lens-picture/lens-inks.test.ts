/** The inks of the hour: they darken with the sun without a leap, things stay told from ground and sky, plum stays plum. */
import { describe, expect, test } from 'vitest'
import { toCamera } from '#core/frame/projection.ts'
import { assess } from '#core/plan/assess.ts'
import type { LightReading } from '#core/plan/light-reading.ts'
import { MATERIALS, type Material } from '#core/scene/solid.ts'
import { type Colour, mixed } from '#renderer/view/lens-picture/colour.ts'
import { type LensInks, type Shown, inksAt } from '#renderer/view/lens-picture/lens-inks.ts'
import { DARKEST, SHADE, lightingOf, toneStep } from '#renderer/view/lens-picture/lighting.ts'
import { landTone, thingTone, wallTone, waterTone } from '#renderer/view/lens-picture/tones.ts'
import { brightnessOf, contrastOf } from '#test/help/brightness.ts'
import { examplePlan } from '#test/help/plans.ts'

const SHOWN: readonly Shown[] = ['screen', 'paper']
/** From high noon to deep night, a tenth of a degree apart: about half a minute. */
const ALTITUDES = Array.from({ length: 1201 }, (_, index) => 90 - index / 10)
const STEPS = Array.from({ length: DARKEST + 1 }, (_, step) => step)
const SHADES = STEPS.slice(SHADE)

type Thing = 'subject' | 'landmark'

function tone(inks: LensInks, thing: Thing, material: Material, step: number): Colour {
  return thingTone({ material, step, seam: false, path: '' }, inks[thing], inks)
}

/** Every opaque colour that a picture of this hour can hold, by name. */
function palette(inks: LensInks): Map<string, Colour> {
  const { skyTop, skyLow, fieldFar, fieldNear, hill, water, wall } = inks
  const found = new Map(Object.entries({ skyTop, skyLow, fieldFar, fieldNear, hill, water, wall }))
  for (const distance of [200, 2_000, 20_000]) {
    found.set(`land ${distance}`, landTone(distance, inks))
    found.set(`water ${distance}`, waterTone(distance, inks))
    found.set(`wall ${distance}`, wallTone(distance, inks))
  }
  for (const thing of ['subject', 'landmark'] as const)
    for (const material of MATERIALS)
      for (const step of STEPS) found.set(`${thing} ${material} ${step}`, tone(inks, thing, material, step))
  return found
}

function farthest(one: Colour, other: Colour): number {
  return Math.max(
    Math.abs(one.red - other.red),
    Math.abs(one.green - other.green),
    Math.abs(one.blue - other.blue),
    255 * Math.abs(one.cover - other.cover),
  )
}

describe.each(SHOWN)('on %s', (shown) => {
  test('as the sun sinks nothing grows brighter and nothing leaps', () => {
    let before = palette(inksAt(90, shown))
    for (const altitude of ALTITUDES) {
      const now = palette(inksAt(altitude, shown))
      for (const [name, colour] of now) {
        const last = before.get(name) ?? colour
        const at = `${name} at ${altitude}`
        expect(farthest(colour, last), at).toBeLessThan(5)
        expect(brightnessOf(colour), at).toBeLessThanOrEqual(brightnessOf(last) + 1e-9)
      }
      before = now
    }
  })

  test('what only covers, lines, patches and the light about the sun, does not leap either', () => {
    let before = inksAt(90, shown)
    for (const altitude of ALTITUDES) {
      const now = inksAt(altitude, shown)
      for (const name of ['groundLine', 'horizonLine', 'ridgeLine', 'contact', 'cast', 'rim', 'limb'] as const)
        expect(farthest(now[name], before[name]), `${name} at ${altitude}`).toBeLessThan(5)
      expect(Math.abs(now.glow - before.glow)).toBeLessThan(0.02)
      before = now
    }
  })

  test('a face in the sun is brighter than one in its shade, at every hour', () => {
    for (const altitude of ALTITUDES) {
      const inks = inksAt(altitude, shown)
      for (const thing of ['subject', 'landmark'] as const)
        for (const material of ['hue', 'ink', 'pale'] as const) {
          const tones = STEPS.map((step) => brightnessOf(tone(inks, thing, material, step)))
          tones
            .slice(1)
            .forEach((bright, index) => expect(bright, `${altitude}, ${index}`).toBeLessThan(tones[index] ?? 0))
        }
    }
  })

  test('things and ground can be told apart, so that one can compose by night as by day', () => {
    for (const altitude of ALTITUDES) {
      const inks = inksAt(altitude, shown)
      const at = `${altitude}`
      const { skyTop, skyLow, fieldFar, fieldNear } = inks
      // The sky stands over the ground, at its horizon and where a hill reaches high.
      expect(brightnessOf(skyLow), at).toBeGreaterThan(brightnessOf(fieldFar))
      expect(contrastOf(skyLow, fieldFar), at).toBeGreaterThan(1.2)
      expect(brightnessOf(skyTop), at).toBeGreaterThan(brightnessOf(fieldFar))
      for (const step of SHADES) {
        for (const material of ['hue', 'ink', 'dark', 'glass'] as const)
          for (const ground of [fieldNear, fieldFar]) {
            const thing = tone(inks, 'subject', material, step)
            expect(contrastOf(thing, ground), `${material} ${step} at ${at}`).toBeGreaterThan(1.3)
          }
        for (const material of ['hue', 'ink', 'pale'] as const) {
          const thing = tone(inks, 'landmark', material, step)
          for (const sky of [skyLow, mixed(skyTop, skyLow, 0.5)])
            expect(contrastOf(thing, sky), `${material} ${step} at ${at}`).toBeGreaterThan(1.4)
          for (const distance of [1_000, 3_000])
            expect(contrastOf(thing, landTone(distance, inks)), `${material} ${step} at ${at}`).toBeGreaterThan(1.3)
        }
        for (const distance of [1_000, 3_000]) {
          expect(brightnessOf(landTone(distance, inks)), at).toBeLessThan(brightnessOf(skyLow))
          expect(contrastOf(landTone(distance, inks), mixed(skyTop, skyLow, 0.5)), at).toBeGreaterThan(1.2)
        }
        const [plum, stone] = (['subject', 'landmark'] as const).map((thing) => tone(inks, thing, 'hue', step))
        if (plum !== undefined && stone !== undefined)
          expect(
            Math.hypot(plum.red - stone.red, plum.green - stone.green, plum.blue - stone.blue),
            at,
          ).toBeGreaterThan(15)
      }
    }
  })

  test("the subject's hue stays itself and the sky has next to none", () => {
    const plum = hueOf(tone(inksAt(90), 'subject', 'hue', SHADE))
    for (const altitude of ALTITUDES) {
      const inks = inksAt(altitude, shown)
      for (const step of STEPS) {
        const now = tone(inks, 'subject', 'hue', step)
        expect(Math.abs(hueOf(now) - plum), `${altitude}, ${step}`).toBeLessThan(25)
        expect(chromaOf(now) / Math.max(now.red, now.green, now.blue)).toBeGreaterThan(0.2)
        if (step >= SHADE) expect(chromaOf(now) / Math.max(now.red, now.green, now.blue)).toBeGreaterThan(0.4)
      }
      for (const sky of [inks.skyTop, inks.skyLow]) expect(chromaOf(sky), `${altitude}`).toBeLessThan(22)
    }
  })
})

function chromaOf({ red, green, blue }: Colour): number {
  return Math.max(red, green, blue) - Math.min(red, green, blue)
}

/** Degrees about red in the six-sided circle of colours: plum lies between blue, 240, and red, 360. */
function hueOf({ red, green, blue }: Colour): number {
  const turn = (60 * Math.atan2(Math.sqrt(3) * (green - blue), 2 * red - green - blue)) / (Math.PI / 3)
  return (turn + 360) % 360
}

test('a low sun tells by contrast: what stands in it and what lies in its shade are farther apart than at noon', () => {
  const apart = (altitude: number): number => {
    const inks = inksAt(altitude)
    return contrastOf(tone(inks, 'landmark', 'hue', 0), tone(inks, 'landmark', 'hue', DARKEST))
  }
  expect(apart(6)).toBeGreaterThan(apart(40) * 1.04)
  // Ground that is only grazed loses more than a wall that is struck.
  const left = (inksOf: (inks: LensInks) => Colour): number =>
    brightnessOf(inksOf(inksAt(5))) / brightnessOf(inksOf(inksAt(40)))
  expect(left((inks) => inks.fieldNear)).toBeLessThan(left((inks) => tone(inks, 'landmark', 'pale', 0)) * 0.85)
})

test('full day, low sun, twilight and night are four different pictures', () => {
  for (const of of ['skyTop', 'skyLow', 'fieldNear'] as const) {
    const bright = [40, 4, -6, -20].map((altitude) => brightnessOf(inksAt(altitude)[of]))
    bright.slice(1).forEach((now, index) => expect(now).toBeLessThan((bright[index] ?? 0) * 0.8))
  }
})

test('paper has the day as the screen has it, and no sky and no ground darker than a mid grey', () => {
  for (const altitude of ALTITUDES) {
    const { skyTop, skyLow, fieldFar, fieldNear } = inksAt(altitude, 'paper')
    for (const area of [skyTop, skyLow, fieldFar, fieldNear]) expect(brightnessOf(area)).toBeGreaterThan(0.12)
    if (altitude >= 0) expect(inksAt(altitude, 'paper')).toEqual(inksAt(altitude))
  }
  expect(brightnessOf(inksAt(-20).fieldNear)).toBeLessThan(0.05)
})

const { light, view } = assess(examplePlan())
if (view === null) throw new Error('framed')
const VIEW = view

// Undersides are left out: a sun on the horizon still grazes them, and then they have the ground's light alone.
test('at the moment of sunset no face leaps, wherever around and above it looks', () => {
  const at = (apparent: number, up: boolean): LightReading => ({
    ...light,
    sun: { ...light.sun, azimuth: 280, apparent, altitude: apparent, up },
    sunOnSubject: up,
  })
  const horizon = -0.27
  for (const sky of ['clear', 'hazy', 'overcast'] as const) {
    const [lit, unlit] = [true, false].map((up) => lightingOf(VIEW, at(horizon, up), sky))
    const inks = inksAt(horizon)
    if (lit === undefined || unlit === undefined) throw new Error('two lights')
    for (const up of [-0.6, -0.3, 0, 0.3, 0.6, 1])
      for (let azimuth = 0; azimuth < 360; azimuth += 15) {
        const turn = (azimuth * Math.PI) / 180
        const level = Math.sqrt(1 - up * up)
        const normal = toCamera(VIEW, { east: level * Math.sin(turn), north: level * Math.cos(turn), up })
        for (const thing of ['subject', 'landmark'] as const) {
          const [before, after] = [lit, unlit].map((one) => tone(inks, thing, 'hue', toneStep(normal, one)))
          if (before === undefined || after === undefined) throw new Error('two tones')
          expect(farthest(before, after), `${thing} ${sky} ${azimuth} ${up}`).toBeLessThan(20)
        }
      }
  }
})
