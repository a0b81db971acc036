/** Gestures dispatched from within the page, one step a frame: sent from outside they would arrive in bunches. */
import type { Page } from 'playwright-core'

export interface Place {
  readonly x: number
  readonly y: number
}

export interface Gesture {
  /** `move`: the pointer goes round in a circle; `wheel`: the wheel is turned by a step every so often. */
  readonly by: 'move' | 'wheel'
  /** Pixels of the circle, or of a turn of the wheel (negative brings nearer). */
  readonly size: number
}

export const FRAMES = 60
/** Frames from one turn of the wheel to the next. */
const TURN = 20

/** Performs a gesture of so many frames; the milliseconds that each frame took. The button, if any, is down already. */
export async function perform(page: Page, at: Place, { by, size }: Gesture): Promise<number[]> {
  return page.evaluate(
    async ({ x, y, frames, by, size, turn }) => {
      const nextFrame = (): Promise<number> => new Promise((done) => requestAnimationFrame(done))
      const target = document.elementFromPoint(x, y) ?? document.body
      const times: number[] = [await nextFrame()]
      for (let frame = 0; frame < frames; frame++) {
        const angle = (frame / frames) * 2 * Math.PI
        const clientX = x + size * Math.sin(angle)
        const clientY = y + size * (1 - Math.cos(angle))
        const init = { bubbles: true, cancelable: true, button: 0, buttons: 1, clientX, clientY }
        if (by === 'move') {
          target.dispatchEvent(new PointerEvent('pointermove', { ...init, pointerId: 1, isPrimary: true }))
          target.dispatchEvent(new MouseEvent('mousemove', init))
        } else if (frame % turn === 0)
          target.dispatchEvent(new WheelEvent('wheel', { ...init, buttons: 0, clientX: x, clientY: y, deltaY: size }))
        times.push(await nextFrame())
      }
      return times.slice(1).map((time, index) => time - (times[index] ?? time))
    },
    { ...at, frames: FRAMES, by, size, turn: TURN },
  )
}

/** Waits until frames follow one another evenly and no map zooms: what went before is over. */
export async function calm(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const nextFrame = (): Promise<number> => new Promise((done) => requestAnimationFrame(done))
    const until = performance.now() + 3_000
    let before = await nextFrame()
    for (let even = 0; even < 25 && before < until;) {
      const now = await nextFrame()
      even = now - before < 25 && document.querySelector('.leaflet-zoom-anim') === null ? even + 1 : 0
      before = now
    }
  })
}
