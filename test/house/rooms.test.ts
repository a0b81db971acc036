/** Each room's compiler project lacks the globals and modules that do not belong in it, shown by planted samples. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { compilerErrors, plant, type Planted } from '#test/help/planted.ts'

const SAMPLES: readonly (readonly [room: string, name: string, text: string, error: RegExp])[] = [
  ['core', 'page', 'export const title = document.title\n', /TS2584|TS2304/],
  ['core', 'window', 'export const wide = window.innerWidth\n', /TS2304/],
  ['core', 'node', "import { readFileSync } from 'node:fs'\nexport const read = readFileSync\n", /TS2307|TS2591/],
  ['core', 'process', 'export const home = process.cwd()\n', /TS2304|TS2580|TS2591/],
  ['app', 'page', 'export const title = document.title\n', /TS2584|TS2304/],
  ['main', 'page', 'export const title = document.title\n', /TS2584|TS2304/],
  ['renderer', 'node', "import { readFileSync } from 'node:fs'\nexport const read = readFileSync\n", /TS2307|TS2591/],
  ['renderer', 'process', 'export const home = process.cwd()\n', /TS2304|TS2580|TS2591/],
  ['core', 'enumeration', 'export enum Kind {\n  One,\n}\n', /TS1294/],
  [
    'main',
    'parameter',
    'export class Kept {\n  constructor(private readonly name: string) {}\n  say = () => this.name\n}\n',
    /TS1294/,
  ],
  ['core', 'absent', 'export function first(list: readonly number[]): number {\n  return list[0]\n}\n', /TS2322/],
]

const GOOD: Readonly<Record<string, string>> = {
  'core/good.ts': 'export const wide = Math.hypot(3, 4)\n',
  'app/good.ts': "import { cwd } from 'node:process'\nexport const here = cwd()\n",
  'main/good.ts': "import { readFileSync } from 'node:fs'\nexport const read = readFileSync\n",
  'renderer/good.tsx': 'export const Title = () => <h1>{document.title}</h1>\n',
}

let house: Planted
const errors = new Map<string, readonly string[]>()

beforeAll(() => {
  const bad = SAMPLES.map(([room, name, text]) => [`${room}/${name}.ts`, text] as const)
  house = plant({ ...Object.fromEntries(bad), ...GOOD })
  for (const room of ['core', 'app', 'main', 'renderer']) errors.set(room, compilerErrors(house, room))
})

afterAll(() => house.remove())

describe('the compiler', () => {
  test.each(SAMPLES)('refuses in %s the sample %s', (room, name, _text, error) => {
    const lines = (errors.get(room) ?? []).filter((line) => line.startsWith(`${room}/${name}.ts`))
    expect(lines.join('\n')).toMatch(error)
  })

  test.each(Object.keys(GOOD))('accepts %s', (path) => {
    const [room = ''] = path.split('/')
    expect((errors.get(room) ?? []).filter((line) => line.startsWith(path))).toEqual([])
  })
})
