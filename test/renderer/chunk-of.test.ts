/** The layout of the built page in files: what the board fetches first, and what both pages share. */
import { describe, expect, test } from 'vitest'
import { chunkOf } from '#renderer/chunk-of.ts'

/** Which modules import each; a late part is imported by none. */
const IMPORTERS: Readonly<Record<string, readonly string[]>> = {
  '/page/index.html': [],
  '/page/sheet.html': [],
  '/page/start.tsx': ['/page/index.html'],
  '/page/start-sheet.tsx': ['/page/sheet.html'],
  '/page/map.ts': ['/page/start.tsx'],
  '/page/figure.ts': ['/page/map.ts', '/page/sheet.ts', '/page/days.ts'],
  '/page/round.ts': ['/page/figure.ts'],
  '/page/sheet.ts': ['/page/start-sheet.tsx'],
  '/page/days.ts': [],
  '/page/week.ts': ['/page/days.ts'],
  '/page/ring-one.ts': ['/page/map.ts', '/page/ring-two.ts'],
  '/page/ring-two.ts': ['/page/ring-one.ts'],
}
const graph = {
  getModuleInfo: (id: string) => {
    const importers = IMPORTERS[id]
    return importers === undefined ? null : { importers }
  },
}
const chunk = (name: string): string | null => chunkOf(`/page/${name}`, graph)

describe('the file that a module goes to', () => {
  test('is one for all that the board alone begins with', () => {
    expect(['map.ts', 'ring-one.ts', 'ring-two.ts'].map(chunk)).toEqual(['board', 'board', 'board'])
  })

  test('is one for all that both pages begin with, however far down, whatever late parts share it', () => {
    expect(['figure.ts', 'round.ts'].map(chunk)).toEqual(['both', 'both'])
  })

  test('is left to the bundler for what is fetched later, for what the sheet alone has, and for the starts themselves', () => {
    const left = ['days.ts', 'week.ts', 'sheet.ts', 'start.tsx', 'start-sheet.tsx', 'index.html', 'sheet.html']
    expect(left.map(chunk)).toEqual(left.map(() => null))
  })
})
