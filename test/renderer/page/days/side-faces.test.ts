/** The landmark's sides as counted: eight of a round thing, segments of one direction together, each with bearing and name. */
import { expect, test } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import { type Landmark, type SpanLandmark } from '#core/scene/landmark.ts'
import { landmarkFaces } from '#core/scene/face.ts'
import { turnBetween } from '#core/units/angle.ts'
import { landmarkSides } from '#renderer/page/days/side-faces.ts'

const AT = { lat: 47, lon: 8 }
const common = { id: 'l', name: '', height: 30, baseElevation: 0, baseSlope: null, baseAspect: null }

function sidesOf(landmark: Landmark) {
  const placed = landmarkFaces(landmark, 0)
  return placed === null ? [] : landmarkSides(placed)
}

function span(...legs: readonly (readonly [bearing: number, length: number])[]): SpanLandmark {
  const line = [AT]
  for (const [bearing, length] of legs) line.push(destination(line.at(-1) ?? AT, bearing, length))
  return { ...common, kind: 'span', form: 'girder', line, deckHeight: 10, width: 8 }
}

test('a round tower has eight sides, by the points of the compass', () => {
  const sides = sidesOf({ ...common, kind: 'upright', at: AT, width: 8 })
  expect(sides.map(({ bearing }) => Math.round(bearing) % 360)).toEqual([0, 45, 90, 135, 180, 225, 270, 315])
  expect(sides.map(({ name }) => name)).toEqual([
    'north',
    'north-east',
    'east',
    'south-east',
    'south',
    'south-west',
    'west',
    'north-west',
  ])
})

test('a straight bridge of many segments has two sides', () => {
  const sides = sidesOf(span([60, 100], [60, 100], [60, 100]))
  expect(sides.map(({ number, name, faces }) => [number, name, faces.length])).toEqual([
    [1, 'north-west', 3],
    [2, 'south-east', 3],
  ])
  expect(Math.abs(turnBetween(sides[0]?.bearing ?? 0, 330))).toBeLessThan(0.1)
})

test('a bent one is counted segment by segment', () => {
  const sides = sidesOf(span([60, 100], [60, 100], [90, 100]))
  expect(sides.map(({ name }) => name)).toEqual([
    'north-west, segments 1–2',
    'south-east, segments 1–2',
    'north, segment 3',
    'south, segment 3',
  ])
})

test('segments that look one way again after others are told by their numbers', () => {
  const names = sidesOf(span([90, 100], [45, 100], [90, 100])).map(({ name }) => name)
  expect(names).toContain('north, segments 1, 3')
})

test('a roof is no side, and points that bound nothing have none', () => {
  const footprint = [AT, destination(AT, 90, 20), destination(destination(AT, 90, 20), 0, 10), destination(AT, 0, 10)]
  expect(sidesOf({ ...common, kind: 'building', footprint }).map(({ name }) => name)).toEqual([
    'south',
    'east',
    'north',
    'west',
  ])
  expect(sidesOf({ ...common, kind: 'building', footprint: [AT, AT, AT] })).toEqual([])
})
