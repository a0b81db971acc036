/** The world's coast as shapes: whole across the antimeridian, without seams. */
import { readFileSync } from 'node:fs'
import type { Topology } from 'topojson-specification'
import { describe, expect, it } from 'vitest'
import { closedAtPole, readCoastShapes, unwrapped } from '#renderer/view/sketch/coast-shapes.ts'

const atlas = JSON.parse(
  readFileSync(new URL(import.meta.resolve('world-atlas/countries-50m.json')), 'utf8'),
) as Topology

describe('the coast of the world', () => {
  const coast = readCoastShapes(atlas)

  it('has land, shores and borders between the top and the bottom of the world square', () => {
    expect(coast.land.length).toBeGreaterThan(1000)
    expect(coast.borders.length).toBeGreaterThan(150)
    for (const { box } of [...coast.shores, ...coast.borders, ...coast.land]) {
      expect(box.north).toBeGreaterThanOrEqual(0)
      expect(box.south).toBeLessThanOrEqual(1.000001)
      expect(box.east - box.west).toBeLessThanOrEqual(1.000001)
    }
  })

  it('never jumps across the world at the antimeridian', () => {
    let most = 0
    for (const { points } of [...coast.shores, ...coast.borders]) {
      for (let place = 0; place + 3 < points.length; place += 2) {
        most = Math.max(most, Math.abs((points[place + 2] ?? 0) - (points[place] ?? 0)))
      }
    }
    expect(most).toBeLessThan(0.1)
  })

  it('carries land over the antimeridian and closes Antarctica along the southern edge', () => {
    expect(coast.land.some(({ box }) => box.west < 0 || box.east > 1)).toBe(true)
    const [around] = coast.land.filter(({ box }) => box.east - box.west > 0.99)
    expect(around?.box.south).toBeCloseTo(1, 9)
  })

  it('unwraps eastward and westward crossings, and closes a ring around the pole', () => {
    const eastward = unwrapped([
      [170, 0],
      [-170, 0],
    ])
    expect((eastward[2] ?? 0) - (eastward[0] ?? 0)).toBeCloseTo(20 / 360, 12)
    const westward = unwrapped([
      [-170, 0],
      [170, 0],
    ])
    expect((westward[2] ?? 0) - (westward[0] ?? 0)).toBeCloseTo(-20 / 360, 12)
    expect([...closedAtPole(Float64Array.of(0, 0.9, 0.5, 0.9, 1, 0.9))]).toEqual([0, 0.9, 0.5, 0.9, 1, 0.9, 1, 1, 0, 1])
    const closed = Float64Array.of(0, 0.9, 0.1, 0.9, 0, 0.9)
    expect(closedAtPole(closed)).toBe(closed)
  })

  it('refuses a file of something else', () => {
    expect(() => readCoastShapes({ type: 'Topology', objects: {}, arcs: [] })).toThrow('no land')
  })
})
