/** Milestones of a start, marked from within the page as they come: the plan's pins drawn, the map under them painted. */

export const MILESTONES = ['pins', 'map'] as const
export type Milestone = (typeof MILESTONES)[number]

/** Runs in the page before all else, and looks once a frame until both are there. */
export function markMilestones([pins, map]: typeof MILESTONES): void {
  const small = new OffscreenCanvas(12, 12).getContext('2d', { willReadFrequently: true })
  /** Land, water and ways: a map that is one colour has not been painted yet. */
  const painted = (): boolean => {
    const base = document.querySelector('canvas.base-fine')
    if (small === null || !(base instanceof HTMLCanvasElement) || base.width <= 1) return false
    small.drawImage(base, 0, 0, 12, 12)
    const { data } = small.getImageData(0, 0, 12, 12)
    return new Set(new Uint32Array(data.buffer)).size > 8
  }
  let [pinned, drawn] = [false, false]
  const look = (): void => {
    if (!pinned && document.querySelector('.map-holder [data-grip]') !== null) {
      performance.mark(pins)
      pinned = true
    }
    if (!drawn && painted()) {
      performance.mark(map)
      drawn = true
    }
    if (!pinned || !drawn) requestAnimationFrame(look)
  }
  requestAnimationFrame(look)
}
