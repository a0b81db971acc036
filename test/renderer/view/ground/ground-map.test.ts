/** The map drawn from the elevations: water is found from the sea, contours and shores lie where they should, slopes are lit by the light. */
import { describe, expect, test } from 'vitest'
import { MAP_LIGHT } from '#core/ground/relief.ts'
import { placeOnGrid, type ElevationGrid } from '#core/ground/elevation-grid.ts'
import { sunAt } from '#core/light/sky.ts'
import { contourDrawing, contourPart, pixelsPerMetre, strideFor } from '#renderer/view/ground/contour-drawing.ts'
import { laidGrid } from '#renderer/view/ground/map-raster.ts'
import { beginRelief, reliefRows } from '#renderer/view/ground/relief-pictures.ts'
import { cellsAround, sunLight } from '#renderer/view/ground/relief-region.ts'
import { warped } from '#renderer/view/ground/warp.ts'
import { waterOf } from '#renderer/view/ground/water.ts'
import { DARK_PALETTE, LIGHT_PALETTE } from '#renderer/view/sketch/sketch-palette.ts'
import { latitudeAt, worldX, worldY } from '#renderer/view/sketch/world.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

const everywhere = (grid: ElevationGrid) => ({ left: 0, top: 0, right: grid.columns, bottom: grid.rows })
const sea = (one: number) => ({ columns: 2, rows: 1, sea: Uint8Array.from([one, 0]) })
const cellAt = (grid: ElevationGrid, east: number, north: number): number =>
  Math.round((grid.north - north) / grid.cell) * grid.columns + Math.round((east - grid.west) / grid.cell)

/** Sea in the west with a bay reaching inland, a dyke, and low land behind it. */
const coast = groundOf(201, 20, (east) => (east < -600 ? -30 : east < 400 ? 0 : east < 500 ? 6 : -3))

describe('water', () => {
  test('spreads from the sea over ground no higher, and not over a dyke to low land', () => {
    const water = waterOf(laidGrid(coast), sea(1))
    expect(water[cellAt(coast, -1500, 0)]).toBe(1)
    expect(water[cellAt(coast, 300, 0)]).toBe(1)
    expect(water[cellAt(coast, 450, 0)]).toBe(0)
    expect(water[cellAt(coast, 900, 0)]).toBe(0)
  })

  test.each([
    ['west', { columns: 2, rows: 1, sea: Uint8Array.from([1, 0]) }, (east: number) => east],
    ['east', { columns: 2, rows: 1, sea: Uint8Array.from([0, 1]) }, (east: number) => -east],
    ['north', { columns: 1, rows: 2, sea: Uint8Array.from([1, 0]) }, (_: number, north: number) => -north],
    ['south', { columns: 1, rows: 2, sea: Uint8Array.from([0, 1]) }, (_: number, north: number) => north],
  ] as const)('a channel leads it inland from the %s', (_, seas, inland) => {
    const channel = groundOf(101, 20, (east, north) => {
      const along = Math.abs(inland(east, north)) === Math.abs(east) ? north : east
      return inland(east, north) < -500 ? -5 : Math.abs(along) < 50 && inland(east, north) < 800 ? 0 : 12
    })
    const water = waterOf(laidGrid(channel), seas)
    const wet = (way: number): number => {
      const far = inland(1, 0) === 0 ? 0 : inland(1, 0) * way
      return water[cellAt(channel, far, far === 0 ? inland(0, 1) * way : 0)] ?? -1
    }
    expect([wet(-900), wet(300), wet(780), wet(900)]).toEqual([1, 1, 1, 0])
  })

  test('there is none inland, however low the ground', () => {
    expect(waterOf(laidGrid(coast), sea(0)).includes(1)).toBe(false)
  })
})

describe('contours', () => {
  const cone = groundOf(401, 20, (east, north) => 500 - Math.hypot(east, north) / 4)
  const dry = new Uint8Array(cone.columns * cone.rows)

  test('lie on the map where the ground passes their height', () => {
    const laid = laidGrid(cone)
    const { fine, strong } = contourDrawing(laid, dry, everywhere(cone), 20, 14)
    expect(fine.ends.length).toBeGreaterThan(strong.ends.length)
    for (const { points } of [fine, strong]) {
      for (let at = 0; at < points.length; at += 2) {
        const { raster, toGrid } = laid
        const on = warped(
          toGrid,
          ((points[at] ?? 0) - raster.west) / raster.pixel,
          ((points[at + 1] ?? 0) - raster.north) / raster.pixel,
        )
        const height = 500 - Math.hypot(cone.west + on.x * 20, cone.north - on.y * 20) / 4
        // A pixel of zoom 14 is 6.5 m here, the slope a quarter; corners are rounded.
        expect(Math.abs(height - Math.round(height / 20) * 20)).toBeLessThan(1.5)
      }
    }
  })

  test('the strong ones are labelled, each label on its own line', () => {
    const laid = laidGrid(cone)
    const { labels } = contourDrawing(laid, dry, everywhere(cone), 20, 14)
    expect(labels.length).toBeGreaterThan(3)
    for (const { level, x, y } of labels) {
      expect(Math.abs(level % 100)).toBe(0)
      const on = warped(
        laid.toGrid,
        (x - laid.raster.west) / laid.raster.pixel,
        (y - laid.raster.north) / laid.raster.pixel,
      )
      expect(Math.abs(500 - Math.hypot(cone.west + on.x * 20, cone.north - on.y * 20) / 4 - level)).toBeLessThan(1.5)
    }
  })

  test('none enters open water, which has a shore instead', () => {
    const laid = laidGrid(coast)
    const { fine, strong, shore } = contourDrawing(laid, waterOf(laid, sea(1)), everywhere(coast), 5, 14)
    const eastOf = ({ points }: typeof shore): number[] =>
      Array.from({ length: points.length / 2 }, (_, at) => {
        const { raster, toGrid } = laid
        const [x, y] = [points[at * 2] ?? 0, points[at * 2 + 1] ?? 0]
        return coast.west + warped(toGrid, (x - raster.west) / raster.pixel, (y - raster.north) / raster.pixel).x * 20
      })
    for (const east of [...eastOf(fine), ...eastOf(strong)]) expect(east).toBeGreaterThan(379)
    const shores = eastOf(shore)
    expect(shores.length).toBeGreaterThan(1)
    for (const east of shores) expect(Math.abs(east - 390)).toBeLessThan(12)
  })

  test('far away fewer cells are read, and those still lie at their own places', () => {
    const grid = mountains(401, 20)
    expect(strideFor(grid, 16)).toBe(1)
    const stride = strideFor(grid, 10)
    expect(stride * grid.cell * pixelsPerMetre(grid, 10)).toBeGreaterThanOrEqual(1.2)
    const part = contourPart(grid, { left: 32, top: 64, right: 232, bottom: 264 }, stride)
    const [column, row] = [3, 5]
    const whole = (64 + row * stride) * grid.columns + 32 + column * stride
    expect(part.heights[row * part.columns + column]).toBe(grid.heights[whole])
    expect(part.west + column * part.cell).toBeCloseTo(grid.west + (32 + column * stride) * grid.cell, 9)
    expect(part.north - row * part.cell).toBeCloseTo(grid.north - (64 + row * stride) * grid.cell, 9)
  })

  test('are wanted for what the map shows, on whatever turn of the world it stands', () => {
    const grid = mountains(401, 20)
    const { lat, lon } = placeOnGrid(grid, 1000, 500)
    const size = 0.00002
    const window = {
      zoom: 15,
      west: worldX(lon) - size,
      east: worldX(lon) + size,
      north: worldY(lat) - size,
      south: worldY(lat) + size,
    }
    const cells = cellsAround(grid, window, 0)
    if (cells === null) throw new Error('the window shows the grid')
    expect(cells.left).toBeLessThanOrEqual(250)
    expect(cells.right).toBeGreaterThan(250)
    expect(cells.top).toBeLessThanOrEqual(175)
    expect(cells.bottom).toBeGreaterThan(175)
    expect(cells.right - cells.left).toBeLessThan(200)
    expect(cellsAround(grid, { ...window, west: window.west + 3, east: window.east + 3 }, 0)).toEqual(cells)
    expect(cellsAround(grid, { ...window, west: window.west + 0.1, east: window.east + 0.1 }, 0)).toBeNull()
  })
})

describe('relief', () => {
  const ridge = groundOf(201, 20, (east) => 300 - Math.abs(east) / 3)
  const dry = new Uint8Array(ridge.columns * ridge.rows)

  /** Red and opacity of the tint at metres east of the ridge, half-way up the raster. */
  function tint(azimuth: number, east: number, palette = LIGHT_PALETTE): readonly [number, number] {
    const state = beginRelief(laidGrid(ridge), dry, { azimuth, altitude: 40 }, palette)
    const { raster } = state.laid
    reliefRows(state, 0, raster.rows)
    const column = Math.floor((worldX(placeOnGrid(ridge, east, 0).lon) - raster.west) / raster.pixel)
    const at = (Math.floor(raster.rows / 2) * raster.columns + column) * 4
    return [state.pictures.light[at] ?? 0, state.pictures.light[at + 3] ?? 0]
  }

  test.each([LIGHT_PALETTE, DARK_PALETTE])(
    'the slope toward the light is bright, the other dark, on $name paper',
    (palette) => {
      expect(tint(90, 800, palette)[0]).toBe(palette.glow[0])
      expect(tint(90, -800, palette)[0]).toBe(palette.shade[0])
      expect(tint(270, 800, palette)[0]).toBe(palette.shade[0])
      expect(tint(270, 800, palette)[1]).toBeGreaterThan(20)
    },
  )

  test('land and water have their colours, unknown ground none', () => {
    const holed = groundOf(101, 20, (east) => (east < -500 ? 0 : east > 500 ? Number.NaN : 20))
    const laid = laidGrid(holed)
    const state = beginRelief(laid, waterOf(laid, sea(1)), MAP_LIGHT, LIGHT_PALETTE)
    reliefRows(state, 0, laid.raster.rows)
    const at = (share: number): number[] => {
      const pixel = (50 * laid.raster.columns + Math.floor(share * laid.raster.columns)) * 4
      return [...state.pictures.ground.subarray(pixel, pixel + 4)]
    }
    expect(at(0.1)).toEqual([0xe3, 0xe8, 0xe6, 255])
    expect(at(0.5)).toEqual([0xf3, 0xed, 0xde, 255])
    expect(at(0.95)[3]).toBe(0)
    expect(LIGHT_PALETTE).toMatchObject({ sea: '#e3e8e6', land: '#f3edde' })
  })

  test('the sun lights it from three degrees up, in steps too small to see', () => {
    const day = Date.UTC(2027, 5, 14)
    for (let hour = 0; hour < 24; hour++) {
      const instant = day + hour * 3_600_000
      const { azimuth, altitude } = sunAt(ridge.centre, instant)
      const light = sunLight(ridge, instant)
      if (altitude < 2.5) expect(light).toBeNull()
      if (altitude < 3) continue
      const off = Math.abs((light?.azimuth ?? Number.NaN) - azimuth)
      expect(Math.min(off, 360 - off)).toBeLessThanOrEqual(1)
      expect(Math.abs((light?.altitude ?? Number.NaN) - altitude)).toBeLessThan(0.8)
    }
  })

  test('latitudes of the raster are the map’s', () => {
    const { raster } = laidGrid(ridge)
    expect(latitudeAt(raster.north)).toBeGreaterThan(placeOnGrid(ridge, 0, ridge.north).lat)
  })
})
