/** Exposure against the published tables, each with its source. */
import { assert, constantFrom, property } from 'fast-check'
import { describe, expect, test } from 'vitest'
import { EXPOSURE_TABLE, type TableLineId, tableValue } from '#core/light/exposure-table.ts'
import {
  BEFORE_SUNSET,
  DARK_BELOW,
  FULL_FROM,
  SHUTTER_MARKS,
  SKIES,
  SUNSET,
  type Sky,
  evOfIlluminance,
  expectedEv,
  exposureAgainstCamera,
  illuminanceOf,
  luminanceOf,
  nearestShutterMark,
  shutterTime,
  stopsOfDensity,
  transmissionOfDensity,
} from '#core/light/exposure.ts'
import { THIRD_STOPS, exactAperture } from '#core/optics/aperture.ts'
import { number } from '#test/help/arbitrary.ts'

const ev100 = (aperture: number, seconds: number): number => Math.log2((aperture * aperture) / seconds)

describe('EV = log2(N^2 / t)', () => {
  // ISO 2720 and APEX; nominal marks.
  test.each([
    [1, 1, 0],
    [16, 1 / 125, 14.97],
    [2.8, 1 / 250, 10.94],
  ])('f/%d at %d s', (aperture, seconds, ev) => {
    expect(Math.abs(ev100(aperture, seconds) - ev)).toBeLessThan(0.01)
    expect(Math.abs(shutterTime(ev, aperture, 100) / seconds - 1)).toBeLessThan(0.01)
  })

  test('at another speed it is that at ISO 100 and log2(S / 100) more: APEX Sv(100) = 5 (ISO 2720, ASA PH2.5-1960)', () => {
    expect(shutterTime(10, 4, 200)).toBeCloseTo(shutterTime(11, 4, 100), 15)
    expect(shutterTime(10, 4, 3200)).toBeCloseTo(shutterTime(15, 4, 100), 15)
    expect(shutterTime(10, 4, 50)).toBeCloseTo(shutterTime(9, 4, 100), 15)
  })

  test('the rule of f/16 at 1/ISO is EV 14.64 at ISO 100', () => {
    for (const iso of [50, 100, 400]) expect(Math.abs(shutterTime(14.64, 16, iso) * iso - 1)).toBeLessThan(0.005)
  })
})

// Tables of an encyclopaedia's article "Exposure value": luminance with K = 12.5, illuminance with C = 250 on a flat receptor.
describe('what an EV stands for', () => {
  test.each([
    [-4, 0.0078, 0.156],
    [0, 0.125, 2.5],
    [3, 1, 20],
    [5, 4, 80],
    [10, 128, 2560],
    [12, 512, 10_240],
    [15, 4096, 81_920],
    [16, 8192, 163_840],
  ])('EV %d: %d cd/m2, %d lx', (ev, luminance, illuminance) => {
    expect(Math.abs(luminanceOf(ev) / luminance - 1)).toBeLessThan(0.005)
    expect(Math.abs(illuminanceOf(ev) / illuminance - 1)).toBeLessThan(0.005)
    expect(Math.abs(evOfIlluminance(illuminance) - ev)).toBeLessThan(0.01)
  })

  test('a footlambert, 3.4262591 cd/m2 by definition (1 / pi candela a square foot), is right for EV 4.78', () => {
    const footlambert = 1 / Math.PI / 0.3048 ** 2
    expect(footlambert).toBeCloseTo(3.426_259_1, 7)
    // APEX counts brightness from a footlambert, Bv 0, which at Sv 5 is EV 5 with K = 11.4; K = 12.5 makes it 4.78.
    expect(luminanceOf(4.777)).toBeCloseTo(footlambert, 2)
  })
})

// ANSI PH2.7-1973 and 1986, as tabulated in an encyclopaedia's article "Exposure value".
const PUBLISHED: Readonly<Record<TableLineId, readonly [low: number, high: number]>> = {
  'sand-or-snow-in-sun': [16, 16],
  sun: [15, 15],
  'hazy-sun': [14, 14],
  'cloudy-bright': [13, 13],
  'heavy-overcast': [12, 12],
  'open-shade': [12, 12],
  'rainbow-on-clear-sky': [15, 15],
  'rainbow-on-cloudy-sky': [14, 14],
  'sky-just-before-sunset': [12, 14],
  'sky-at-sunset': [12, 12],
  'sky-just-after-sunset': [9, 11],
  'moon-full': [15, 15],
  'moon-gibbous': [14, 14],
  'moon-quarter': [13, 13],
  'moon-crescent': [12, 12],
  'moonlight-full': [-3, -2],
  'moonlight-gibbous': [-4, -4],
  'moonlight-quarter': [-6, -6],
  neon: [9, 10],
  'bright-streets': [8, 8],
  'window-displays': [7, 8],
  'vehicle-traffic': [5, 5],
  'floodlit-buildings': [3, 5],
  'distant-lit-buildings': [2, 2],
  'aurora-bright': [-4, -3],
}

describe('the daylight table (ANSI PH2.7)', () => {
  test('line by line', () => {
    expect(Object.fromEntries(EXPOSURE_TABLE.map(({ id, low, high }) => [id, [low, high]]))).toEqual(PUBLISHED)
    expect(tableValue('sky-just-before-sunset')).toBe(13)
  })

  test.each<[Sky, number]>([
    ['clear', 15],
    ['hazy', 14],
    ['cloudy-bright', 13],
    ['overcast', 12],
    ['open-shade', 12],
  ])('under a high sun, from the front: %s %d', (sky, ev) => {
    for (const altitude of [FULL_FROM, 35, 64, 90])
      expect(expectedEv(sky, altitude, 'front')).toEqual({ ev, skyEv: null, note: 'daylight' })
  })

  test('side light takes 1 EV, light from behind 2, where there is sun to come from a side (note a)', () => {
    for (const [sky, front] of [
      ['clear', 15],
      ['hazy', 14],
    ] as const) {
      expect(expectedEv(sky, 40, 'side').ev).toBe(front - 1)
      expect(expectedEv(sky, 40, 'behind').ev).toBe(front - 2)
    }
    for (const sky of ['cloudy-bright', 'overcast', 'open-shade'] as const)
      expect(expectedEv(sky, 40, 'behind').ev).toBe(expectedEv(sky, 40, 'front').ev)
  })

  test('the rule of f/16, made for light 55 to 80 degrees off the axis, agrees with it within half a stop (ANSI guide 9.1)', () => {
    const rule = ev100(16, 1 / 100)
    expect(Math.abs((expectedEv('clear', 50, 'front').ev ?? Number.NaN) - rule)).toBeLessThan(0.5)
    expect(expectedEv('clear', 70, 'above').ev).toBe(15)
  })

  test('the sky about a low sun: just before sunset 12-14, at sunset 12, just after 9-11', () => {
    const at = (altitude: number): number => expectedEv('clear', altitude, 'behind').skyEv ?? Number.NaN
    for (const altitude of [BEFORE_SUNSET, 3, 1, 0]) {
      expect(at(altitude)).toBeGreaterThanOrEqual(12)
      expect(at(altitude)).toBeLessThanOrEqual(14)
    }
    expect(at(SUNSET)).toBe(12)
    for (const altitude of [-2.6, -4, -5, DARK_BELOW]) {
      expect(at(altitude)).toBeGreaterThanOrEqual(9)
      expect(at(altitude)).toBeLessThanOrEqual(11)
    }
    expect(expectedEv('clear', BEFORE_SUNSET + 0.01, 'behind').skyEv).toBeNull()
    expect(expectedEv('overcast', 0, 'behind').skyEv).toBeNull()
  })

  test('moonlight on a landscape, the moon above 40 degrees: full -3 to -2, gibbous -4, quarter -6', () => {
    const by = (lit: number, altitude = 50) => expectedEv('clear', -30, 'front', { altitude, lit })
    expect(by(1)).toEqual({ ev: -2.5, skyEv: null, note: 'moonlight' })
    expect(by(0.8).ev).toBe(-4)
    expect(by(0.5).ev).toBe(-6)
    for (const none of [by(0.2), by(1, 40), expectedEv('overcast', -30, 'front', { altitude: 50, lit: 1 })])
      expect(none).toEqual({ ev: null, skyEv: null, note: 'unknown' })
  })
})

describe('carried down to a low sun', () => {
  // Published tables of illuminance: 400 lx at sunset on a clear day, 40 lx overcast, 3.4 lx at the dark limit of civil
  // twilight under a clear sky (an encyclopaedia's article "Orders of magnitude (illuminance)" and its like).
  test.each<[Sky, number, number]>([
    ['clear', SUNSET, 400],
    ['overcast', SUNSET, 40],
    ['clear', DARK_BELOW, 3.4],
  ])('%s, sun at %d: %d lx on the ground', (sky, altitude, lux) => {
    const { ev } = expectedEv(sky, altitude, 'front')
    expect(Math.abs(illuminanceOf(ev ?? Number.NaN) / lux - 1)).toBeLessThan(1e-9)
  })

  test('never brightens as the sun sinks, never leaps, never darker under a clearer sky', () => {
    assert(
      property(
        constantFrom(...SKIES),
        constantFrom('front', 'side', 'behind'),
        number(-6, 89),
        (sky, side, altitude) => {
          const ev = (above: number): number => expectedEv(sky, altitude + above, side).ev ?? Number.NaN
          expect(ev(0.01)).toBeGreaterThanOrEqual(ev(0) - 1e-9)
          expect(ev(0.01) - ev(0)).toBeLessThan(0.02)
          expect(expectedEv('clear', altitude, 'front').ev ?? Number.NaN).toBeGreaterThanOrEqual(
            expectedEv(sky, altitude, 'front').ev ?? Number.NaN,
          )
        },
      ),
    )
  })

  test('is told by its note, and unknown below -6', () => {
    expect(expectedEv('clear', 19.9, 'front').note).toBe('low-sun')
    expect(expectedEv('clear', -0.9, 'front').note).toBe('twilight')
    expect(expectedEv('clear', -6.001, 'front')).toEqual({ ev: null, skyEv: null, note: 'unknown' })
    expect(expectedEv('clear', -8, 'front', { altitude: 60, lit: 1 }).ev).toBeNull()
  })
})

describe('marks', () => {
  test('full stops of aperture, exact and marked: 2^(i/2)', () => {
    const exact = [1, Math.SQRT2, 2, 2.828, 4, 5.657, 8, 11.314, 16, 22.627, 32]
    const marked = [1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32]
    marked.forEach((mark, index) => expect(exactAperture(mark)).toBeCloseTo(exact[index] ?? Number.NaN, 3))
  })

  test('third stops of aperture lie within 0.085 stop of their mark, 1.2 within 0.14 (trade marks)', () => {
    for (const { mark, exact } of THIRD_STOPS.filter((stop) => stop.mark >= 1.1 && stop.mark <= 22))
      expect(Math.abs(2 * Math.log2(mark / exact))).toBeLessThan(mark === 1.2 ? 0.141 : 0.085)
  })

  test('shutter: 1/30 to 1/1000 stand for 1/32 to 1/1024; Tv of the nominal 1/30 is 4.907, of 1/250 7.966', () => {
    const full = [
      ['1/30', 32],
      ['1/60', 64],
      ['1/125', 128],
      ['1/250', 256],
      ['1/500', 512],
      ['1/1000', 1024],
    ] as const
    for (const [text, part] of full)
      expect(SHUTTER_MARKS.find((mark) => mark.text === text)?.exact).toBeCloseTo(1 / part, 12)
    expect(Math.log2(30)).toBeCloseTo(4.907, 3)
    expect(Math.log2(250)).toBeCloseTo(7.966, 3)
  })

  test('every shutter mark lies within 0.12 stop of what it stands for, a third from the next', () => {
    expect(SHUTTER_MARKS.map((mark) => mark.text)).toHaveLength(55)
    SHUTTER_MARKS.forEach(({ text, exact }, index) => {
      const [whole = '', part] = text.split('/')
      const nominal = part === undefined ? Number(whole) : Number(whole) / Number(part)
      expect(Math.abs(Math.log2(nominal / exact)), text).toBeLessThan(0.12)
      expect(nearestShutterMark(nominal)?.text).toBe(text)
      const next = SHUTTER_MARKS[index + 1]
      if (next !== undefined) expect(Math.log2(next.exact / exact)).toBeCloseTo(1 / 3, 12)
    })
  })

  test('the nearest mark is nearest in stops; there is none for what no mark comes near', () => {
    assert(
      property(number(Math.log2(1 / 8000), Math.log2(30)), (log) => {
        const found = nearestShutterMark(2 ** log)
        expect(Math.abs(Math.log2(found?.exact ?? Number.NaN) - log)).toBeLessThanOrEqual(1 / 6 + 1e-9)
      }),
    )
    expect(nearestShutterMark(1 / 12_000)).toBeNull()
    expect(nearestShutterMark(60)).toBeNull()
  })

  test.each([
    // f/16 in the sun at ISO 100: 1/125; f/2.8 at EV 15: 1/4000; f/5.6 at EV 7.3, ISO 400: 1/20.
    [15, 16, 100, '1/125'],
    [15, 2.8, 100, '1/4000'],
    [7.32, 5.6, 400, '1/20'],
    [0.44, 2.8, 100, '6'],
  ])('EV %d, f/%d, ISO %d: %s', (ev, aperture, iso, text) => {
    expect(nearestShutterMark(shutterTime(ev, exactAperture(aperture), iso))?.text).toBe(text)
  })
})

describe('the camera', () => {
  const limits = { fastest: 1 / 4000, slowest: 30 }
  test('says by how many stops a time lies beyond its limits', () => {
    expect(exposureAgainstCamera(1 / 500, limits)).toEqual({ fits: 'within', stops: 0 })
    expect(exposureAgainstCamera(1 / 16_000, limits)).toEqual({ fits: 'too-bright', stops: 2 })
    expect(exposureAgainstCamera(120, limits)).toEqual({ fits: 'too-dark', stops: 2 })
  })

  test('counts the exact time behind a mark as the mark: 1/4096 for 1/4000, 32 s for 30', () => {
    expect(exposureAgainstCamera(1 / 4096, limits).fits).toBe('within')
    expect(exposureAgainstCamera(32, limits).fits).toBe('within')
  })
})

describe('neutral density', () => {
  // A film maker's printed list of neutral density filters: density over log10(2).
  test.each([
    [0.3, 0.997],
    [0.6, 1.993],
    [0.9, 2.99],
    [1.2, 3.986],
    [1.8, 5.979],
    [3, 9.966],
  ])('density %d takes %d stops', (density, stops) => {
    expect(Math.abs(stopsOfDensity(density) - stops)).toBeLessThan(0.0006)
  })

  test.each([
    [0.1, 80],
    [0.2, 63],
    [0.3, 50],
    [0.4, 40],
    [0.5, 32],
    [0.6, 25],
    [0.7, 20],
    [0.8, 16],
  ])('density %d lets %d %% through (the same list)', (density, percent) => {
    expect(Math.abs(100 * transmissionOfDensity(density) - percent)).toBeLessThan(0.6)
  })
})
