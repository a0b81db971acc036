/** Makes a full sheet fit its one page: a little smaller where it must be, never smaller than can be read. */

type Paper = 'a4' | 'letter'

/** Millimetres between the margins of 10 mm, less three lines: a printer breaks lines a little otherwise than the screen. */
const ROOM: Readonly<Record<Paper, number>> = { a4: 263, letter: 245.4 }
const PIXELS_PER_MILLIMETRE = 96 / 25.4

/** What is tried in order: first smaller print, then smaller pictures, then both, then the smallest pictures. */
const TRIES: readonly { readonly size: number; readonly tight: '' | 'pictures' | 'most' }[] = [
  ...[1, 0.97, 0.94, 0.91, 0.88].map((size) => ({ size, tight: '' as const })),
  ...[0.94, 0.91, 0.88, 0.85, 0.82].map((size) => ({ size, tight: 'pictures' as const })),
  ...[0.85, 0.82].map((size) => ({ size, tight: 'most' as const })),
]

/**
 * Sets the size of what is on the sheet; the sheet itself keeps the paper's width. Print smaller than the last try cannot be
 * read outdoors, so beyond it the sheet takes a second page.
 */
export function fitPage(sheet: HTMLElement, paper: Paper): void {
  const room = ROOM[paper] * PIXELS_PER_MILLIMETRE
  for (const { size, tight } of TRIES) {
    set(sheet, size, tight)
    if (sheet.getBoundingClientRect().height <= room) return
  }
  set(sheet, 1, '')
}

function set(sheet: HTMLElement, size: number, tight: string): void {
  sheet.style.setProperty('zoom', String(size))
  if (tight === '') delete sheet.dataset['tight']
  else sheet.dataset['tight'] = tight
}
