/** Pixels in which the sheet's plans are drawn, as the camera is held; the style gives them room of the same proportions. */

/** An upright picture leaves the close plan a place beside it, and the map the row below. */
export const MAP_SIZE = { lying: { width: 400, height: 310 }, upright: { width: 560, height: 270 } } as const
export const CLOSE_SIZE = { lying: { width: 310, height: 310 }, upright: { width: 330, height: 360 } } as const
