/** Makes a full sheet fit its one page: a little smaller where it must be, never smaller than can be read. */

type Paper = 'a4' | 'letter'

/** Millimetres between the margins of 10 mm, less a line: a printer breaks lines a little otherwise than the screen. */
const ROOM: Readonly<Record<Paper, number>> = { a4: 272.5, letter: 254.9 }
const PIXELS_PER_MILLIMETRE = 96 / 25.4

/** Tried in order; smaller print than the last cannot be read outdoors, so beyond it the sheet takes a second page. */
const SIZES = [1, 0.97, 0.94, 0.91, 0.88, 0.85, 0.82] as const

/** Sets the size of what is on the sheet; the sheet itself keeps the paper's width. */
export function fitPage(sheet: HTMLElement, paper: Paper): void {
  const room = ROOM[paper] * PIXELS_PER_MILLIMETRE
  for (const size of SIZES) {
    sheet.style.setProperty('zoom', String(size))
    if (sheet.getBoundingClientRect().height <= room) return
  }
  sheet.style.setProperty('zoom', '1')
}
