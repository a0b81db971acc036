/** What the bench does on the board: each thing that is dragged, the map panned and zoomed; where it is taken and how it is put back. */
import type { Page } from 'playwright-core'
import { type Gesture, type Place, calm, perform } from './gestures.ts'

export interface BoardGesture {
  readonly name: string
  /** What is taken, as a selector; null: the bare map. */
  readonly takes: string | null
  readonly gesture: Gesture
}

const CIRCLE: Gesture = { by: 'move', size: 14 }
const MAP = '.map-holder [data-grip='
const CLOSE = '.close-plan [data-grip='

/** With the map as it opens: landmark and the pair of subject and standpoint in sight. */
export const FROM_AFAR: readonly BoardGesture[] = [
  { name: 'landmark on the map', takes: `${MAP}"landmark"] .landmark-foot`, gesture: CIRCLE },
  { name: 'standpoint in the close plan', takes: `${CLOSE}"standpoint"]`, gesture: CIRCLE },
  { name: 'heading in the close plan', takes: `${CLOSE}"heading"] .handle`, gesture: CIRCLE },
  { name: 'time on the day strip', takes: '.day-chart .time-label', gesture: { by: 'move', size: 60 } },
  { name: 'the frame', takes: '.lens-frame', gesture: CIRCLE },
  { name: 'pan of the map', takes: null, gesture: { by: 'move', size: 90 } },
]

export const ZOOM_IN: BoardGesture = { name: 'zoom in', takes: null, gesture: { by: 'wheel', size: -90 } }
export const ZOOM_OUT: BoardGesture = { name: 'zoom out', takes: null, gesture: { by: 'wheel', size: 90 } }

/** Once the map is so near that subject and standpoint are told apart. */
export const FROM_NEAR: readonly BoardGesture[] = [
  { name: 'subject on the map', takes: `${MAP}"subject"] .subject-body`, gesture: CIRCLE },
  { name: 'standpoint on the map', takes: `${MAP}"standpoint"] .standpoint-kite`, gesture: CIRCLE },
]

async function placeOf(page: Page, selector: string): Promise<Place> {
  const box = await page.locator(selector).first().boundingBox()
  if (box === null) throw new Error(`${selector} is not in sight`)
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

/** Where the map shows nothing to take. */
async function bareMap(page: Page): Promise<Place> {
  const box = await page.locator('.map-holder').boundingBox()
  if (box === null) throw new Error('the map is not in sight')
  return { x: box.x + box.width * 0.3, y: box.y + box.height * 0.2 }
}

/** Zooms lead toward the subject, so that it stays in sight. */
async function subjectOnMap(page: Page): Promise<Place> {
  const alone = await page.locator(`${MAP}"subject"]`).count()
  return placeOf(page, `${MAP}"${alone === 0 ? 'pair' : 'subject'}"] .subject-body`)
}

/** Performs a gesture and leaves the board as it was, but for a zoom; `around` runs it and tells its frames. */
export async function gestureOn<T>(
  page: Page,
  { takes, gesture }: BoardGesture,
  around: (work: () => Promise<number[]>) => Promise<T>,
): Promise<T> {
  await page.bringToFront()
  await calm(page)
  if (gesture.by === 'wheel') {
    const at = await subjectOnMap(page)
    await page.mouse.move(at.x, at.y)
    return around(() => perform(page, at, gesture))
  }
  const at = takes === null ? await bareMap(page) : await placeOf(page, takes)
  await page.mouse.move(at.x, at.y)
  await page.mouse.down()
  await page.mouse.move(at.x + 5, at.y)
  const told = await around(() => perform(page, at, gesture))
  await page.mouse.move(at.x, at.y)
  if (takes !== null) await page.keyboard.press('Escape')
  await page.mouse.up()
  return told
}
