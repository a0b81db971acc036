/** No maker, brand or famous building is named in source, tests or comments; coordinates shown as samples are the demo island's. */
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import { ISLAND_MIDDLE } from '#app/demo/island-frame.ts'
import { parseCoordinates } from '#core/geo/coordinate-text.ts'
import { geodesicDistance } from '#core/geo/geodesic.ts'

const ROOT = resolve(import.meta.dirname, '../..')

/**
 * Makers of lenses, film, cameras and vehicles, and the like, by the first letters of a hash each, so that this list names none either.
 * The invented one is "any" and "maker" in one word. Names that are ordinary words as well are left out: they need eyes.
 */
const UNNAMED = new Set(
  `
  0iKhjWR0 1Ti8XzFS 3guht2Zp 4M1ovVV2 4POHqS_I 53lxBqTd 55T0-y4Q 5Ic4OdSW 5pfFETzl 6ZRHjcWB 7pAhyE8z AgA1qvMG
  BZ6BJwia DCwa3zKv DflYKIFd DmWCxpHk GCTE_o1a IPjfKuHt J9-e2aR3 JBweMO2I K1hBNN3J Ktjoy7fO M3uNLB4T N7_ctMUH OEWF5swV
  P0oJuSzP PIdGRXkG PkgG70Zw PlDHDYXN PmmiS2Jg QjarPUH0 Rkw0qR0b RsdZ6HGT S4gj7Z5c SV2FZrPh UwQCm_Co VXIqn7XN Vzq7PKBu
  WH05K2x2 aZGhzSVJ acNv8_vC aq-nL4E5 b8alXbVJ c1i9Tsh3 cc4Pc_sS czwN6bs0 e7BQkY0m elNWZZxb f1LSCEIP gDXY_NoW gFN9ZdR5
  hBdln0a1 hheCEVMD i0wJnJHV kX67M5ay nBXoFgaZ nx45Zel5 pKBP79mD qFGlgyIN qlk0P567 rJ5NlLjW rvyKivOT tRAm5ERP tTU57Nfz
  tlUdVUqI v2otI3po v4laq-iM vMrkznvm vxG6P0h8 wlgloSOe xAZ3zzE_ xWJvyFDt xfl1s1xy zelNl7c5
`
    .trim()
    .split(/\s+/),
)

const sealed = (word: string): string => createHash('sha256').update(word).digest('base64url').slice(0, 8)

/** The named ones in a text, each word judged once. */
const judged = new Map<string, boolean>()
function named(text: string): string[] {
  const words = new Set(text.toLowerCase().match(/[a-z]{2,}/g))
  return [...words].filter((word) => {
    const known = judged.get(word) ?? UNNAMED.has(sealed(word))
    judged.set(word, known)
    return known
  })
}

interface Text {
  readonly path: string
  readonly text: string
}

const TEXTS: readonly Text[] = [
  ...['core', 'app', 'main', 'renderer', 'test'].flatMap((room) =>
    readdirSync(join(ROOT, room), { recursive: true, encoding: 'utf8' })
      .filter((path) => /\.(tsx?|css|html|sql|mjs|py)$/.test(path))
      .map((path) => `${room}/${path.replaceAll('\\', '/')}`),
  ),
  'README.md',
  'DEVELOPERS.md',
  'package.json',
  'electron-builder.yml',
].map((path) => ({ path, text: readFileSync(join(ROOT, path), 'utf8') }))

describe('makers and brands', () => {
  test('are recognised among other words', () => {
    expect(named(`By the table of ${['Any', 'maker'].join('')}, p. 42.`)).toEqual([['any', 'maker'].join('')])
    expect(named('By a maker’s printed table, p. 42.')).toEqual([])
  })

  test('are named nowhere', () => {
    expect(TEXTS.flatMap(({ path, text }) => named(text).map((word) => `${path}: ${word}`))).toEqual([])
  })
})

/** Pairs of degrees with at least three places, degrees with seconds, geo addresses, and metres in a zone. */
const SAMPLES = [
  /-?\d{1,2}\.\d{3,}, -?\d{1,3}\.\d{3,}/g,
  /\d{1,2}°\d{1,2}[′'][\d.]+[″"][NS] \d{1,3}°\d{1,2}[′'][\d.]+[″"][EW]/g,
  /geo:-?\d{1,2}\.\d+,-?\d{1,3}\.\d+/g,
  /\d{1,2} (?:North|South) \d{6} \d{7}/g,
]

test('coordinates in what the user reads are on the demo island', () => {
  const sentences = TEXTS.filter(({ path }) => /^(core\/geo|renderer\/words)\//.test(path))
  const found = sentences.flatMap(({ path, text }) =>
    SAMPLES.flatMap((form) => text.replaceAll("\\'", "'").match(form) ?? []).map((sample) => ({ path, sample })),
  )
  expect(found.length).toBeGreaterThanOrEqual(6)
  const elsewhere = found.filter(({ sample }) => {
    const read = parseCoordinates(sample)
    return !read.ok || geodesicDistance(read.value.at, ISLAND_MIDDLE) > 10_000
  })
  expect(elsewhere).toEqual([])
})
