/** One owner for each signal: what a file exports can be read elsewhere and changed only by the verbs beside it. */
import { readFileSync, readdirSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, test } from 'vitest'

const ROOT = resolve(import.meta.dirname, '../../renderer')

/** A signal exported as it is, whoever wrote its type. */
const WRITABLE = /^export (?:const|let) (\w+)(?:\s*:\s*Signal<[^=]*>)?\s*=\s*signal\b/gmu
/** Let out by a list of exports. */
const LISTED = /^export \{([^}]*)\}(?! from)/gmu

function letOut(text: string): string[] {
  const own = [...text.matchAll(/^const (\w+)(?:\s*:[^=]*)?\s*=\s*signal\b/gmu)].map(([, name = '']) => name)
  const listed = [...text.matchAll(LISTED)].flatMap(([, names = '']) => names.split(',').map((name) => name.trim()))
  return [
    ...[...text.matchAll(WRITABLE)].map(([, name = '']) => name),
    ...own.filter((name) => listed.some((item) => item.split(/\s+as\s+/u)[0] === name)),
  ]
}

test('no signal of the page can be written from outside its file', () => {
  const files = readdirSync(ROOT, { recursive: true, encoding: 'utf8' }).filter((path) => /\.tsx?$/u.test(path))
  const writable = files.flatMap((path) =>
    letOut(readFileSync(join(ROOT, path), 'utf8')).map((name) => `${path}: ${name}`),
  )
  expect(files.length).toBeGreaterThan(100)
  expect(writable).toEqual([])
})

describe('a planted signal', () => {
  test.each([
    'export const page = signal(1)\n',
    "export const page = signal<'a' | 'b'>('a')\n",
    'export const page: Signal<number> = signal(1)\n',
    'const page = signal(1)\nexport { page }\n',
    'const page = signal(1)\nexport { page as open }\n',
  ])('is seen: %s', (text) => expect(letOut(text)).toEqual(['page']))

  test.each([
    'const pageSignal = signal(1)\nexport const page: ReadonlySignal<number> = pageSignal\n',
    'export const page = computed(() => 1)\n',
    'const page = signal(1)\nexport function open() {}\n',
  ])('that is kept is let be: %s', (text) => expect(letOut(text)).toEqual([]))
})
