/** What the bench does on the board: each thing that is dragged, the map panned and zoomed; where it is taken and how it is put back. */
import type { Page } from 'playwright-core'
import { mapWords } from '#renderer/words/en-map.ts'
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
  { name: 'time on the day strip', takes: '.day-chart .time-line', gesture: { by: 'move', size: 60 } },
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

/** Where a thing is under the pointer: its middle or else any place of it. Were something else taken, it would be measured in its stead. */
async function placeOf(page: Page, selector: string): Promise<Place> {
  const place = await page.evaluate((wanted) => {
    const thing = document.querySelector(wanted)
    const whole = thing?.closest('[data-grip]') ?? thing
    if (!thing || !whole) return null
    const { left, top, width, height } = thing.getBoundingClientRect()
    const shares = [0.5, 0.4, 0.6, 0.25, 0.75, 0.1, 0.9]
    const places = shares.flatMap((across) =>
      shares.map((down) => ({ x: left + across * width, y: top + down * height })),
    )
    const under = (x: number, y: number): Element | null => document.elementFromPoint(x, y)
    return (
      places.find(({ x, y }) => (under(x, y)?.closest('[data-grip]') ?? under(x, y)?.closest(wanted)) === whole) ?? null
    )
  }, selector)
  if (place === null) throw new Error(`${selector} is not in sight`)
  return place
}

/** Where the map shows nothing to take. */
async function bareMap(page: Page): Promise<Place> {
  const box = await page.locator('.map-holder').boundingBox()
  if (box === null) throw new Error('the map is not in sight')
  return { x: box.x + box.width * 0.3, y: box.y + box.height * 0.2 }
}

/** Shows subject, standpoint and landmark together, as the board does when it opens. */
export async function fitMap(page: Page): Promise<void> {
  await page.bringToFront()
  // From within: a click from outside waits for even frames, which a scan at work may not leave.
  await page.getByRole('button', { name: mapWords.fitPlan }).dispatchEvent('click')
  await calm(page)
}

/** Zooms lead toward the subject, so that it stays in sight. */
async function subjectOnMap(page: Page): Promise<Place> {
  const alone = await page.locator(`${MAP}"subject"]`).count()
  return placeOf(page, `${MAP}"${alone === 0 ? 'pair' : 'subject'}"] .subject-body`)
}

/** Zooms on, unmeasured, until subject and standpoint are told apart: a busy machine takes fewer turns of the wheel in the same frames. */
export async function comeNear(page: Page): Promise<void> {
  for (let turn = 0; turn < 8 && (await page.locator(`${MAP}"subject"]`).count()) === 0; turn++)
    await gestureOn(page, ZOOM_IN, (work) => work())
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
