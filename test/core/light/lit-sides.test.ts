/** What every photographer knows of lit sides, held for random places and dates (common practice, no source). */
import { Body, HourAngle, Observer } from 'astronomy-engine'
import { assert, integer, pre, property, record } from 'fast-check'
import { describe, expect, test } from 'vitest'
import { aimAt } from '#core/frame/aim.ts'
import { makeView } from '#core/frame/projection.ts'
import { seenFaces } from '#core/frame/seen-faces.ts'
import { destination, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type LocalPoint, localFrame, toLocal } from '#core/geo/local-frame.ts'
import { lightFrom } from '#core/light/direction.ts'
import { incidence, strikeOf, sunDirection } from '#core/light/incidence.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { sunAt } from '#core/light/sky.ts'
import { type ThingFace, landmarkFaces, subjectFaces } from '#core/scene/face.ts'
import { turnBetween } from '#core/units/angle.ts'
import { BICYCLE } from '#test/help/plans.ts'
import { number } from '#test/help/arbitrary.ts'

const place = record({ lat: number(-75, 75), lon: number(-180, 179.9) })
const instant = integer({ min: Date.UTC(2000, 0, 1), max: Date.UTC(2050, 0, 1) })

/** A house of four walls that look to the four quarters. */
function houseSides(at: LatLon): readonly ThingFace[] {
  const footprint = [45, 135, 225, 315].map((bearing) => destination(at, bearing, 12))
  const house = {
    id: 'h',
    name: 'House',
    kind: 'building',
    footprint,
    height: 9,
    baseElevation: 0,
    baseSlope: null,
    baseAspect: null,
  } as const
  return landmarkFaces(house, 0)?.faces ?? []
}

function looking(faces: readonly ThingFace[], bearing: number): ThingFace {
  const found = faces.find((face) => face.bearing !== null && Math.abs(turnBetween(face.bearing, bearing)) < 1)
  if (found === undefined) throw new Error(`no face looks toward ${bearing}`)
  return found
}

/** Hours since the sun's upper transit, -12..12, by a library that the program doesn't use for light. */
function hoursAfterNoon(at: LatLon, when: number): number {
  const hours = HourAngle(Body.Sun, new Date(when), new Observer(at.lat, at.lon, 0))
  return hours > 12 ? hours - 24 : hours
}

describe('a landmark', () => {
  test('has its east face lit in the morning and its west face in the afternoon', () => {
    const seen = { morning: 0, afternoon: 0, south: 0, northOfZenith: 0 }
    assert(
      property(place, instant, (at, when) => {
        const sun = sunAt(at, when)
        const hours = hoursAfterNoon(at, when)
        // Sun up, and a little off noon and midnight: then the sun stands on the meridian and rakes along both faces.
        pre(sun.altitude > 1 && Math.abs(hours) > 0.1 && Math.abs(hours) < 11.9)
        const direction = sunDirection(sun.azimuth, apparentAltitude(sun.altitude))
        const sides = houseSides(at)
        const strikeEast = strikeOf(incidence(looking(sides, 90).normal, direction))
        const strikeWest = strikeOf(incidence(looking(sides, 270).normal, direction))
        expect(strikeEast === 'in-shade').toBe(hours > 0)
        expect(strikeWest === 'in-shade').toBe(hours < 0)
        seen[hours < 0 ? 'morning' : 'afternoon']++
        if (at.lat < 0) seen.south++
        if (at.lat < 20 && (sun.azimuth < 60 || sun.azimuth > 300) && sun.altitude > 30) seen.northOfZenith++
      }),
      { numRuns: 400 },
    )
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(10)
  })

  test('shows the noon sun its south face in the north, its north face in the south, beyond the tropics', () => {
    assert(
      property(number(24, 65), number(-180, 179.9), instant, (lat, lon, when) => {
        for (const [at, lit, dark] of [
          [{ lat, lon }, 180, 0],
          [{ lat: -lat, lon }, 0, 180],
        ] as const) {
          const noon = when - hoursAfterNoon(at, when) * 3_590_170
          const sun = sunAt(at, noon)
          if (sun.altitude < 0.5) continue
          const direction = sunDirection(sun.azimuth, apparentAltitude(sun.altitude))
          const sides = houseSides(at)
          expect(strikeOf(incidence(looking(sides, lit).normal, direction))).not.toBe('in-shade')
          expect(strikeOf(incidence(looking(sides, dark).normal, direction))).toBe('in-shade')
        }
      }),
    )
  })
})

/** The upright faces of the subject that the camera sees, aimed at its middle, and how light strikes each. */
function seenStrikes(stop: LatLon, standpoint: LatLon, lens: number, heading: number, direction: LocalPoint): string[] {
  const ground = localFrame(stop, 0)
  const frame = localFrame(standpoint, lens)
  const aim = aimAt(toLocal(frame, localFrame(stop, BICYCLE.height / 2).origin), 0, 0, 50)
  if (aim === null) throw new Error('can be aimed at')
  const view = makeView({ frame, ...aim, imageDistance: 50, frameWidth: 36, frameHeight: 24, refraction: 0.13 })
  return seenFaces(view, ground, subjectFaces(BICYCLE, heading), 0.13)
    .filter(({ face }) => face.upright)
    .map(({ face }) => strikeOf(incidence(face.normal, direction)))
}

describe('a subject', () => {
  const scene = [place, instant, number(0, 360), number(5, 40), number(0.5, 2)] as const

  test('between camera and sun is a silhouette: the camera sees shaded sides alone, and the light is from behind', () => {
    assert(
      property(...scene, (stop, when, heading, distance, lens) => {
        const sun = sunAt(stop, when)
        pre(sun.altitude > 0.5 && sun.altitude < 60)
        const standpoint = destination(stop, sun.azimuth + 180, distance)
        const direction = sunDirection(sun.azimuth, apparentAltitude(sun.altitude))
        const strikes = seenStrikes(stop, standpoint, lens, heading, direction)
        expect(strikes.length).toBeGreaterThan(0)
        expect(strikes.every((strike) => strike === 'in-shade')).toBe(true)
        const bearing = geodesicLine(standpoint, stop).bearing ?? Number.NaN
        expect(lightFrom(sun.azimuth, bearing, sun.altitude)).toMatchObject({ side: 'behind', hand: null })
      }),
    )
  })

  test('with the sun at the back of the camera is lit on every side that is seen, from the front', () => {
    assert(
      property(...scene, (stop, when, heading, distance, lens) => {
        const sun = sunAt(stop, when)
        pre(sun.altitude > 0.5 && sun.altitude < 60)
        const standpoint = destination(stop, sun.azimuth, distance)
        const direction = sunDirection(sun.azimuth, apparentAltitude(sun.altitude))
        const strikes = seenStrikes(stop, standpoint, lens, heading, direction)
        expect(strikes.length).toBeGreaterThan(0)
        expect(strikes.includes('in-shade')).toBe(false)
        const bearing = geodesicLine(standpoint, stop).bearing ?? Number.NaN
        expect(lightFrom(sun.azimuth, bearing, sun.altitude)).toMatchObject({ side: 'front', hand: null })
      }),
    )
  })
})
