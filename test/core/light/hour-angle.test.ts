/** From a direction in the sky to hour angle and declination, and the points of a disc: a printed example, the sky's own geometry, and back. */
import { assert, constantFrom, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CENTRE, LEFT_LIMB, LOWER_LIMB, RIGHT_LIMB, UPPER_LIMB, bodyAt, discPlace, isUp } from '#core/light/body.ts'
import { hourPlace } from '#core/light/hour-angle.ts'
import { sunDirection } from '#core/light/incidence.ts'
import { SUN_RADIUS, moonAt, sunAt } from '#core/light/sky.ts'
import { number } from '#test/help/arbitrary.ts'

const RADIANS = Math.PI / 180

describe('the hour angle', () => {
  it('is that of a printed example', () => {
    // J. Meeus, Astronomical Algorithms, example 13.b: Venus from Washington. He counts azimuths from the south.
    const found = hourPlace(38 + 55 / 60 + 17 / 3600, 180 + 68.0337, 15.1249)
    expect(found.hourAngle).toBeCloseTo(64.352_133, 3)
    expect(found.declination).toBeCloseTo(-(6 + 43 / 60 + 11.61 / 3600), 3)
  })

  it.each([
    // Place, azimuth, altitude: hour angle and declination by sight.
    [50, 180, 40, 0, 0],
    [50, 0, 50, 180, 90],
    [-50, 180, 50, 0, -90],
    [0, 90, 0, -90, 0],
    [0, 270, 0, 90, 0],
    [0, 0, 0, 0, 90],
    [50, 180, 63.4, 0, 23.4],
    [50, 0, 26.6, 180, 66.6],
    [90, 135, 20, -45, 20],
    [90, 225, 20, 45, 20],
  ])(
    'at latitude %d toward %d at %d degrees is %d, the declination %d',
    (lat, azimuth, altitude, hourAngle, declination) => {
      const found = hourPlace(lat, azimuth, altitude)
      expect(found.declination).toBeCloseTo(declination, 6)
      // At the celestial pole itself every hour angle is as good.
      if (Math.abs(declination) < 90) expect(Math.abs(found.hourAngle)).toBeCloseTo(Math.abs(hourAngle), 6)
      if (Math.abs(declination) < 90 && Math.abs(hourAngle) < 180) expect(found.hourAngle).toBeCloseTo(hourAngle, 6)
    },
  )

  it('leads back to the direction by the textbook formulas', () => {
    // sin h = sin lat sin dec + cos lat cos dec cos H; the eastward part is -cos dec sin H.
    assert(
      property(number(-90, 90), number(0, 360), number(-90, 90), (lat, azimuth, altitude) => {
        const { hourAngle, declination } = hourPlace(lat, azimuth, altitude)
        const [h, d, l] = [hourAngle * RADIANS, declination * RADIANS, lat * RADIANS]
        const toward = sunDirection(azimuth, altitude)
        expect(-Math.cos(d) * Math.sin(h)).toBeCloseTo(toward.east, 9)
        expect(Math.sin(l) * Math.sin(d) + Math.cos(l) * Math.cos(d) * Math.cos(h)).toBeCloseTo(toward.up, 9)
        expect(Math.cos(l) * Math.sin(d) - Math.sin(l) * Math.cos(d) * Math.cos(h)).toBeCloseTo(toward.north, 9)
      }),
    )
  })
})

describe('a disc', () => {
  const AT = { lat: 47, lon: 8 }

  it('is of sun or moon, by the name', () => {
    assert(
      property(number(Date.UTC(2000, 0, 1), Date.UTC(2050, 0, 1)), (instant) => {
        expect(bodyAt('sun', AT, instant)).toEqual({ ...sunAt(AT, instant), radius: SUN_RADIUS })
        expect(bodyAt('moon', AT, instant)).toEqual(moonAt(AT, instant))
      }),
      { numRuns: 20 },
    )
  })

  it('has its limbs a radius from its centre, up and down and to both hands', () => {
    const limbs = constantFrom(LEFT_LIMB, RIGHT_LIMB, LOWER_LIMB, UPPER_LIMB)
    assert(
      property(number(0, 359), number(-60, 80), number(0.2, 0.3), limbs, (azimuth, altitude, radius, limb) => {
        const disc = { azimuth, altitude, radius }
        const there = discPlace(disc, limb)
        const [one, other] = [disc, there].map((place) => sunDirection(place.azimuth, place.altitude))
        const chord = Math.hypot(
          ...(['east', 'north', 'up'] as const).map((axis) => (one?.[axis] ?? 0) - (other?.[axis] ?? 0)),
        )
        expect((2 * Math.asin(chord / 2)) / RADIANS).toBeCloseTo(radius, 4)
        expect(Math.sign(there.azimuth - azimuth)).toBe(limb.across)
        expect(Math.sign(there.altitude - altitude)).toBe(limb.up)
      }),
    )
    const disc = { azimuth: 100, altitude: 10, radius: 0.27 }
    expect(discPlace(disc, CENTRE)).toEqual({ azimuth: 100, altitude: 10 })
    // At the very zenith there is no left or right, but still a place.
    expect(discPlace({ ...disc, altitude: 90 }, RIGHT_LIMB).azimuth).toBeCloseTo(190, 6)
  })

  it('is up while its upper edge, lifted by the air, stands above the level', () => {
    // The air lifts an edge at the horizon by 29 to 36 minutes of arc (Bennett; the almanacs take 34).
    const up = (altitude: number) => isUp({ azimuth: 0, altitude, radius: 16 / 60 })
    expect([up(5), up(0), up(-0.6), up(-1), up(-5), up(-30)]).toEqual([true, true, true, false, false, false])
  })
})
