/** The anchor of all frames: a bare Leaflet map with one painted base, one handle to drag and one wedge redrawn with it. */
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import type { BrowserContext, Page } from 'playwright-core'
import type { Place } from './gestures.ts'

const LEAFLET = dirname(createRequire(import.meta.url).resolve('leaflet/package.json'))

/** Opens it in a window of its own, its map as large as the board's. */
export async function openAnchor(context: BrowserContext, width: number, height: number): Promise<Page> {
  const page = await context.newPage()
  await page.setContent(
    `<!doctype html><style>body{margin:0}#map{width:${width}px;height:${height}px}</style><div id="map"></div>`,
  )
  await page.addStyleTag({ path: join(LEAFLET, 'dist/leaflet.css') })
  await page.addScriptTag({ path: join(LEAFLET, 'dist/leaflet.js') })
  await page.evaluate(drawAnchor, { width, height })
  return page
}

/** Runs within the page. */
function drawAnchor({ width, height }: { width: number; height: number }): void {
  const { L } = globalThis as unknown as { L: typeof import('leaflet') }
  const map = L.map('map', { zoomControl: false, attributionControl: false }).setView([0, 0], 16)
  const base = document.createElement('canvas')
  base.width = width
  base.height = height
  const pen = base.getContext('2d')
  if (pen === null) throw new Error('no canvas')
  for (let stripe = 0; stripe < width; stripe += 12) {
    pen.fillStyle = `hsl(${(stripe * 7) % 360} 30% 80%)`
    pen.fillRect(stripe, 0, 12, height)
  }
  map.getPane('tilePane')?.append(base)
  const wedge = L.polygon([], { weight: 1.5 }).addTo(map)
  const far = 0.004
  const handle = L.marker([0, 0], {
    draggable: true,
    icon: L.divIcon({
      className: 'handle',
      iconSize: [32, 32],
      html: '<svg width="32" height="32"><circle cx="16" cy="16" r="12"/></svg>',
    }),
  }).addTo(map)
  const draw = (): void => {
    const { lat, lng } = handle.getLatLng()
    wedge.setLatLngs([
      [lat, lng],
      [lat + far, lng + far],
      [lat + far / 2, lng + far * 1.5],
    ])
  }
  draw()
  handle.on('drag', draw)
}

/** The middle of its handle. */
export async function anchorHandle(page: Page): Promise<Place> {
  const box = await page.locator('.handle').boundingBox()
  if (box === null) throw new Error('the handle is not in sight')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}
