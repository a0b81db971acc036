/** Curvature, refraction, horizon and dip against published figures. */
import { describe, expect, it } from 'vitest'
import {
  curvatureDrop,
  distanceOfDrop,
  hiddenHeight,
  horizonDip,
  horizonDistance,
} from '#core/geo/curvature-and-refraction.ts'
import { FOOT, NAUTICAL_MILE, NAVIGATORS_REFRACTION, SEA_HORIZON } from '#test/help/sea-horizon.ts'

const SEVENTH = 1 / 7

describe('curvature and refraction', () => {
  // Ghilani and Wolf, Elementary Surveying, 13th edition, chapter 4 (source seen as a lecture copy).
  it('curvature alone: 0.0785 m in a kilometre', () => {
    expect(Math.abs(curvatureDrop(1000, 0) - 0.0785)).toBeLessThan(1e-4)
  })

  // The same: 0.0675 K^2, which is a refraction of about 0.14.
  it.each([
    [1000, 0.0675],
    [5000, 1.69],
    [10_000, 6.75],
  ])('combined correction for %d m is %d m', (distance, metres) => {
    expect(Math.abs(curvatureDrop(distance, SEVENTH) / metres - 1)).toBeLessThan(0.01)
  })

  it('is 0.0683 m in a kilometre with the default refraction of 0.13', () => {
    expect(curvatureDrop(1000)).toBeCloseTo(0.0683, 4)
  })

  // civilnoteppt.com: curvature 0.0785 K^2, refraction 0.0112 K^2.
  it('curvature and refraction apart', () => {
    expect(Math.abs(curvatureDrop(900, 0) - 0.0636)).toBeLessThan(1e-3)
    expect(Math.abs(curvatureDrop(2500, 0) - 0.491)).toBeLessThan(1e-3)
    const refraction = (distance: number): number => curvatureDrop(distance, 0) - curvatureDrop(distance, SEVENTH)
    expect(Math.abs(refraction(700) - 0.0055)).toBeLessThan(1e-4)
    expect(Math.abs(refraction(1500) - 0.0252)).toBeLessThan(1e-4)
  })

  // Ghilani and Wolf, exercise (inputs source seen): 24.54 m by 0.0675 K^2; that factor is a refraction of 0.14.
  it('height of a lighthouse that is just visible', () => {
    const refraction = 1 - (0.0675 * 2 * 6371.0088) / 1000
    expect(Math.abs(hiddenHeight(24_140, 1.738, refraction) - 24.54)).toBeLessThan(0.1)
  })

  // A textbook exercise (computed): refraction a seventh of curvature, 3 mm combined.
  it('distance at which the combined correction is 3 mm', () => {
    expect(Math.abs(distanceOfDrop(0.003, SEVENTH) - 211)).toBeLessThan(1)
  })

  // OSGeo/GDAL issues 4415 and 8915: a flat sea, 50 km away.
  it('50 km over the sea with and without air', () => {
    expect(curvatureDrop(50_000, 0)).toBeCloseTo(196.2, 1)
    expect(curvatureDrop(50_000, SEVENTH)).toBeCloseTo(168.2, 1)
    expect(curvatureDrop(50_000)).toBeCloseTo(170.7, 1)
  })
})

describe('the sea horizon', () => {
  it.each(SEA_HORIZON)('from %d feet lies %d nautical miles away', (feet, miles) => {
    expect(Math.abs(horizonDistance(feet * FOOT, NAVIGATORS_REFRACTION) / NAUTICAL_MILE - miles)).toBeLessThan(0.05)
  })

  // The factors by refraction: Bowditch table 12 (source seen on navlist.net).
  it.each([
    [0.168, 1.1665],
    [0, 1.064],
    [0.13, 1.141],
  ])('with refraction %d has the factor %d', (refraction, factor) => {
    expect(Math.abs(horizonDistance(FOOT, refraction) / NAUTICAL_MILE - factor)).toBeLessThan(0.002)
  })

  // Nautical Almanac, 1.76 sqrt(h) (from memory), and the geometric dip.
  it.each([
    [2, 2.49, 2.72],
    [3, 3.05, 3.34],
    [10, 5.57, 6.09],
    [20, 7.87, 8.61],
    [100, 17.6, 19.26],
  ])('from %d m dips by %d arc minutes, %d without air', (height, almanac, geometric) => {
    expect(Math.abs(horizonDip(height, 0.168) * 60 - almanac)).toBeLessThan(0.05)
    expect(Math.abs(horizonDip(height, 0) * 60 - geometric)).toBeLessThan(0.05)
  })

  // (d - d_h)^2 (1 - k) / 2R with R 6371 km (computed).
  it.each([
    [10_000, 0, 1.924],
    [30_000, 0, 48.86],
    [10_000, 0.13, 1.437],
    [30_000, 0.13, 41.28],
  ])('hides at %d m with refraction %d the lowest %d m', (distance, refraction, metres) => {
    expect(Math.abs(hiddenHeight(distance, 2, refraction) / metres - 1)).toBeLessThan(0.001)
  })

  it('hides nothing on this side, and an eye at or below the water has no far horizon', () => {
    expect(hiddenHeight(3000, 2)).toBe(0)
    expect(horizonDistance(0)).toBe(0)
    expect(horizonDistance(-1)).toBe(0)
    expect(horizonDip(-1)).toBe(0)
  })
})
