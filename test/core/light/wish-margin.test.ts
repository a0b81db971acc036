/** The margins of light wishes with a sun put where it is wanted: what holds, and by how many degrees, by hand. */
import { assert, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { framePlanes } from '#core/frame/frame-planes.ts'
import { makeView } from '#core/frame/projection.ts'
import { localFrame } from '#core/geo/local-frame.ts'
import { sunDirection } from '#core/light/incidence.ts'
import { LEVEL_HORIZON, type LightScene, type SeenSide } from '#core/light/light-scene.ts'
import { type LightWishes, NO_WISHES } from '#core/light/light-wish.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { SUN_RADIUS, moonAt, sunAt } from '#core/light/sky.ts'
import {
  type SunLook,
  cosineReached,
  lookAtSun,
  moonAbove,
  rememberingSun,
  wishMargin,
  withinFrame,
} from '#core/light/wish-margin.ts'
import { number } from '#test/help/arbitrary.ts'

const AT = { lat: 47, lon: 8 }
const RADIANS = Math.PI / 180

/** High enough for the air not to matter, unless it is told. */
function sun(azimuth: number, altitude: number): SunLook {
  return { azimuth, altitude, apparent: altitude, direction: sunDirection(azimuth, altitude) }
}

function side(bearing: number, part = 1): SeenSide {
  return { normal: sunDirection(bearing, 0), part }
}

function scene(part: Partial<LightScene> = {}): LightScene {
  return { at: AT, toSubject: 0, subject: [], landmark: [], frame: null, skylines: LEVEL_HORIZON, ...part }
}

const NONE = { subject: 90, landmark: 90, lens: 90 }
const margin = (
  wishes: Partial<LightWishes>,
  where: LightScene,
  look: SunLook,
  over: typeof NONE | null = NONE,
): number => {
  const [kind] = Object.keys(wishes) as 'subject'[]
  if (kind === undefined) throw new Error('something is wished')
  return wishMargin(kind, { ...NO_WISHES, ...wishes }, where, 0, look, over)
}

describe('the cosine that part of the sides reach', () => {
  const east = side(90, 0.5)
  const south = side(180, 0.3)
  const west = side(270, 0.2)
  // The sun 20 degrees south of east, on the level.
  const direction = sunDirection(110, 0)
  const reached = (part: number, sides = [west, south, east]) => cosineReached(sides, direction, part) ?? Number.NaN

  it('is that of the worst lit of the best lit sides that together make the part', () => {
    expect(reached(0.1)).toBeCloseTo(Math.cos(20 * RADIANS), 12)
    expect(reached(0.5)).toBeCloseTo(Math.cos(20 * RADIANS), 12)
    expect(reached(0.51)).toBeCloseTo(Math.cos(70 * RADIANS), 12)
    expect(reached(0.8)).toBeCloseTo(Math.cos(70 * RADIANS), 12)
    expect(reached(0.9)).toBeCloseTo(Math.cos(160 * RADIANS), 12)
    expect(reached(1)).toBeCloseTo(Math.cos(160 * RADIANS), 12)
  })

  it('does not hang on the order, nor on rounding in the parts', () => {
    for (const sides of [
      [east, south, west],
      [south, west, east],
    ])
      for (const part of [0.3, 0.7, 0.95]) expect(reached(part, sides)).toBe(reached(part))
    expect(reached(0.5, [side(90, 0.5 - 1e-12), south, west])).toBeCloseTo(Math.cos(20 * RADIANS), 12)
  })

  it('of a side that leans goes by the height of the light as well', () => {
    const roof = { normal: { east: 0, north: 0, up: 1 }, part: 1 }
    const eaves = { normal: { east: 0, north: 0, up: -1 }, part: 1 }
    const high = sunDirection(110, 30)
    expect(cosineReached([roof], high, 0.5)).toBeCloseTo(0.5, 12)
    expect(cosineReached([eaves], high, 0.5)).toBeCloseTo(-0.5, 12)
  })

  it('is of the one side there is, and none of none', () => {
    expect(reached(0.5, [side(180, 1)])).toBeCloseTo(Math.cos(70 * RADIANS), 12)
    expect(cosineReached([], direction, 0.5)).toBeNull()
  })
})

describe('a side wished', () => {
  // A subject seen by its south side alone, a landmark by its east side alone.
  const where = scene({ subject: [side(180)], landmark: [side(90)] })

  it.each([
    ['before it', 150, true],
    ['along it', 90.001, true],
    ['behind it', 89.999, false],
    ['right behind it', 0, false],
  ])('lit with the sun %s: %s degrees, %s', (_, azimuth, lit) => {
    expect(margin({ subject: 'lit' }, where, sun(azimuth, 30)) >= 0).toBe(lit)
    expect(margin({ subject: 'in-shade' }, where, sun(azimuth, 30)) >= 0).toBe(!lit)
    // Seen from the landmark’s east side the same sun stands a quarter farther round.
    expect(margin({ landmark: 'lit' }, where, sun(azimuth - 90, 30)) >= 0).toBe(lit)
    expect(margin({ landmark: 'in-shade' }, where, sun(azimuth - 90, 30)) >= 0).toBe(!lit)
  })

  it('lit is not while the sun is behind the ground before that thing', () => {
    const south = sun(180, 30)
    expect(margin({ subject: 'lit' }, where, south, { ...NONE, subject: -1 })).toBeCloseTo(-RADIANS, 12)
    expect(margin({ subject: 'lit' }, where, south, { ...NONE, landmark: -1, lens: -1 })).toBeGreaterThan(0)
    const east = sun(90, 30)
    expect(margin({ landmark: 'lit' }, where, east, { ...NONE, landmark: -1 })).toBeCloseTo(-RADIANS, 12)
    expect(margin({ landmark: 'lit' }, where, east, { ...NONE, subject: -1, lens: -1 })).toBeGreaterThan(0)
  })

  it('raked is so from 60 degrees of incidence to 90', () => {
    const raked = (turn: number) => margin({ landmark: 'raking' }, where, sun(90 + turn, 0))
    expect([0, 59, 61, 89, 91, 180].map((turn) => raked(turn) >= 0)).toEqual([false, false, true, true, false, false])
    expect(raked(60)).toBeCloseTo(0, 12)
    expect(raked(90)).toBeCloseTo(0, 12)
    expect(raked(75)).toBeCloseTo(Math.min(Math.cos(75 * RADIANS), 0.5 - Math.cos(75 * RADIANS)), 12)
    expect(margin({ landmark: 'raking' }, where, sun(165, 0), { ...NONE, landmark: -1 })).toBeCloseTo(-RADIANS, 12)
  })

  it('in shade is so by day alone: turned away, or behind the ground', () => {
    const shade = (look: SunLook, over = NONE) => margin({ subject: 'in-shade' }, where, look, over)
    expect(shade(sun(180, 30))).toBeLessThan(0)
    expect(shade(sun(180, 30), { ...NONE, subject: -2 })).toBeCloseTo(2 * RADIANS, 12)
    // The almanacs’ sunset, 50 minutes of arc below the level, ends the day.
    expect(shade(sun(0, -50 / 60))).toBeCloseTo(0, 12)
    expect(shade(sun(0, -1))).toBeLessThan(0)
    expect(shade(sun(0, -0.5))).toBeCloseTo((50 / 60 - 0.5) * RADIANS, 12)
  })

  it('lit takes half of what is seen, in shade all but a tenth', () => {
    const sides = (lit: number) => scene({ subject: [side(180, lit), side(0, 1 - lit)] })
    const south = sun(180, 30)
    expect([0.49, 0.5, 0.51].map((lit) => margin({ subject: 'lit' }, sides(lit), south) >= 0)).toEqual([
      false,
      true,
      true,
    ])
    expect([0.09, 0.1, 0.11].map((lit) => margin({ subject: 'in-shade' }, sides(lit), south) >= 0)).toEqual([
      true,
      true,
      false,
    ])
  })

  it('of a thing of which nothing is seen never holds', () => {
    for (const wish of ['lit', 'in-shade'] as const) {
      expect(margin({ subject: wish }, scene(), sun(180, 30))).toBe(-1)
      expect(margin({ landmark: wish }, scene(), sun(180, 30))).toBe(-1)
    }
    expect(margin({ landmark: 'raking' }, scene(), sun(180, 30))).toBe(-1)
  })
})

describe('light from behind the subject', () => {
  it.each([
    [10, 10, 45],
    [10, 50, 5],
    [10, 55, 0],
    [10, 60, -5],
    [10, 190, -135],
    [350, 20, 15],
    [350, 320, 15],
  ])('wished by a camera that looks to %d holds with the sun at %d by %d degrees', (toSubject, azimuth, degrees) => {
    const found = margin({ subject: 'back-lit' }, scene({ toSubject }), sun(azimuth, 20))
    expect(found).toBeCloseTo(degrees * RADIANS, 12)
  })

  it('needs the sun above the ground there, and a way from the camera to the subject', () => {
    const low = margin({ subject: 'back-lit' }, scene({ toSubject: 0 }), sun(0, 20), { ...NONE, subject: -3 })
    expect(low).toBeCloseTo(-3 * RADIANS, 12)
    expect(margin({ subject: 'back-lit' }, scene({ toSubject: null }), sun(0, 20))).toBe(-1)
  })
})

describe('the sun and the frame', () => {
  // A lens of half an angle of 30 degrees to the sides and 20 up and down, level toward the south.
  const image = 18 / Math.tan(30 * RADIANS)
  const view = makeView({
    frame: localFrame(AT, 0),
    bearing: 180,
    pitch: 0,
    imageDistance: image,
    frameWidth: 36,
    frameHeight: 2 * image * Math.tan(20 * RADIANS),
    refraction: 0,
  })
  const frame = { borders: framePlanes(view) }
  const framed = scene({ frame })

  it('is within by the degrees to the nearest border, beyond by those to the farthest', () => {
    const within = (azimuth: number, altitude: number) => withinFrame(frame, sunDirection(azimuth, altitude))
    expect(within(180, 0)).toBeCloseTo(20, 9)
    expect(within(180, 15)).toBeCloseTo(5, 9)
    expect(within(180, -15)).toBeCloseTo(5, 9)
    expect(within(205, 0)).toBeCloseTo(5, 9)
    expect(within(155, 0)).toBeCloseTo(5, 9)
    expect(within(180, 45)).toBeCloseTo(-25, 9)
    expect(within(250, 0)).toBeCloseTo(-40, 9)
    expect(within(0, 0)).toBeLessThan(-10)
    expect(withinFrame({ borders: [] }, sunDirection(0, 0))).toBe(90)
  })

  it('wished in it needs the sun’s middle within and its edge above the ground', () => {
    const inFrame = (look: SunLook, over = NONE) => margin({ sun: 'in-frame' }, framed, look, over)
    expect(inFrame(sun(180, 15))).toBeCloseTo(5, 9)
    expect(inFrame(sun(180, 21))).toBeCloseTo(-1, 9)
    expect(inFrame(sun(180, 15), { ...NONE, lens: 2 })).toBe(2)
    expect(inFrame(sun(180, 15), { ...NONE, lens: -2 })).toBe(-2)
    expect(inFrame(sun(180, 15), { subject: -1, landmark: -1, lens: 90 })).toBeCloseTo(5, 9)
  })

  it('wished out of it needs all of the disc beyond, or the sun down', () => {
    const out = (look: SunLook, over = NONE) => margin({ sun: 'out-of-frame' }, framed, look, over)
    expect(out(sun(180, 15))).toBeCloseTo(-5 - SUN_RADIUS, 9)
    expect(out(sun(180, 20 + SUN_RADIUS))).toBeCloseTo(0, 9)
    expect(out(sun(180, 25))).toBeCloseTo(5 - SUN_RADIUS, 9)
    expect(out(sun(180, 15), { ...NONE, lens: -2 })).toBe(2)
    expect(out(sun(180, 25), { ...NONE, lens: 90 })).toBeCloseTo(5 - SUN_RADIUS, 9)
  })

  it('never holds where nothing is framed', () => {
    for (const wish of ['in-frame', 'out-of-frame'] as const)
      expect(margin({ sun: wish }, scene(), sun(180, 15))).toBe(-1)
  })
})

describe('the sun’s own height', () => {
  it('is soft light between the sun’s edge at the horizon and six degrees below', () => {
    // The almanacs’ sunset at -50 minutes of arc, the end of civil twilight at -6 degrees.
    const soft = (altitude: number) => margin({ soft: 'either' }, scene(), sun(270, altitude))
    expect(soft(-50 / 60)).toBeCloseTo(0, 12)
    expect(soft(-6)).toBeCloseTo(0, 12)
    expect(soft(0)).toBeCloseTo(-50 / 60, 12)
    expect(soft(-2)).toBeCloseTo(2 - 50 / 60, 12)
    expect(soft(-5)).toBeCloseTo(1, 12)
    expect(soft(-8)).toBeCloseTo(-2, 12)
  })

  it('is the evening’s in the west and the morning’s in the east', () => {
    const soft = (wish: 'evening' | 'morning', azimuth: number) =>
      margin({ soft: wish }, scene(), sun(azimuth, -3)) >= 0
    expect([10, 90, 170, 190, 270, 350].map((azimuth) => soft('morning', azimuth))).toEqual([
      true,
      true,
      true,
      false,
      false,
      false,
    ])
    expect([10, 90, 170, 190, 270, 350].map((azimuth) => soft('evening', azimuth))).toEqual([
      false,
      false,
      false,
      true,
      true,
      true,
    ])
    // Well to its side it is the band alone that counts.
    expect(margin({ soft: 'evening' }, scene(), sun(270, -3))).toBeCloseTo(3 - 50 / 60, 12)
    expect(margin({ soft: 'morning' }, scene(), sun(90, -3))).toBeCloseTo(3 - 50 / 60, 12)
    expect(margin({ soft: 'morning' }, scene(), sun(90, -7))).toBeCloseTo(-1, 12)
  })

  it('is within a band as it appears, by the nearer end', () => {
    const band = { least: 5, most: 20 }
    const raised = { ...sun(90, 4.9), apparent: 5.1 }
    expect(margin({ altitude: band }, scene(), raised)).toBeCloseTo(0.1, 12)
    expect(margin({ altitude: band }, scene(), sun(90, 18))).toBe(2)
    expect(margin({ altitude: band }, scene(), sun(90, 3))).toBe(-2)
    expect(margin({ altitude: band }, scene(), sun(90, 21))).toBe(-1)
    expect(wishMargin('altitude', NO_WISHES, scene(), 0, sun(90, 21))).toBe(0)
  })
})

describe('skylines', () => {
  it('are each thing’s own where nothing is known of them beforehand', () => {
    const hill = { step: 90, altitudes: new Float32Array(4).fill(40) }
    const view = { borders: [{ east: 0, north: -1, up: 0 }] }
    const parts = { subject: [side(180)], landmark: [side(180)], frame: view }
    const south = sun(180, 30)
    for (const [wishes, thing] of [
      [{ subject: 'lit' }, 'subject'],
      [{ subject: 'back-lit' }, 'subject'],
      [{ landmark: 'lit' }, 'landmark'],
      [{ sun: 'in-frame' }, 'lens'],
    ] as const) {
      const level = scene({ ...parts, toSubject: 180 })
      expect(margin(wishes, level, south, null)).toBeGreaterThan(0)
      for (const before of ['subject', 'landmark', 'lens'] as const) {
        const hilly = { ...level, skylines: { ...LEVEL_HORIZON, [before]: hill } }
        expect(margin(wishes, hilly, south, null) >= 0, `${thing} behind the hill of ${before}`).toBe(before !== thing)
      }
    }
  })
})

describe('the moon', () => {
  it('is up by its upper edge and 34 minutes of arc of air', () => {
    assert(
      property(number(-80, 80), number(Date.UTC(2000, 0, 1), Date.UTC(2050, 0, 1)), (lat, instant) => {
        const at = { lat, lon: 20 }
        const { altitude, distance } = moonAt(at, instant)
        // Its radius of 1737.4 km at its distance.
        const radius = Math.asin(1737.4 / distance) / RADIANS
        expect(moonAbove(at, instant)).toBeCloseTo(altitude + radius + 34 / 60, 9)
        const wish = { ...NO_WISHES, moonUp: true }
        expect(wishMargin('moonUp', wish, scene({ at }), instant, sun(0, 0))).toBe(moonAbove(at, instant))
      }),
    )
  })
})

describe('a look at the sun', () => {
  it('has its place without air, its height as it appears, and the way to where it appears', () => {
    const instant = Date.UTC(2026, 5, 14, 5)
    const { azimuth, altitude } = sunAt(AT, instant)
    const apparent = apparentAltitude(altitude)
    expect(apparent).toBeGreaterThan(altitude)
    const direction = sunDirection(azimuth, apparent)
    expect(lookAtSun(AT, instant)).toEqual({ azimuth, altitude, apparent, direction })
  })
})

describe('a look at the sun remembered', () => {
  it('is the look itself, again and again and however many came between', () => {
    const look = rememberingSun(AT)
    const instants = [0, 1e12, 0, 1.7e12, 1e12]
    for (const instant of instants) expect(look(instant)).toEqual(lookAtSun(AT, instant))
    expect(look(0)).toBe(look(0))
  })
})
