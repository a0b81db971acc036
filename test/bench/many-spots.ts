/** A hundred thousand invented spots, the same in every run: names, notes and places all over the globe. */
import type { Change } from '#app/contract/library.ts'
import { saved, shootRecord, type SpotRecord, spotRecord } from '#test/help/library-records.ts'

export const SPOTS = 100_000
const SHOOTS = 1_000
const WORDS = 30_000

/** Twelve spots bear this name; nothing else does. */
export const RARE_NAME = 'Kap-Nordwind'
const RARE_EVERY = Math.ceil(SPOTS / 12)

/** The common word: about one spot in four bears it. */
export const COMMON_WORD = 'harbour'

export function manyShoots(): Change[] {
  return Array.from({ length: SHOOTS }, (_, n) => saved(shootRecord(`shoot-${n}`, { name: `Journey ${n}` })))
}

export function manySpots(): SpotRecord[] {
  const random = sequence(20_261_125)
  const words = Array.from({ length: WORDS }, () => inventedWord(random))
  // Few words are common and most are rare, as in any language.
  const anyWord = (): string => words[Math.floor(random() ** 3 * WORDS)] ?? ''
  const text = (count: number): string => Array.from({ length: count }, anyWord).join(' ')
  return Array.from({ length: SPOTS }, (_, n) => {
    const at = { lat: random() * 160 - 80, lon: random() * 360 - 180 }
    const common = random() < 0.25 ? ` ${COMMON_WORD}` : ''
    const name = n % RARE_EVERY === 0 ? RARE_NAME : `${text(2)} ${n % 500}`
    return spotRecord(idOf(random, n), `shoot-${n % SHOOTS}`, { at, name, notes: `${text(18)}${common}.`, rank: n })
  })
}

/** A linear congruential sequence in 0..1 (the constants of ANSI C's example). */
function sequence(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7f_ff_ff_ff
    return state / 0x80_00_00_00
  }
}

/** In no order, as the program's own ids are. */
function idOf(random: () => number, n: number): string {
  return `${Math.floor(random() * 2 ** 31).toString(36)}-${Math.floor(random() * 2 ** 31).toString(36)}-${n.toString(36)}`
}

function inventedWord(random: () => number): string {
  const length = 3 + Math.floor(random() * 8)
  return Array.from({ length }, (_, at) =>
    (at % 2 === 0 ? 'bdfgklmnprstvw' : 'aeiouäöü').charAt(Math.floor(random() * 8)),
  ).join('')
}
