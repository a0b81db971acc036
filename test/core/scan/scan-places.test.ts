/** The places of a scan: along lines, over areas, turned as the ground lets them, keep-outs taken out. */
import { describe, expect, it } from 'vitest'
import { destination, geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { KeepOut } from '#core/record/keep-out.ts'
import type { StoppingGround } from '#core/record/stopping-ground.ts'
import { cameraKeptOut, keptOut } from '#core/scan/kept-out.ts'
import { measuredLine, pointAlong, scanPlaces } from '#core/scan/scan-places.ts'
import { CENTRE, requestOf, lineThrough } from '#test/help/scans.ts'

function square(centre: LatLon, half: number, id = 'area'): StoppingGround {
  const points = [45, 135, 225, 315].map((bearing) => destination(centre, bearing, half * Math.SQRT2))
  return { id, name: id, form: 'area', turn: 'along', points }
}

function keepOut(points: readonly LatLon[], part: Partial<KeepOut> = {}): KeepOut {
  return {
    id: 'out',
    name: 'Out',
    kind: 'other',
    form: 'line',
    points,
    width: 21,
    whom: 'both',
    noCrossing: false,
    ...part,
  }
}

describe('a line', () => {
  it('has both its ends and points no farther apart than the step', () => {
    const ground = lineThrough(70, 105)
    const places = scanPlaces(requestOf({ ground: [ground], steps: { place: 20 } }))
    expect(places).toHaveLength(12)
    expect(geodesicDistance(places[0]?.at ?? CENTRE, ground.points[0] ?? CENTRE)).toBeLessThan(1e-6)
    expect(geodesicDistance(places.at(-1)?.at ?? CENTRE, ground.points[1] ?? CENTRE)).toBeLessThan(1e-6)
    const gaps = places.slice(1).map(({ at }, index) => geodesicDistance(at, places[index]?.at ?? CENTRE))
    for (const gap of gaps) expect(gap).toBeCloseTo(210 / 11, 4)
  })

  it.each([
    ['along', [70]],
    ['either-way', [70, 250]],
    ['free', [0, 90, 180, 270]],
  ] as const)('lets the subject turn %s', (turn, headings) => {
    const [place] = scanPlaces(requestOf({ ground: [lineThrough(70, 100, { turn })], steps: { heading: 90 } }))
    expect(place?.headings).toHaveLength(headings.length)
    headings.forEach((heading, index) => expect(place?.headings[index]).toBeCloseTo(heading, 2))
  })

  it('has the heading of the stretch that a place lies on, and of the last at its end', () => {
    const bend = destination(CENTRE, 0, 100)
    const end = destination(bend, 90, 100)
    const ground = lineThrough(0, 1, { points: [CENTRE, bend, end], turn: 'along' })
    const headings = scanPlaces(requestOf({ ground: [ground], steps: { place: 50 } })).map((place) => place.headings[0])
    ;[0, 0, 90, 90, 90].forEach((heading, index) => expect(headings[index]).toBeCloseTo(heading, 2))
  })

  it('may touch itself, and may hold a point twice', () => {
    const other = destination(CENTRE, 0, 60)
    const line = measuredLine([CENTRE, other, other, CENTRE])
    expect(line.length).toBeCloseTo(120, 6)
    expect(geodesicDistance(pointAlong(line, 90)?.at ?? other, destination(CENTRE, 0, 30))).toBeLessThan(1e-6)
    expect(pointAlong(line, 90)?.bearing).toBeCloseTo(180, 6)
  })

  it('without length has no place', () => {
    expect(scanPlaces(requestOf({ ground: [lineThrough(0, 0, { points: [CENTRE, CENTRE] })] }))).toEqual([])
  })

  it('crosses the antimeridian', () => {
    const at = { lat: 10, lon: 179.9995 }
    const ground = lineThrough(0, 1, { points: [at, destination(at, 90, 200)] })
    const places = scanPlaces(requestOf({ ground: [ground], steps: { place: 50 } }))
    expect(places).toHaveLength(5)
    expect(places.at(-1)?.at.lon).toBeLessThan(-179)
  })
})

describe('an area', () => {
  it('has a place in the middle of each cell, and free headings whatever stands there', () => {
    const places = scanPlaces(requestOf({ ground: [square(CENTRE, 50)], steps: { place: 25, heading: 120 } }))
    expect(places).toHaveLength(16)
    expect(places[0]?.headings).toEqual([0, 120, 240])
    const nearest = places.map(({ at }) => geodesicDistance(at, CENTRE))
    expect(Math.min(...nearest)).toBeCloseTo(12.5 * Math.SQRT2, 2)
    expect(Math.max(...nearest)).toBeCloseTo(37.5 * Math.SQRT2, 2)
  })

  it('too narrow for the step has places all the same', () => {
    const points = [CENTRE, destination(CENTRE, 45, 300), destination(destination(CENTRE, 45, 300), 135, 4)]
    const strip: StoppingGround = { id: 'strip', name: '', form: 'area', turn: 'free', points }
    expect(scanPlaces(requestOf({ ground: [strip], steps: { place: 60 } })).length).toBeGreaterThan(0)
  })

  it('leaves a notch out', () => {
    const east = (metres: number, north: number): LatLon => destination(destination(CENTRE, 90, metres), 0, north)
    const points = [east(0, 0), east(100, 0), east(100, 100), east(50, 10), east(0, 100)]
    const notched: StoppingGround = { id: 'notched', name: '', form: 'area', turn: 'free', points }
    const places = scanPlaces(requestOf({ ground: [notched], steps: { place: 10 } }))
    const above = places.filter(({ at }) => geodesicDistance(at, east(50, 60)) < 10)
    expect(places.length).toBeGreaterThan(40)
    expect(above).toEqual([])
  })
})

describe('keep-outs', () => {
  const across = [destination(CENTRE, 0, 100), destination(CENTRE, 180, 100)]

  it('take places within half their width off a line', () => {
    const request = requestOf({ steps: { place: 10 }, shoot: { keepOuts: [keepOut(across)] } })
    const places = scanPlaces(request)
    expect(scanPlaces(requestOf({ steps: { place: 10 } }))).toHaveLength(17)
    expect(places).toHaveLength(14)
    expect(Math.min(...places.map(({ at }) => geodesicDistance(at, CENTRE)))).toBeCloseTo(20, 3)
    expect(places.map(({ index }) => index)).toEqual(places.map((_, index) => index))
  })

  it('for the camera alone leave the subject be', () => {
    const request = requestOf({ steps: { place: 10 }, shoot: { keepOuts: [keepOut(across, { whom: 'camera' })] } })
    expect(scanPlaces(request)).toHaveLength(17)
  })

  it('of an area take what is inside', () => {
    const { points } = square(CENTRE, 35)
    const request = requestOf({ steps: { place: 10 }, shoot: { keepOuts: [keepOut(points, { form: 'area' })] } })
    expect(scanPlaces(request)).toHaveLength(10)
  })

  it('let nobody cross where that is said, and only there', () => {
    const barrier = keptOut([keepOut(across, { width: 0.5, noCrossing: true })], CENTRE)
    const open = keptOut([keepOut(across, { width: 0.5 })], CENTRE)
    const [west, east] = [destination(CENTRE, 270, 10), destination(CENTRE, 90, 10)]
    expect(cameraKeptOut(barrier, west, east)).toBe(true)
    expect(cameraKeptOut(open, west, east)).toBe(false)
    expect(cameraKeptOut(barrier, west, destination(CENTRE, 300, 30))).toBe(false)
    const round = destination(CENTRE, 0, 120)
    expect(cameraKeptOut(barrier, round, destination(round, 90, 10))).toBe(false)
  })

  it('keep the camera out of an area that the way to it leads into', () => {
    const area = keptOut([keepOut(square(CENTRE, 20).points, { form: 'area', whom: 'camera' })], CENTRE)
    expect(cameraKeptOut(area, destination(CENTRE, 0, 40), CENTRE)).toBe(true)
    expect(cameraKeptOut(area, destination(CENTRE, 0, 40), destination(CENTRE, 180, 40))).toBe(false)
    const barred = keptOut([keepOut(square(CENTRE, 20).points, { form: 'area', noCrossing: true })], CENTRE)
    expect(cameraKeptOut(barred, destination(CENTRE, 0, 40), destination(CENTRE, 180, 40))).toBe(true)
  })
})

it('deals the same places for the same request, in the order of the grounds', () => {
  const request = requestOf({ ground: [lineThrough(0, 50, { id: 'one' }), square(CENTRE, 50, 'two')] })
  const places = scanPlaces(request)
  expect(scanPlaces(request)).toEqual(places)
  expect(places.map(({ ground }) => ground.id).indexOf('two')).toBe(4)
  expect(geodesicLine(CENTRE, places[0]?.at ?? CENTRE).distance).toBeCloseTo(50, 6)
})
