/** Acts on what a page shows as soon as it is drawn: that takes a frame, and longer where the page's code has to be fetched. */

/** Frames that it is waited for. */
const PATIENCE = 120

export function whenDrawn(selector: string, act: (drawn: HTMLElement) => void): void {
  const look = (frames: number): void => {
    const drawn = document.querySelector<HTMLElement>(selector)
    if (drawn !== null) act(drawn)
    else if (frames > 0) requestAnimationFrame(() => look(frames - 1))
  }
  requestAnimationFrame(() => look(PATIENCE))
}
