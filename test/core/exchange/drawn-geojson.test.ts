/** GeoJSON as drawn ground: what is written is read back the same, and each way a file can be wrong has its sentence. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { nearestOnLine } from '#core/geo/shape.ts'
import { type DrawnRead, readDrawnGeojson } from '#core/exchange/drawn-geojson.ts'
import { MOST_DRAWN_POINTS, shapeFault } from '#core/record/drawn-ground.ts'

const HERE: LatLon = { lat: 46.4, lon: -33.6 }

function read(value: unknown, near: LatLon | null = null, most = 200): DrawnRead {
  const answer = readDrawnGeojson(typeof value === 'string' ? value : JSON.stringify(value), near, most)
  if (!answer.ok) throw new Error(`${answer.fault.reason}: ${answer.fault.message}`)
  return answer.value
}

function refusal(value: unknown, near: LatLon | null = null, most = 200): { reason: string; message: string } {
  const answer = readDrawnGeojson(typeof value === 'string' ? value : JSON.stringify(value), near, most)
  if (answer.ok) throw new Error('it was read')
  return answer.fault
}

const feature = (type: string, coordinates: unknown, properties: unknown = {}): unknown => ({
  type: 'Feature',
  properties,
  geometry: { type, coordinates },
})
const collection = (...features: unknown[]): unknown => ({ type: 'FeatureCollection', features })

const pair = ({ lat, lon }: LatLon): [number, number] => [lon, lat]
const LINE = [pair(HERE), pair(destination(HERE, 90, 100))]
const corners = [0, 90, 180, 270].map((bearing) => destination(HERE, bearing, 100))
const RING = [...corners, ...corners.slice(0, 1)].map(pair)
const HOLE = [0, 270, 180, 90, 0].map((bearing) => pair(destination(HERE, bearing, 20)))

/** Steps of at least a metre or so, so that no line is without length. */
const lineOf = fc
  .record({
    lat: fc.double({ min: -89, max: 89, noNaN: true, noDefaultInfinity: true }),
    lon: fc.double({ min: -180, max: 179.999, noNaN: true, noDefaultInfinity: true }),
    steps: fc.array(fc.double({ min: 0.0001, max: 0.01, noNaN: true }), { minLength: 1, maxLength: 40 }),
  })
  .map(({ lat, lon, steps }) => {
    // JSON knows no minus before nothing, so none is asked for.
    let at = lat + 0
    return [{ lat: at, lon: lon + 0 }, ...steps.map((step) => ({ lat: (at += step), lon: lon + 0 }))].filter(
      (place) => place.lat <= 90,
    )
  })
  .filter((line) => line.length >= 2)

const dressed = fc.constantFrom<(geometry: unknown, name: string) => unknown>(
  (geometry, name) => ({ type: 'Feature', properties: { name }, geometry }),
  (geometry, name) => collection({ type: 'Feature', properties: { name }, geometry }),
  (geometry, name) => ({
    type: 'Feature',
    properties: { name },
    geometry: { type: 'GeometryCollection', geometries: [geometry] },
  }),
)

describe('what is written is read back', () => {
  it('as the very same places, whatever it is wrapped in', () => {
    const name = fc.string({ maxLength: 30 }).filter((text) => !/\p{Cc}/u.test(text) && text === text.trim())
    fc.assert(
      fc.property(lineOf, name, dressed, (points, text, dress) => {
        const { pieces, notes } = read(dress({ type: 'LineString', coordinates: points.map(pair) }, text))
        expect(pieces).toEqual([{ name: text, shape: { form: 'line', points } }])
        expect(notes).toEqual([])
      }),
    )
  })

  it('as several lines of one name, numbered', () => {
    fc.assert(
      fc.property(fc.array(lineOf, { minLength: 2, maxLength: 6 }), (lines) => {
        const coordinates = lines.map((line) => line.map(pair))
        const { pieces } = read(feature('MultiLineString', coordinates, { name: 'Track' }))
        expect(pieces.map(({ shape }) => shape.points)).toEqual(lines)
        expect(pieces.map(({ name }) => name)).toEqual(lines.map((_, index) => `Track ${index + 1}`))
      }),
    )
  })

  it('as outlines without the repeated end, of one ring or of several areas', () => {
    const area = { form: 'area', points: corners }
    expect(read(feature('Polygon', [RING])).pieces).toEqual([{ name: '', shape: area }])
    expect(read({ type: 'MultiPolygon', coordinates: [[RING], [RING]] }).pieces.map(({ shape }) => shape)).toEqual([
      area,
      area,
    ])
  })

  it('with heights, a byte order mark, foreign members and names that are no text', () => {
    const coordinates = LINE.map((position) => [...position, 12.5])
    const text = `\u{feff}${JSON.stringify({ ...(feature('LineString', coordinates, { name: 7 }) as object), id: 3 })}`
    expect(read(text).pieces).toMatchObject([{ name: '', shape: { form: 'line' } }])
    expect(read(feature('LineString', LINE, null)).pieces[0]?.name).toBe('')
  })

  it('across the antimeridian, whether longitudes go on beyond 180 or turn to minus', () => {
    const beyond = read({
      type: 'LineString',
      coordinates: [
        [179.9, 10],
        [180.1, 10],
      ],
    })
    const turned = read({
      type: 'LineString',
      coordinates: [
        [179.9, 10],
        [-179.9, 10],
      ],
    })
    expect(beyond.pieces[0]?.shape.points[1]?.lon).toBeCloseTo(-179.9, 9)
    expect(turned.pieces[0]?.shape.points).toEqual([
      { lat: 10, lon: 179.9 },
      { lat: 10, lon: -179.9 },
    ])
  })

  it('with a name cut to fit, never in the middle of a character', () => {
    const { pieces } = read(feature('LineString', LINE, { name: `  ${'a'.repeat(189)}🌉\u{7}` }))
    expect(pieces[0]?.name).toBe('a'.repeat(189))
  })
})

describe('done, with notes', () => {
  it('tells what was left out and keeps the rest', () => {
    const bowTie = [0, 2, 1, 3, 0].map((n) => RING[n])
    const { pieces, notes } = read(
      collection(
        feature('LineString', LINE, { name: 'Good' }),
        feature('Point', LINE[0]),
        feature('MultiPoint', LINE),
        feature('Polygon', [RING, HOLE], { name: 'Holed' }),
        feature('Polygon', [bowTie]),
        feature('LineString', [LINE[0], LINE[0]]),
        { type: 'Feature', properties: {}, geometry: null },
        feature('Polygon', []),
      ),
    )
    expect(pieces.map(({ name }) => name)).toEqual(['Good', 'Holed'])
    expect(notes).toEqual([
      { what: 'points', count: 3 },
      { what: 'empty', count: 2 },
      { what: 'holes', count: 1 },
      { what: 'crossing', count: 1 },
      { what: 'no-size', count: 1 },
    ])
  })

  it('thins a line of too many points to what can be stored, its ends kept', () => {
    const wavy = Array.from({ length: 20_000 }, (_, n) => [n * 1e-5, Math.sin(n / 40) * 1e-3])
    const { pieces, notes } = read({ type: 'LineString', coordinates: wavy })
    const points = pieces[0]?.shape.points ?? []
    expect(points.length).toBeLessThanOrEqual(MOST_DRAWN_POINTS)
    expect(points.length).toBeGreaterThan(100)
    expect(points[0]).toEqual({ lat: 0, lon: 0 })
    expect(points.at(-1)?.lon).toBe(wavy.at(-1)?.[0])
    const [note] = notes
    if (note?.what !== 'simplified') throw new Error('thinning is told')
    expect(note.count).toBe(1)
    for (let n = 0; n < wavy.length; n += 199) {
      const [lon = 0, lat = 0] = wavy[n] ?? []
      expect(nearestOnLine(points, { lat, lon })?.distance).toBeLessThan(note.metres * 1.02)
    }
  })

  it('says when all of it lies far from the spot, and only then', () => {
    expect(read(feature('LineString', LINE), destination(HERE, 10, 49_000)).notes).toEqual([])
    const [far] = read(feature('LineString', LINE), destination(HERE, 10, 60_000)).notes
    expect(far?.what === 'far' ? far.metres : 0).toBeCloseTo(60_000, 0)
  })
})

describe('refused with a sentence', () => {
  it.each<readonly [string, unknown, string, RegExp]>([
    ['a letter', 'Dear all, the map is attached.', 'not-json', /^This file is not GeoJSON: perhaps it is cut short/],
    ['a file cut short', JSON.stringify(feature('LineString', LINE)).slice(0, -5), 'not-json', /cut short/],
    ['other JSON', { hello: 'world' }, 'not-geojson', /^This file is not GeoJSON\. Save it/],
    ['a list', [1, 2], 'not-geojson', /^This file is not GeoJSON\. Save it/],
    ['another format', { type: 'Topology', arcs: [] }, 'not-geojson', /Topology/],
    [
      'numbers as text',
      {
        type: 'LineString',
        coordinates: [
          ['10.98', '47.42'],
          ['11', '47'],
        ],
      },
      'not-geojson',
      /two numbers/,
    ],
    ['no coordinates', { type: 'LineString' }, 'not-geojson', /no coordinates/],
    [
      'a collection without its list',
      { type: 'FeatureCollection' },
      'not-geojson',
      /^This file is not GeoJSON\. Save it/,
    ],
    [
      'a number beyond all numbers',
      '{"type":"LineString","coordinates":[[1e999,2],[3,4]]}',
      'not-geojson',
      /two numbers/,
    ],
    [
      'metres of a projected system (EPSG:25832 around 47.42, 10.98)',
      {
        type: 'LineString',
        coordinates: [
          [649_000, 5_254_000],
          [649_100, 5_254_000],
        ],
      },
      'out-of-range',
      /649000, 5254000.*metres/,
    ],
    [
      'a named other system',
      {
        ...(feature('LineString', LINE) as object),
        crs: { type: 'name', properties: { name: 'urn:ogc:def:crs:EPSG::25832' } },
      },
      'other-system',
      /EPSG::25832/,
    ],
    [
      'a system behind a link',
      { ...(feature('LineString', LINE) as object), crs: { type: 'link' } },
      'other-system',
      /not named/,
    ],
    [
      'latitude first',
      {
        type: 'LineString',
        coordinates: [
          [37.7, -122.4],
          [37.8, -122.4],
        ],
      },
      'swapped',
      /longitude first/,
    ],
    ['points alone', collection(feature('Point', LINE[0])), 'nothing-usable', /points only/],
    ['nothing', collection(), 'nothing-usable', /no line/],
  ])('%s', (_, value, reason, message) => {
    const fault = refusal(value)
    expect(fault.reason).toBe(reason)
    expect(fault.message).toMatch(message)
  })

  it('latitude first where both orders are places, told by the spot', () => {
    const swapped = { type: 'LineString', coordinates: LINE.map(([lon, lat]) => [lat, lon]) }
    expect(refusal(swapped, HERE).reason).toBe('swapped')
    expect(read(swapped, null).pieces).toHaveLength(1)
  })

  it('more than there is room for', () => {
    const many = collection(...Array.from({ length: 4 }, () => feature('LineString', LINE)))
    expect(refusal(many, null, 3).message).toMatch(/4 lines.*room for 3/)
    expect(read(many, null, 4).pieces).toHaveLength(4)
    expect(refusal(many, null, 0).message).toMatch(/no room/)
  })

  it('collections without end', () => {
    const deep = '{"type":"GeometryCollection","geometries":['.repeat(2_000) + ']}'.repeat(2_000)
    expect(refusal(deep).reason).toBe('not-geojson')
  })

  it('accepts the old name of the system it wants', () => {
    for (const name of ['urn:ogc:def:crs:OGC:1.3:CRS84', 'EPSG:4326', 'urn:ogc:def:crs:EPSG::4326']) {
      const crs = { type: 'name', properties: { name } }
      expect(read({ ...(feature('LineString', LINE) as object), crs }).pieces).toHaveLength(1)
    }
  })
})

it('never reads anything that can’t be stored, whatever the text', () => {
  const coordinate = fc.oneof(fc.double(), fc.integer({ min: -200, max: 200 }))
  const position = fc.array(coordinate, { maxLength: 3 })
  const geometry = fc.record({
    type: fc.constantFrom('Point', 'LineString', 'Polygon', 'MultiLineString', 'MultiPolygon', 'Surface'),
    coordinates: fc.oneof(
      fc.array(position),
      fc.array(fc.array(position)),
      fc.array(fc.array(fc.array(position))),
      fc.jsonValue(),
    ),
  })
  fc.assert(
    fc.property(fc.oneof(geometry, fc.jsonValue()), (value) => {
      const answer = readDrawnGeojson(JSON.stringify(value), null, 50)
      if (!answer.ok) {
        expect(answer.fault.message).toMatch(/\.$/)
        return
      }
      expect(answer.value.pieces.length).toBeGreaterThan(0)
      expect(answer.value.pieces.map(({ shape }) => shapeFault(shape)).filter((fault) => fault !== null)).toEqual([])
    }),
    { numRuns: 500 },
  )
})
