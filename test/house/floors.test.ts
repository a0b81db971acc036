/** Each room imports only from the floors below it; rooms side by side know nothing of one another. */
import { readFileSync, readdirSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import { FLOORS, arrowsOf, roomOf, upward } from './floors.ts'

const ROOT = resolve(import.meta.dirname, '../..')

function sourcesOf(top: string): string[] {
  return readdirSync(join(ROOT, top), { recursive: true, encoding: 'utf8' })
    .map((path) => `${top}/${path.replaceAll('\\', '/')}`)
    .filter((path) => /\.tsx?$/u.test(path))
}

describe.each(['core', 'renderer'] as const)('%s', (top) => {
  const files = sourcesOf(top)
  const arrows = files.flatMap((path) => arrowsOf(path, readFileSync(join(ROOT, path), 'utf8')))

  test('has a floor for every room, and a room for every floor', () => {
    const rooms = new Set(files.map(roomOf))
    expect([...rooms].toSorted()).toEqual(FLOORS[top].flat().toSorted())
  })

  test('imports downward alone', () => {
    expect(upward(FLOORS[top], arrows)).toEqual([])
  })
})

describe('a planted arrow', () => {
  test.each([
    ['up', 'renderer/state/act/x.ts', "import { a } from '#renderer/view/map/y.ts'"],
    ['up, of types alone', 'renderer/words/en-x.ts', "import type { A } from '#renderer/view/ground/y.ts'"],
    ['aside', 'renderer/page/days/x.tsx', "import type { A } from '#renderer/page/sheet/y.tsx'"],
    ['aside, loaded later', 'renderer/panel/answers/x.tsx', "const a = await import('#renderer/panel/spot/y.tsx')"],
    ['up to a worker', 'renderer/job/x.ts', "new URL('../view/ground/y-worker.ts', import.meta.url)"],
    ['up, passed on', 'renderer/part/x.ts', "export { a } from '#renderer/shell/y.ts'"],
  ])('%s in %s is seen', (_way, path, text) => {
    expect(upward(FLOORS.renderer, arrowsOf(path, text))).toHaveLength(1)
  })

  test('in core is seen, and downward ones are let through', () => {
    const up = arrowsOf('core/geo/x.ts', "import { a } from '#core/plan/y.ts'")
    const down = arrowsOf('core/plan/x.ts', "import { a } from '#core/geo/y.ts'\nimport { b } from './z.ts'")
    expect(upward(FLOORS.core, up)).toHaveLength(1)
    expect(upward(FLOORS.core, down)).toEqual([])
  })
})
