/** Where the built-in island lies, known before any of its data are fetched, and whether a window shows any of it. */
import header from '#app/demo/elevation.json' with { type: 'json' }
import { type WorldWindow, type WorldBox, boxesMeet, grown, worldPixels, worldX, worldY } from './world.ts'

/** Around all of its features. */
const ISLAND_BOX: WorldBox = {
  west: worldX(header.drawn.west),
  north: worldY(header.drawn.north),
  east: worldX(header.drawn.east),
  south: worldY(header.drawn.south),
}

/** Farther away the island is a dot, and a window of elevations a speck: neither is painted. */
export const GROUND_FROM = 8

/** CSS pixels that the lines of its waters reach beyond it. */
const WATERLINES = 60

/** On the turn of the world on which the island lies, or nearest to it. */
export function homeTurn(window: WorldWindow): WorldWindow {
  const scale = worldPixels(window.zoom)
  const turn = Math.floor((window.left + window.width / 2) / scale)
  return { ...window, left: window.left - turn * scale }
}

/** True when the window shows any of the island or its waterlines. */
export function showsIsland(window: WorldWindow): boolean {
  if (window.zoom < GROUND_FROM) return false
  const scale = worldPixels(window.zoom)
  const { left, top, width, height } = homeTurn(window)
  const { west, north, east, south } = ISLAND_BOX
  return boxesMeet(
    grown({ west: west * scale, north: north * scale, east: east * scale, south: south * scale }, WATERLINES),
    { west: left, north: top, east: left + width, south: top + height },
  )
}
