/** Makes a sheet fill its one page: print and pictures as large as there is room for, never print smaller than can be read. */

type Paper = 'a4' | 'letter'

/** Millimetres between the margins of 10 mm, less three lines: a printer breaks lines a little otherwise than the screen. */
const ROOM: Readonly<Record<Paper, number>> = { a4: 268, letter: 250.4 }
const PIXELS_PER_MILLIMETRE = 96 / 25.4

interface Fit {
  /** Share of the full print. */
  readonly size: number
  /** Share of the pictures' full width. */
  readonly pictures: number
  /** What the board tells as well is left out: most of it, or all. */
  readonly tight: '' | 'most' | 'all'
}

/** What is tried in order: a little smaller in both, then smaller pictures, then all that can be left out. */
const TRIES: readonly Fit[] = [
  ...[1, 0.97, 0.94].map((size) => ({ size, pictures: 0.95, tight: '' as const })),
  ...[0.94, 0.91, 0.88, 0.85].map((size) => ({ size, pictures: 0.85, tight: '' as const })),
  ...[0.88, 0.85, 0.82].map((size) => ({ size, pictures: 0.7, tight: '' as const })),
  ...[0.85, 0.82].map((size) => ({ size, pictures: 0.6, tight: '' as const })),
  ...[0.88, 0.85, 0.82].map((size) => ({ size, pictures: 0.55, tight: 'most' as const })),
  ...[0.85, 0.82].map((size) => ({ size, pictures: 0.4, tight: 'all' as const })),
]

/** By so much pictures grow into the room that is left. */
const STEP = 0.02
/** Most millimetres of paper left over that are dealt out between the parts: more would tear them apart. */
const SPREAD = 40

/**
 * Sets the size of what is on the sheet; the sheet itself keeps the paper's width. Print smaller than the last try cannot be
 * read outdoors, so beyond it the sheet takes a second page.
 */
export function fitPage(sheet: HTMLElement, paper: Paper): void {
  const room = ROOM[paper] * PIXELS_PER_MILLIMETRE
  const high = (fit: Fit): number => {
    set(sheet, fit)
    return sheet.getBoundingClientRect().height
  }
  const found = TRIES.find((fit) => high(fit) <= room)
  if (found === undefined) {
    set(sheet, { size: 1, pictures: 0.9, tight: '' })
    return
  }
  const grown = (pictures: number): Fit => ({ ...found, pictures })
  let { pictures } = found
  while (pictures < 1 && high(grown(Math.min(1, pictures + STEP))) <= room) pictures = Math.min(1, pictures + STEP)
  const used = high(grown(pictures))
  const target = Math.min(room, used + SPREAD * PIXELS_PER_MILLIMETRE)
  sheet.style.setProperty('min-height', `${(target / found.size).toFixed(1)}px`)
}

function set(sheet: HTMLElement, { size, pictures, tight }: Fit): void {
  sheet.style.setProperty('zoom', String(size))
  sheet.style.setProperty('--pictures', pictures.toFixed(2))
  sheet.style.setProperty('min-height', '0')
  if (tight === '') delete sheet.dataset['tight']
  else sheet.dataset['tight'] = tight
}
