/** House rules that no linter knows, held over the real source: who may name what, names of files, first lines, sizes. */
import { readdirSync, readFileSync } from 'node:fs'
import { basename, join, resolve } from 'node:path'
import { describe, expect, test } from 'vitest'

const ROOT = resolve(import.meta.dirname, '../..')
const ROOMS = ['core', 'app', 'main', 'renderer', 'test'] as const

interface Source {
  readonly path: string
  readonly text: string
}

function sourcesOf(room: string): Source[] {
  return readdirSync(join(ROOT, room), { recursive: true, encoding: 'utf8' })
    .map((path) => `${room}/${path.replaceAll('\\', '/')}`)
    .filter((path) => /\.tsx?$/.test(path))
    .map((path) => ({ path, text: readFileSync(join(ROOT, path), 'utf8') }))
}

const SOURCES = ROOMS.flatMap(sourcesOf)
const PRODUCT = SOURCES.filter((source) => !source.path.startsWith('test/'))

const naming = (pattern: RegExp, within: readonly Source[] = PRODUCT): string[] =>
  within
    .filter((source) => pattern.test(source.text))
    .map((source) => source.path)
    .toSorted()

const importing = (name: string): RegExp => new RegExp(`(from|import\\() ?'${name}(/[^']*)?'`)

describe('one place knows', () => {
  test('ipcMain', () => {
    expect(naming(/import \{[^}]*\bipcMain\b[^}]*\} from 'electron'/)).toEqual(['main/door/ipc.ts'])
  })

  test('ipcRenderer and contextBridge', () => {
    expect(naming(/import \{[^}]*\b(ipcRenderer|contextBridge)\b/)).toEqual(['app/preload.ts'])
  })

  test('the way from the page to main', () => {
    expect(
      naming(
        /\bfetch\(`\/api|\bglobalThis as \{ standpoint|window\.standpoint|standpoint-token/,
        PRODUCT.filter((one) => one.path.startsWith('renderer/')),
      ),
    ).toEqual(['renderer/host/host.ts'])
  })

  test('geographiclib', () => {
    expect(naming(importing('geographiclib-geodesic'))).toEqual(['core/geo/geodesic.ts'])
  })

  test('suncalc, and of it no day of its own', () => {
    expect(naming(importing('suncalc'))).toEqual(['core/light/sky.ts'])
    expect(naming(/\bgetTimes\b|\bgetMoonTimes\b/)).toEqual([])
  })

  test('astronomy-engine, for tests alone', () => {
    expect(naming(importing('astronomy-engine'))).toEqual([])
    expect(naming(importing('astronomy-engine'), SOURCES).length).toBeGreaterThan(0)
  })

  test('no field of the browser’s own for dates and times, which follows the machine’s language', () => {
    const own = /\btype=\{?["'](?:date|datetime-local|month|week|time)["']/
    expect(own.test('<input type="date" />')).toBe(true)
    expect(naming(own)).toEqual([])
  })

  test('nor any date or time written as the machine would', () => {
    expect(naming(/\btoLocale(?:Date|Time)String\(|\bIntl\.DateTimeFormat\(/)).toEqual([])
  })

  test('how long a test waits for what comes by itself', () => {
    const tests = SOURCES.filter((one) => one.path.startsWith('test/'))
    expect(naming(/\bvi\.wait(?:For|Until)\(/, tests)).toEqual(['test/help/eventually.ts'])
  })

  test('Temporal', () => {
    expect(naming(importing('temporal-polyfill'))).toEqual(['core/time/civil.ts', 'core/time/zone-offset.ts'])
    expect(naming(/\bTemporal\.\w/)).toEqual(['core/time/civil.ts', 'core/time/zone-offset.ts'])
  })

  test('the readers of pictures and archives', () => {
    expect(naming(importing('pngjs'))).toEqual(['main/ground/terrarium.ts'])
    expect(naming(importing('fflate'))).toEqual(['main/ground/archive.ts'])
    expect(naming(importing('geotiff'))).toEqual([
      'main/ground/geotiff-file.ts',
      'main/ground/geotiff-level.ts',
      'main/ground/geotiff-parts.ts',
    ])
  })

  test('projections', () => {
    expect(naming(importing('proj4'))).toEqual(['core/geo/grid-reference.ts', 'core/geo/projected-system.ts'])
  })

  test.each([
    ['better-sqlite3', 'main/store/'],
    ['leaflet', 'renderer/view/map/'],
    ['electron', 'main/'],
  ])('%s, within %s', (name, folder) => {
    const found = naming(importing(name)).filter((path) => path !== 'app/preload.ts')
    expect(found.length).toBeGreaterThan(0)
    expect(found.filter((path) => !path.startsWith(folder))).toEqual([])
  })
})

describe('core', () => {
  const core = SOURCES.filter((source) => source.path.startsWith('core/'))
  test('knows neither clock nor chance', () => {
    expect(naming(/\bDate\.now\b|\bMath\.random\b|\bnew Date\(\)|\bcrypto\./, core)).toEqual([])
  })

  test('does nothing aloud', () => {
    expect(naming(/\bconsole\.|\bprocess\.|\bsetTimeout\b|\bfetch\(/, core)).toEqual([])
  })
})

const MOST_LINES = 250

/** Longer than is read at one sitting, without a reason in what it says of itself first. */
function isTooLong(text: string): boolean {
  const lines = text.replace(/\n$/u, '').split('\n').length
  const [first = ''] = text.split('*/', 1)
  return lines > MOST_LINES && !/\blonger than others because\b/u.test(first.replaceAll(/\s*\n \*\s*/gu, ' '))
}

describe('every source file', () => {
  test('begins by saying what it owns', () => {
    expect(SOURCES.filter((source) => !source.text.startsWith('/**')).map((one) => one.path)).toEqual([])
  })

  test('has a name that tells its concept', () => {
    const names = /^(utils?|helpers?|common|types|constants|misc|shared|index)\.tsx?$/
    const found = SOURCES.filter((source) => names.test(basename(source.path))).map((one) => one.path)
    expect(found).toEqual(['app/contract/index.ts'])
  })

  test('stays short enough to be read whole, or says why it is not', () => {
    expect(PRODUCT.filter(({ text }) => isTooLong(text)).map(({ path }) => path)).toEqual([])
  })

  test.each([
    ['one line too many', `/** A list. */\n${'1\n'.repeat(250)}`, true],
    ['a reason that stands below', `/** A list. */\n${'1\n'.repeat(250)}/** longer than others because so. */\n`, true],
    ['as long as may be', `/** A list. */\n${'1\n'.repeat(249)}`, false],
    ['a reason', `/**\n * A list,\n * longer than others because so.\n */\n${'1\n'.repeat(250)}`, false],
  ])('a planted file is judged: %s', (_, text, expected) => expect(isTooLong(text)).toBe(expected))

  test('is finished', () => {
    const mark = new RegExp(['TO', 'DO|FIX', 'ME|X', 'XX'].join(''))
    expect(naming(mark, SOURCES)).toEqual([])
  })

  test('runs in full: no test is left out or alone', () => {
    const mark = new RegExp(['\\b(test|it|describe)\\.', '(only|skip|todo)\\b'].join(''))
    expect(naming(mark, SOURCES)).toEqual([])
  })
})

/** Turns of phrase that a reader has to puzzle out, in comments; and verbs that name no thing, in code. */
const PUZZLING: readonly RegExp[] = [
  new RegExp(['\\bans', 'wers? with what\\b'].join(''), 'iu'),
  new RegExp(['\\bane', 'w\\b'].join(''), 'iu'),
  new RegExp(['\\bup', 'on\\b'].join(''), 'iu'),
  new RegExp(['\\btakes? (?:them|the listeners) ', 'away\\b'].join(''), 'iu'),
]
const COMMENT = /^\s*(?:\/\/|\/\*|\*).*$/gmu
/** The name of a function or of something kept for the whole file: what it is of has to be said. */
const BARE =
  /^(?:export )?(?:const|let|(?:async )?function\*?) (told|wished|known|found|made|kept|asked|taken|given|held)\b|^\s+(?:const|let|(?:async )?function\*?|readonly) (told|wished)\b/gmu

function puzzling(text: string): string[] {
  return [...text.matchAll(COMMENT)].map(([line]) => line).filter((line) => PUZZLING.some((turn) => turn.test(line)))
}

function bareNames(text: string): string[] {
  return [...text.matchAll(BARE)].map(([, whole, within]) => whole ?? within ?? '')
}

describe('plain English', () => {
  test('in comments', () => {
    expect(SOURCES.flatMap(({ path, text }) => puzzling(text).map((line) => `${path}: ${line.trim()}`))).toEqual([])
  })

  test('in names: nouns for things', () => {
    expect(PRODUCT.flatMap(({ path, text }) => bareNames(text).map((name) => `${path}: ${name}`))).toEqual([])
  })

  test.each([
    ['/** Listens; ans', 'wers with what ends it. */'],
    ['  // The picture is drawn ane', 'w.'],
    [' * Made up', 'on the state of before.'],
    ['/** Removes: takes the listeners ', 'away. */'],
  ])('a planted comment is found: %s%s', (...parts) => {
    expect(puzzling(`const a = 1\n${parts.join('')}\n`)).toHaveLength(1)
  })

  test.each([
    ['const known = new Map()\n', 'known'],
    ['export let found = 1\n', 'found'],
    ['function told(): void {}\n', 'told'],
    ['  const wished = 1\n', 'wished'],
    ['  readonly told: string\n', 'told'],
  ])('a planted name is found: %s', (text, name) => {
    expect(bareNames(text)).toEqual([name])
  })

  test('a place that bears such a word, and a word for the user, are let be', () => {
    expect(puzzling("const town = 'Stratford-upon-Avon'\n")).toEqual([])
    expect(bareNames('  const found = list.find(isIt)\nconst foundSpots = 1\n')).toEqual([])
  })
})
