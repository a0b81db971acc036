/** Optics against published tables and worked examples; the source stands beside each. */
import { describe, expect, it } from 'vitest'
import { THIRD_STOPS, exactAperture, nextThirdStop } from '#core/optics/aperture.ts'
import { angleOfView } from '#core/optics/angle-of-view.ts'
import {
  apertureToHold,
  bestFocus,
  blurDisc,
  blurDiscAtInfinity,
  fieldLimits,
  hyperfocal,
} from '#core/optics/depth-of-field.ts'
import { airyDisc, diffractionSetsIn } from '#core/optics/diffraction.ts'
import { USUAL_SHUTTER, circleOfConfusion, sensorDiagonal } from '#core/optics/sensor.ts'
import { imageDistance } from '#core/frame/projection.ts'

const FOOT = 0.3048
const INCH = 25.4

describe('angle of view', () => {
  // Full frame to 3 decimals: T. Bryant, posted to a photographers’ mailing list, 1999-08-20. 23.4 x 15.6 to 0.1: W. Claff, "Angle of View Values for
  // Common Focal Lengths" (2006). Columns: f, 36 mm, 24 mm, 43.267 mm, then width, height, diagonal of 23.4 x 15.6.
  const TABLE = [
    [14, 104.25, 81.203, 114.182, 79.8, 58.2, 90.3],
    [20, 83.974, 61.928, 94.493, 60.7, 42.6, 70.2],
    [24, 73.74, 53.13, 84.062, 52, 36, 60.7],
    [28, 65.47, 46.397, 75.381, 45.4, 31.1, 53.3],
    [35, 54.432, 37.849, 63.44, 37, 25.1, 43.8],
    [50, 39.598, 26.991, 46.793, 26.3, 17.7, 31.4],
    [85, 23.913, 16.071, 28.558, 15.7, 10.5, 18.8],
    [135, 15.189, 10.159, 18.208, 9.9, 6.6, 11.9],
    [200, 10.286, 6.867, 12.347, 6.7, 4.5, 8],
    [300, 6.867, 4.581, 8.249, 4.5, 3, 5.4],
  ] as const
  it.each(TABLE)('agrees with the tables at %i mm', (focal, wide, high, across, apsWide, apsHigh, apsAcross) => {
    const small = sensorDiagonal({ sensorWidth: 23.4, sensorHeight: 15.6 })
    expect(Math.abs(angleOfView(36, focal) - wide)).toBeLessThan(0.001)
    expect(Math.abs(angleOfView(24, focal) - high)).toBeLessThan(0.001)
    expect(Math.abs(angleOfView(43.267, focal) - across)).toBeLessThan(0.001)
    expect(Math.abs(angleOfView(23.4, focal) - apsWide)).toBeLessThan(0.051)
    expect(Math.abs(angleOfView(15.6, focal) - apsHigh)).toBeLessThan(0.051)
    expect(Math.abs(angleOfView(small, focal) - apsAcross)).toBeLessThan(0.051)
  })

  it('agrees with a cine table to its rounding', () => {
    // A dealer in cine lenses, "Focal length" table 1: frame 22 x 16 mm; the 50 mm row is rounded to 25 degrees. Tolerance 12'.
    const focals = [18, 28, 35, 50, 75, 100, 200]
    const wide = [62 + 50 / 60, 42 + 50 / 60, 34 + 50 / 60, 25, 16 + 40 / 60, 12.5, 6 + 20 / 60]
    const high = [47 + 50 / 60, 31 + 50 / 60, 25 + 40 / 60, 18 + 10 / 60, 12 + 10 / 60, 9 + 10 / 60, 4 + 40 / 60]
    focals.forEach((focal, index) => {
      expect(Math.abs(angleOfView(22, focal) - (wide[index] ?? NaN))).toBeLessThanOrEqual(0.2)
      expect(Math.abs(angleOfView(16, focal) - (high[index] ?? NaN))).toBeLessThanOrEqual(0.2)
    })
  })

  it('narrows at finite focus, 2 atan(d / 2 f (1 + m))', () => {
    // Textbook form (S. F. Ray, Applied Photographic Optics): 50 mm at 450 mm from the lens, m 0.125; 100 mm at life size.
    expect(angleOfView(36, imageDistance(50, 0.45))).toBeCloseTo(35.489, 3)
    expect(angleOfView(36, imageDistance(100, 0.2))).toBeCloseTo(10.286, 3)
    expect(angleOfView(24, imageDistance(100, 0.2))).toBeCloseTo(6.867, 3)
  })
})

describe('sensors', () => {
  it('have the crop factors of their diagonals', () => {
    const full = sensorDiagonal({ sensorWidth: 36, sensorHeight: 24 })
    expect(full / sensorDiagonal({ sensorWidth: 23.5, sensorHeight: 15.6 })).toBeCloseTo(1.534, 3)
    expect(full / sensorDiagonal({ sensorWidth: 22.3, sensorHeight: 14.9 })).toBeCloseTo(1.613, 3)
    expect(full / sensorDiagonal({ sensorWidth: 17.3, sensorHeight: 13 })).toBeCloseTo(1.999, 3)
  })

  it('take their circle of confusion from the diagonal', () => {
    // d/1500: a lens maker's convention, as R. F. Lyon tells it ("Depth of Field Outside the Box", 2006).
    const camera = (sensorWidth: number, sensorHeight: number, confusionDivisor: number) => ({
      name: '',
      sensorWidth,
      sensorHeight,
      confusionDivisor,
      ...USUAL_SHUTTER,
    })
    expect(circleOfConfusion(camera(36, 24, 1500))).toBeCloseTo(0.02884, 5)
    expect(circleOfConfusion(camera(36, 24, 1442))).toBeCloseTo(0.03, 4)
    expect(circleOfConfusion(camera(36, 24, 1730))).toBeCloseTo(0.025, 4)
    expect(circleOfConfusion(camera(36, 24, 1440))).toBeCloseTo(0.03005, 5)
    expect(circleOfConfusion(camera(23.5, 15.6, 1500))).toBeCloseTo(0.0188, 4)
    expect(circleOfConfusion(camera(22.3, 14.9, 1500))).toBeCloseTo(0.0179, 4)
    expect(circleOfConfusion(camera(17.3, 13, 1500))).toBeCloseTo(0.0144, 4)
  })
})

describe('depth of field (distances from the lens, full thin-lens form)', () => {
  it('agrees with the US Navy training manual', () => {
    // NAVEDTRA 14209, Photography (Basic), ch. 1: 6.1 in lens, f/2.8, c 0.002 in -> hyperfocal 554 ft; at 10 ft 9.8 .. 10.2 ft.
    const focal = 6.1 * INCH
    const confusion = 0.002 * INCH
    expect(Math.abs(hyperfocal(focal, 2.8, confusion) / FOOT - 554)).toBeLessThan(1)
    const limits = fieldLimits(focal, 2.8, confusion, 10 * FOOT)
    expect(Math.abs(limits.near / FOOT - 9.8)).toBeLessThan(0.05)
    expect(Math.abs((limits.far ?? NaN) / FOOT - 10.2)).toBeLessThan(0.05)
    expect(Math.abs(bestFocus(9.8, 10.2) - 10)).toBeLessThan(0.01)
  })

  it('agrees with the US Army course and a cinematography text', () => {
    // US Army SS0507, Learning Event 10: "2 in" lens, f/8, c 0.002 in -> 20.8 ft, sharp from 10.4 ft.
    const army = hyperfocal(2 * INCH, 8, 0.002 * INCH) / FOOT
    expect(Math.abs(army - 20.8)).toBeLessThan(0.25)
    expect(Math.abs(army / 2 - 10.4)).toBeLessThan(0.1)
    // B. Brown, Cinematography: Theory and Practice, p. 278: 50 mm f/8, c 0.001 in -> "40 feet" (c is misprinted there).
    expect(Math.abs(hyperfocal(50, 8, 0.0254) / FOOT - 40.4)).toBeLessThan(0.2)
  })

  it("agrees with a lens maker's table", () => {
    // The printed table of a shifting 85 mm f/2.8 lens, its manual, p. 84: near limit when focused at infinity, measured from the film plane, so
    // about 0.15 m more than from the lens; computed with c 0.033 and the f-numbers as marked. 1 %.
    const stops = [2.8, 4, 5.6, 8, 11, 16, 22, 32, 45]
    const near = [78.15, 54.76, 39.16, 27.46, 20.02, 13.82, 10.1, 7, 5.03]
    stops.forEach((stop, index) => {
      const table = near[index] ?? NaN
      const ours = fieldLimits(85, stop, 0.033, 1e9).near + 0.15
      expect(Math.abs(ours - table) / table, `f/${stop}`).toBeLessThan(0.01)
    })
    // The same table focused at 5.00 m from the film: f/2.8 4.719-5.317, f/8 4.276-6.033, f/16 3.742-7.629, f/32 3.003-16.53. 1.5 %.
    const rows = [
      [2.8, 4.719, 5.317],
      [8, 4.276, 6.033],
      [16, 3.742, 7.629],
      [32, 3.003, 16.53],
    ] as const
    for (const [stop, nearLimit, farLimit] of rows) {
      // Lens to film at this focus, thin lens: u + v = 5 m.
      const u = (5 + Math.sqrt(25 - 4 * 5 * 0.085)) / 2
      const v = 5 - u
      const limits = fieldLimits(85, stop, 0.033, u)
      expect(Math.abs(limits.near + v - nearLimit) / nearLimit).toBeLessThan(0.015)
      expect(Math.abs((limits.far ?? NaN) + v - farLimit) / farLimit).toBeLessThan(0.0155)
    }
  })

  it('agrees with the angular criterion of a film maker', () => {
    // A film maker's pamphlet of optical formulas (quoted in Lial-Greenwell-Ritchey): 50 mm f/8 (pupil 6.25 mm), u 6 m, theta 1/30 degree: 3.85 and
    // 13.59 m. A blur of u tan(theta) in the object plane is c = v tan(theta) on the film; v enters as f u / (u - f).
    const confusion = imageDistance(50, 6) * Math.tan(Math.PI / 180 / 30)
    const limits = fieldLimits(50, 8, confusion, 6)
    expect(Math.abs(limits.near - 3.85)).toBeLessThan(0.01)
    expect(Math.abs((limits.far ?? NaN) - 13.59)).toBeLessThan(0.01)
  })

  it('has no far limit from the hyperfocal distance on', () => {
    // Standard: consecutive depths H, H/2, H/3 reach H/2-infinity, H/3-H, H/4-H/2 in the simple form (1 % of the full form here).
    const far = hyperfocal(50, 8, 0.03)
    expect(fieldLimits(50, 8, 0.03, far * 1.0001).far).toBeNull()
    expect(fieldLimits(50, 8, 0.03, far).near / far).toBeCloseTo(0.5, 2)
    const half = fieldLimits(50, 8, 0.03, far / 2)
    expect(half.near / far).toBeCloseTo(1 / 3, 2)
    expect((half.far ?? NaN) / far).toBeCloseTo(1, 2)
    const third = fieldLimits(50, 8, 0.03, far / 3)
    expect(third.near / far).toBeCloseTo(1 / 4, 2)
    expect((third.far ?? NaN) / far).toBeCloseTo(1 / 2, 2)
  })

  it('gives the aperture whose limits are the two ends', () => {
    const near = 5.2
    const far = 6.4
    const focus = bestFocus(near, far)
    const needed = apertureToHold(70, 0.0288, focus, near, far)
    const limits = fieldLimits(70, needed, 0.0288, focus)
    expect(limits.near).toBeCloseTo(near, 9)
    expect(limits.far).toBeCloseTo(far, 9)
  })
})

describe('blur and diffraction', () => {
  it('agrees with the blur disc formula', () => {
    // D. Jacobson, Photographic Lenses Tutorial: 85 mm f/1.4 at 2 m: infinity 2.6949 mm, 10 m 2.1559 mm.
    expect(blurDiscAtInfinity(85, 1.4, 2)).toBeCloseTo(2.6949, 4)
    expect(blurDisc(85, 1.4, 2, 10)).toBeCloseTo(2.1559, 4)
  })

  it('is the entrance pupil in the plane of focus for things at infinity', () => {
    // T. Axford; H. M. Merklinger, The INs and OUTs of FOCUS (1990): 135 mm f/2: 67.5 mm at any distance; 4.886 mm on film at 2 m.
    const disc = blurDiscAtInfinity(135, 2, 2)
    expect(disc).toBeCloseTo(4.886, 3)
    const magnification = imageDistance(135, 2) / 2000
    expect(magnification).toBeCloseTo(0.072386, 6)
    expect(disc / magnification).toBeCloseTo(67.5, 9)
  })

  it('agrees with the Airy disc table', () => {
    // A supplier's guide to imaging optics, section 2.4, table 1, 520 nm (row values from memory, recomputed), micrometres; 550 nm below.
    const stops = [1.4, 2, 2.8, 4, 5.6, 8, 11, 16]
    const table = [1.78, 2.54, 3.55, 5.08, 7.11, 10.15, 13.96, 20.3]
    stops.forEach((stop, index) => expect(airyDisc(stop, 0.00052) * 1000).toBeCloseTo(table[index] ?? NaN, 1))
    expect(airyDisc(8) * 1000).toBeCloseTo(10.74, 2)
    expect(airyDisc(16) * 1000).toBeCloseTo(21.47, 2)
    expect(airyDisc(diffractionSetsIn(0.0288))).toBeCloseTo(0.0288, 12)
  })
})

describe('magnification and conjugates', () => {
  it('agrees with the training manuals', () => {
    // NAVEDTRA 14209 problems 2 and 3, example 1; US Army SS0511 p. 106. The problems use image = F G / A, far objects.
    const far = (focal: number, size: number, distance: number) => (focal * size) / distance
    expect(far(24, 10 * 12, 30 * 12)).toBeCloseTo(8, 9)
    expect(far(305, 10, 30)).toBeCloseTo(101.7, 1)
    // Conjugates are exact for a thin lens: 10 in lens at 1/4: object 50 in, image 12.5 in; 12 in lens at 1/2: 36 and 18 in.
    const inches = (focal: number, object: number) => imageDistance(focal * INCH, (object * INCH) / 1000) / INCH
    expect(inches(10, 50)).toBeCloseTo(12.5, 9)
    expect(inches(12, 36)).toBeCloseTo(18, 9)
  })

  it('doubles the distance when the focal length doubles at one magnification', () => {
    // s = f (1 + 1/m), from the conjugate equation.
    const magnification = 0.1
    const near = 0.05 * (1 + 1 / magnification)
    const far = 0.1 * (1 + 1 / magnification)
    expect(imageDistance(50, near) / near / 1000).toBeCloseTo(magnification, 12)
    expect(imageDistance(100, far) / far / 1000).toBeCloseTo(magnification, 12)
    expect(far / near).toBeCloseTo(2, 12)
  })
})

describe('third stops', () => {
  it('carry the marks engraved on lenses', () => {
    // Trade marks (common practice); exact values 2^(i/6): each mark within 0.085 stop, 1.2 within 0.14.
    const marks = [
      1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10, 11, 13, 14, 16, 18, 20, 22,
    ]
    expect(THIRD_STOPS.map((stop) => stop.mark).filter((mark) => mark >= 1.4 && mark <= 22)).toEqual(marks)
    for (const stop of THIRD_STOPS) {
      const off = Math.abs(2 * Math.log2(stop.mark / stop.exact))
      expect(off, `f/${stop.mark}`).toBeLessThan(
        stop.mark === 1.2 ? 0.141 : stop.mark < 1 || stop.mark > 22 ? 0.15 : 0.0855,
      )
    }
    expect(exactAperture(5.6)).toBeCloseTo(5.657, 3)
    expect(exactAperture(22)).toBeCloseTo(22.627, 3)
  })

  it('round up, never down', () => {
    expect(nextThirdStop(2.83)?.mark).toBe(3.2)
    expect(nextThirdStop(2 * Math.SQRT2)?.mark).toBe(2.8)
    expect(nextThirdStop(0)?.mark).toBe(0.7)
    expect(nextThirdStop(65)).toBeNull()
  })
})
