/** The sheet's places, directions and cautions, held against the assessment and the published magnetic model. */
import { describe, expect, it } from 'vitest'
import { parseCoordinates } from '#core/geo/coordinate-text.ts'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import { assess } from '#core/plan/assess.ts'
import { MOVES } from '#core/tolerance/moves.ts'
import { planTolerances } from '#core/tolerance/plan-tolerances.ts'
import { qrPlace, sheetDirections, sheetPlaces, sheetTolerances } from '#core/sheet/content.ts'
import { turnBetween } from '#core/units/angle.ts'
import { examplePlan } from '#test/help/plans.ts'

const DAY = Date.UTC(2026, 10, 24)
const parking = { lat: -41.201, lon: 12.402 }
const withParking = () => {
  const plan = examplePlan()
  return { ...plan, spot: { ...plan.spot, access: { ...plan.spot.access, parking } } }
}

describe('places of the sheet', () => {
  it('read back as the place they name, in every form', () => {
    for (const place of sheetPlaces(withParking())) {
      for (const text of [place.decimal, place.dms, place.utm ?? '', place.mgrs ?? '', place.geoUri]) {
        const read = parseCoordinates(text)
        expect(read.ok, text).toBe(true)
        if (read.ok) expect(geodesicDistance(read.value.at, place.at), text).toBeLessThan(3)
      }
    }
  })

  it('come as one needs them: where the subject stops, where the camera stands, where one parks', () => {
    expect(sheetPlaces(withParking()).map(({ role }) => role)).toEqual(['subject', 'standpoint', 'parking'])
  })

  it('have a page of a map with a mark on them', () => {
    const page = new URL(sheetPlaces(withParking()).at(-1)?.mapPage ?? '')
    expect(page.protocol).toBe('https:')
    expect(Number(page.searchParams.get('mlat'))).toBeCloseTo(parking.lat, 6)
    expect(Number(page.searchParams.get('mlon'))).toBeCloseTo(parking.lon, 6)
    expect(page.hash).toBe('#map=17/-41.201000/12.402000')
  })

  it('lead the QR code to the parking place, else to the standpoint', () => {
    expect(qrPlace(withParking()).role).toBe('parking')
    expect(qrPlace(examplePlan()).role).toBe('standpoint')
    expect(qrPlace(withParking()).geoUri).toBe('geo:-41.201,12.402')
  })

  it('have no grid near the pole, and say so with null', () => {
    const [standpoint] = sheetPlaces(examplePlan({ at: { lat: 88, lon: 10 } }))
    expect(standpoint?.utm).toBeNull()
    expect(standpoint?.mgrs).toBeNull()
  })
})

describe('directions of the sheet', () => {
  it('are those of the assessment, and magnetic by the declination', () => {
    const plan = withParking()
    const made = assess(plan)
    const { rows, declination } = sheetDirections(plan, made, DAY)
    expect(rows.map((row) => `${row.from} ${row.to}`)).toEqual([
      'standpoint subject',
      'standpoint landmark',
      'subject landmark',
      'parking standpoint',
    ])
    expect(rows[0]?.distance).toBe(made.toSubject.distance)
    expect(rows[1]?.bearing).toBe(made.toLandmark?.bearing)
    for (const row of rows) {
      expect(turnBetween(row.magnetic ?? NaN, row.bearing ?? NaN)).toBeCloseTo(declination?.degrees ?? NaN, 9)
    }
  })

  it('takes magnetic north from the World Magnetic Model', () => {
    // WMM2025 test values (NOAA NCEI / BGS): 2027.5, height 0, latitude -80, longitude 240: D 68.49 degrees east.
    const plan = examplePlan({ at: { lat: -80, lon: -120 }, bearing: 0 })
    const spot = { ...plan.spot, standpoint: { ...plan.spot.standpoint, elevation: 0 } }
    const { declination } = sheetDirections({ ...plan, spot }, assess(plan), Date.UTC(2027, 6, 2, 12))
    expect(declination?.degrees).toBeCloseTo(68.49, 1)
  })

  it('leaves magnetic bearings unknown outside the model', () => {
    const plan = examplePlan()
    const { rows, declination } = sheetDirections(plan, assess(plan), Date.UTC(2050, 0, 1))
    expect(declination).toBeNull()
    expect(rows.every((row) => row.magnetic === null)).toBe(true)
  })
})

it('the tolerances tell every way of being off once, and the tightest as the board has them', () => {
  const found = planTolerances({ plan: examplePlan(), zone: 'UTC', parkings: [] })
  if (found === null) throw new Error('nothing is framed')
  const { rows, first, failing } = sheetTolerances(found)
  const told = rows.flatMap(({ tolerances }) => tolerances)
  expect(told.map(([move]) => move).toSorted()).toEqual([...MOVES].toSorted())
  for (const [move, tolerance] of told) expect(tolerance).toBe(found.tolerances[move])
  expect(first.length).toBeGreaterThan(0)
  expect(failing).toBe(found.failing)
})
