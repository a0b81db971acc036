/** Names on the sketch: placed once per zoom, never over one another, never cut by a tile. */
import { readFileSync } from 'node:fs'
import type { FeatureCollection } from 'geojson'
import { describe, expect, it } from 'vitest'
import { labelPointAlong, setAlong, setLevel, setTurned, TakenSpace } from '#renderer/view/sketch/label-place.ts'
import { scatterMarks } from '#renderer/view/sketch/scatter.ts'
import { SketchIndex } from '#renderer/view/sketch/sketch-index.ts'
import { placeSketchLabels } from '#renderer/view/sketch/sketch-labels.ts'
import { DARK_PALETTE, LIGHT_PALETTE } from '#renderer/view/sketch/sketch-palette.ts'
import { boxesMeet } from '#renderer/view/sketch/world.ts'

/** Every letter half as wide as the type is high. */
const measure = (text: string, style: { readonly size: number }): number => (text.length * style.size) / 2
const fixed = (text: string): number => text.length * 6

const island = JSON.parse(
  readFileSync(new URL(import.meta.resolve('#app/demo/island.geojson')), 'utf8'),
) as FeatureCollection
const index = new SketchIndex(island)

function written(zoom: number): string[] {
  return placeSketchLabels(index, zoom, LIGHT_PALETTE, measure).map(({ letters }) =>
    letters.map(({ text }) => text).join(''),
  )
}

describe('placed labels', () => {
  it.each([9, 12, 13, 14, 15, 16, 17, 18])('never meet at zoom %i', (zoom) => {
    const labels = placeSketchLabels(index, zoom, LIGHT_PALETTE, measure)
    for (const [place, label] of labels.entries()) {
      for (const other of labels.slice(place + 1)) {
        expect(label.boxes.some((box) => other.boxes.some((taken) => boxesMeet(box, taken)))).toBe(false)
      }
    }
  })

  it('write the island alone from afar, then villages, then farms and contour heights', () => {
    expect(written(9)).toEqual(['Orlavay'])
    expect(written(13)).toContain('Quennick')
    expect(written(13)).not.toContain('Orlavay')
    expect(written(13)).not.toContain('Hallow Farm')
    expect(written(16)).toContain('Hallow Farm')
    expect(written(16)).toContain('50')
  })

  it('stand alike in both palettes', () => {
    const places = (palette: typeof LIGHT_PALETTE): unknown =>
      placeSketchLabels(index, 15, palette, measure).map(({ letters, boxes }) => ({ letters, boxes }))
    expect(places(DARK_PALETTE)).toEqual(places(LIGHT_PALETTE))
  })
})

describe('a name at a point', () => {
  it('stands wholly on the side asked for', () => {
    const at = [100, 100] as const
    expect(setLevel('abc', at, 'right', 5, 12, fixed).letters[0]?.x).toBe(105)
    expect(setLevel('abc', at, 'left', 5, 12, fixed).letters[0]?.x).toBe(77)
    expect(setLevel('abc', at, 'above', 5, 12, fixed).boxes[0]?.south).toBeLessThan(103)
    expect(setLevel('abc', at, 'below', 5, 12, fixed).boxes[0]?.north).toBeGreaterThan(98)
  })
})

describe('a name along a line', () => {
  it('is centred, spaced out, and reads from the left whichever way the line runs', () => {
    const eastward = setAlong('abc', Float64Array.of(0, 0, 100, 0), 12, 1, fixed)
    const westward = setAlong('abc', Float64Array.of(100, 0, 0, 0), 12, 1, fixed)
    expect(eastward?.letters.map(({ text }) => text)).toEqual(['a', 'b', 'c'])
    expect(eastward).toEqual(westward)
    const [first, middle, last] = eastward?.letters ?? []
    expect((middle?.x ?? 0) + 3).toBeCloseTo(50, 9)
    expect((first?.x ?? 0) + (last?.x ?? 0) + 6).toBeCloseTo(100, 9)
    expect(first?.turn).toBe(0)
  })

  it('is not written where it does not fit', () => {
    expect(setAlong('abcdefgh', Float64Array.of(0, 0, 40, 0), 12, 1, fixed)).toBeNull()
  })

  it('follows the bend', () => {
    const line = Float64Array.of(0, 0, 10, 0, 10, 10)
    expect(labelPointAlong(line, 4)).toEqual({ x: 4, y: 0, turn: 0 })
    expect(labelPointAlong(line, 14)).toEqual({ x: 10, y: 4, turn: Math.PI / 2 })
  })

  it('turns numbers so that none stands on its head', () => {
    for (let turn = -3.1; turn < 3.1; turn += 0.2) {
      const [letter] = setTurned('50', { x: 0, y: 0, turn }, 10, fixed).letters
      expect(Math.cos(letter?.turn ?? Math.PI)).toBeGreaterThanOrEqual(-1e-9)
    }
  })
})

describe('taken space', () => {
  it('refuses what meets a taken box, across the cells that it is kept in', () => {
    const space = new TakenSpace()
    space.take([{ west: -200, east: 300, north: 10, south: 20 }])
    expect(space.isFree([{ west: 290, east: 400, north: 0, south: 11 }])).toBe(false)
    expect(space.isFree([{ west: -200, east: 300, north: 21, south: 40 }])).toBe(true)
    expect(
      space.isFree([
        { west: 0, east: 1, north: 30, south: 31 },
        { west: -10, east: 0, north: 15, south: 16 },
      ]),
    ).toBe(false)
  })
})

describe('scattered marks', () => {
  it('are the same ones whichever tile asks', () => {
    const whole = scatterMarks({ left: 0, top: 0, width: 512, height: 256 }, 9)
    const right = scatterMarks({ left: 256, top: 0, width: 256, height: 256 }, 9)
    const inRight = (x: number, y: number): boolean => x >= 256 && x < 512 && y >= 0 && y < 256
    const key = (x: number, y: number): string => `${x.toFixed(6)} ${y.toFixed(6)}`
    const fromWhole = whole.filter(({ x, y }) => inRight(x, y)).map(({ x, y }) => key(x, y))
    const fromRight = right.filter(({ x, y }) => inRight(x + 256, y)).map(({ x, y }) => key(x + 256, y))
    expect(fromRight.toSorted()).toEqual(fromWhole.toSorted())
    expect(fromRight.length).toBeGreaterThan(700)
  })
})
