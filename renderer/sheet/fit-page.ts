/** Makes a full sheet fit its one page: a little smaller where it must be, never smaller than can be read. */

type Paper = 'a4' | 'letter'

/** Millimetres between the margins of 10 mm, less two lines: a printer breaks lines a little otherwise than the screen. */
const ROOM: Readonly<Record<Paper, number>> = { a4: 269.5, letter: 251.9 }
const PIXELS_PER_MILLIMETRE = 96 / 25.4

/** What is tried in order: first smaller print, then smaller pictures, then both. */
const TRIES = [
  ...[1, 0.97, 0.94, 0.91, 0.88].map((size) => ({ size, tight: false })),
  ...[0.94, 0.91, 0.88, 0.85, 0.82].map((size) => ({ size, tight: true })),
] as const

/**
 * Sets the size of what is on the sheet; the sheet itself keeps the paper's width. Print smaller than the last try cannot be
 * read outdoors, so beyond it the sheet takes a second page.
 */
export function fitPage(sheet: HTMLElement, paper: Paper): void {
  const room = ROOM[paper] * PIXELS_PER_MILLIMETRE
  for (const { size, tight } of TRIES) {
    sheet.style.setProperty('zoom', String(size))
    sheet.toggleAttribute('data-tight', tight)
    if (sheet.getBoundingClientRect().height <= room) return
  }
  sheet.style.setProperty('zoom', '1')
  sheet.removeAttribute('data-tight')
}
