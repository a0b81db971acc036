/** Each boundary rule of the linter catches a planted bad sample, and leaves the same thing alone where it is allowed. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { lintOf, plant, type Planted } from '#test/help/planted.ts'

const RESTRICTED = 'eslint(no-restricted-imports)'

/** What each room must not import; one sample file for each. */
const FORBIDDEN: Readonly<Record<string, readonly string[]>> = {
  core: [
    'node:fs',
    'node:fs/promises',
    'electron',
    'better-sqlite3',
    'zod',
    'preact',
    'preact/hooks',
    '@preact/signals',
    'leaflet',
    '#app/commands.ts',
    '#main/log.ts',
    '#renderer/host/host.ts',
    '#test/help/found.ts',
    '../app/commands.ts',
    './geo/lat-lon.ts',
  ],
  app: [
    'better-sqlite3',
    'preact',
    '@preact/signals',
    'leaflet',
    '#main/log.ts',
    '#renderer/host/host.ts',
    '#test/help/found.ts',
    '../core/result.ts',
    './contract/call.ts',
  ],
  main: [
    'preact',
    '@preact/signals',
    'leaflet',
    '#renderer/host/host.ts',
    '#test/help/found.ts',
    '../core/result.ts',
    './door/gate.ts',
  ],
  renderer: [
    'node:fs',
    'node:fs/promises',
    'electron',
    'better-sqlite3',
    '#main/log.ts',
    '#test/help/found.ts',
    '../core/result.ts',
    './map/map.tsx',
  ],
  test: ['../core/result.ts', './help/found.ts'],
}

/** What they may import: the rule must not be one that forbids everything. */
const ALLOWED: Readonly<Record<string, readonly string[]>> = {
  core: ['#core/result.ts', './neighbour.ts', '@turf/turf', 'geographiclib-geodesic'],
  app: ['#core/result.ts', '#app/commands.ts', './neighbour.ts', 'zod', 'node:fs', 'electron'],
  main: [
    '#core/result.ts',
    '#app/commands.ts',
    '#main/log.ts',
    './neighbour.ts',
    'node:fs',
    'electron',
    'better-sqlite3',
    'zod',
  ],
  renderer: ['#core/result.ts', '#app/commands.ts', '#renderer/host/host.ts', './neighbour.ts', 'preact', 'leaflet'],
  test: ['#core/result.ts', '#main/log.ts', '#renderer/host/host.ts', './neighbour.ts', 'node:fs'],
}

interface Sample {
  readonly room: string
  readonly imported: string
  readonly path: string
}

function samples(table: Readonly<Record<string, readonly string[]>>, name: string): Sample[] {
  return Object.entries(table).flatMap(([room, list]) =>
    list.map((imported, index) => ({ room, imported, path: `${room}/deep/${name}-${index}.ts` })),
  )
}

const BAD = samples(FORBIDDEN, 'bad')
const GOOD = samples(ALLOWED, 'good')

const OTHERS: readonly (readonly [string, string, string])[] = [
  ['core/a-cycle.ts', "import { b } from './b-cycle.ts'\nexport const a = (): unknown => b\n", 'import(no-cycle)'],
  ['core/b-cycle.ts', "import { a } from '#core/a-cycle.ts'\nexport const b = (): unknown => a\n", 'import(no-cycle)'],
  ['renderer/raw.tsx', 'export const Raw = () => <p dangerouslySetInnerHTML={{ __html: "" }} />\n', 'react(no-danger)'],
  ['main/default.ts', 'export default function serve() {}\n', 'import(no-default-export)'],
  [
    'main/floating.ts',
    "import { readFile } from 'node:fs/promises'\nexport function read() {\n  readFile('x')\n}\n",
    'typescript(no-floating-promises)',
  ],
]

let house: Planted
let broken: ReadonlyMap<string, readonly string[]>

beforeAll(() => {
  const files: Record<string, string> = Object.fromEntries(OTHERS.map(([path, text]) => [path, text]))
  for (const { path, imported } of [...BAD, ...GOOD])
    files[path] = `import * as it from '${imported}'\nexport const found = it\n`
  house = plant(files)
  broken = lintOf(house)
})

afterAll(() => house.remove())

describe('the linter', () => {
  test.each(BAD)('forbids $room to import $imported', ({ path }) => {
    expect(broken.get(path) ?? []).toContain(RESTRICTED)
  })

  test.each(GOOD)('lets $room import $imported', ({ path }) => {
    expect(broken.get(path) ?? []).not.toContain(RESTRICTED)
  })

  test.each(OTHERS)('%s breaks its rule', (path, _text, rule) => {
    expect(broken.get(path) ?? []).toContain(rule)
  })
})
