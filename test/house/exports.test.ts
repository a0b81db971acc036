/** One word, one thing, in exports too: a name let out by files of two rooms is on a list that may only become shorter. */
import { readFileSync, readdirSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { expect, test } from 'vitest'
import { roomOf } from './floors.ts'

const ROOT = resolve(import.meta.dirname, '../..')

interface Source {
  readonly path: string
  readonly text: string
}

const EXPORTED =
  /^export (?:declare )?(?:async )?(?:abstract )?(?:const|let|function\*?|class|interface|type|enum) (\w+)/gmu

/** Names that files of more than one room export, each with those files. */
function sharedNames(sources: readonly Source[]): Map<string, readonly string[]> {
  const files = new Map<string, string[]>()
  for (const { path, text } of sources) {
    for (const name of new Set([...text.matchAll(EXPORTED)].map((match) => match[1] ?? ''))) {
      files.set(name, [...(files.get(name) ?? []), path])
    }
  }
  return new Map([...files].filter(([, paths]) => new Set(paths.map(roomOf)).size > 1))
}

/** A migration is named by what it brings; nobody but the list of migrations reads it. */
const HELD: readonly string[] = ['settings', 'words']

const SOURCES: readonly Source[] = ['core', 'app', 'main', 'renderer'].flatMap((top) =>
  readdirSync(join(ROOT, top), { recursive: true, encoding: 'utf8' })
    .map((path) => `${top}/${path.replaceAll('\\', '/')}`)
    .filter((path) => /\.tsx?$/u.test(path))
    .map((path) => ({ path, text: readFileSync(join(ROOT, path), 'utf8') })),
)

test('no name is exported by two rooms but those held, and none is held that is not', () => {
  expect(SOURCES.length).toBeGreaterThan(500)
  expect([...sharedNames(SOURCES).keys()].toSorted()).toEqual(HELD.toSorted())
})

test.each([
  ['export function planted(): void {}', 'export const planted = 1'],
  ['export interface Planted {', 'export type Planted = string'],
  ['export function* planted(): Generator {', 'export async function planted(): Promise<void> {'],
])('a planted pair is found: %s and %s', (one, other) => {
  const planted = sharedNames([
    { path: 'core/geo/one.ts', text: `/** One. */\n${one}\n` },
    { path: 'renderer/view/map/other.ts', text: `/** Other. */\n${other}\n` },
  ])
  expect([...planted.values()]).toEqual([['core/geo/one.ts', 'renderer/view/map/other.ts']])
})

test('a name that files of one room share is no matter of this list', () => {
  const text = '/** One. */\nexport const planted = 1\n'
  expect(
    sharedNames([
      { path: 'core/scene/one.ts', text },
      { path: 'core/scene/solid/other.ts', text },
    ]).size,
  ).toBe(0)
})
