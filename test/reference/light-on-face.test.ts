/** Light on a tilted plane against the published example of the solar position algorithm. */
import { describe, expect, test } from 'vitest'
import { incidence, sunDirection } from '#core/light/incidence.ts'

// I. Reda, A. Andreas, Solar Position Algorithm for Solar Radiation Applications, NREL/TP-560-34302 (rev. 2008), example of
// 2003-10-17: topocentric zenith 50.11162, azimuth 194.34024; a plane tilted 30 and turned -10 from south, west positive.
const ZENITH = 50.111_62
const AZIMUTH = 194.340_24
const TILT = 30
const FACING = 170

describe('the incidence angle of the NREL example', () => {
  test('25.18700 degrees, within 0.0001', () => {
    // A plane that lies level looks straight up; tilted, its normal leans toward where it faces.
    const normal = sunDirection(FACING, 90 - TILT)
    const found = incidence(normal, sunDirection(AZIMUTH, 90 - ZENITH))
    expect(Math.abs(found - 25.187)).toBeLessThan(1e-4)
  })

  test('on a level plane it is the zenith distance itself', () => {
    const found = incidence({ east: 0, north: 0, up: 1 }, sunDirection(AZIMUTH, 90 - ZENITH))
    expect(Math.abs(found - ZENITH)).toBeLessThan(1e-9)
  })
})
