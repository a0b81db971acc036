/** Ground of a real survey's size, written as an elevation file into a data folder: 2,000 x 2,000 cells a second of arc apart about the demo's island. */
import { mkdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { DEMO_PLACES } from '#app/demo/island-places.ts'
import { elevationTiff } from '#test/help/tiff.ts'

const SIDE = 2_000
const CELL = 1 / 3_600

/** Hills in metres of three sizes, everywhere above the sea. */
function height(column: number, row: number): number {
  const wide = 180 * Math.sin(column / 170) * Math.cos(row / 210)
  const hills = 60 * Math.sin(column / 23 + row / 61) * Math.sin(row / 29)
  return Math.round(260 + wide + hills + 12 * Math.sin(column / 5.3) * Math.cos(row / 4.1))
}

export async function writeRealGround(dataFolder: string): Promise<void> {
  const middle = DEMO_PLACES[0]?.stop
  if (middle === undefined) throw new Error('the demo has no spot')
  const cells = new Int16Array(SIDE * SIDE)
  for (let row = 0; row < SIDE; row++) {
    for (let column = 0; column < SIDE; column++) cells[row * SIDE + column] = height(column, row)
  }
  const part = new Uint8Array(cells.buffer)
  const half = (SIDE / 2) * CELL
  const corner = [33_922, 12, [0, 0, 0, middle.lon - half, middle.lat + half, 0]] as const
  const file = elevationTiff({ columns: SIDE, rows: SIDE, packing: 1, part }, corner)
  await mkdir(join(dataFolder, 'elevation'), { recursive: true })
  await writeFile(join(dataFolder, 'elevation', 'survey.tif'), file)
}
