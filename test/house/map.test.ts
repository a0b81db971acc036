/** DEVELOPERS.md names the rooms that exist, so that the map of the house stays true. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { expect, test } from 'vitest'
import { contract } from '#app/contract/index.ts'

const ROOT = resolve(import.meta.dirname, '../..')
const text = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8')

function roomsTold(): string[] {
  const [, section = ''] = text.split(/^## Rooms$/m)
  const [own = ''] = section.split(/^## /m)
  return [...own.matchAll(/^- `([^`]+)`/gm)].map(([, name = '']) => name).toSorted()
}

/** Folders of the house with a file of ours somewhere in them. */
function roomsBuilt(): string[] {
  const holdsFiles = (folder: string): boolean =>
    readdirSync(folder, { recursive: true, withFileTypes: true }).some((entry) => entry.isFile())
  return ['core', 'app', 'main', 'renderer', 'test']
    .flatMap((top) =>
      readdirSync(join(ROOT, top), { withFileTypes: true })
        .filter((entry) => entry.isDirectory() && entry.name !== 'shots')
        .map((entry) => `${top}/${entry.name}`),
    )
    .filter((room) => holdsFiles(join(ROOT, room)))
    .toSorted()
}

test('the rooms told are the rooms built', () => {
  expect(roomsTold()).toEqual(roomsBuilt())
})

test('every file DEVELOPERS.md names in code marks exists', () => {
  const named = [...text.matchAll(/`((?:core|app|main|renderer|test)\/[\w./-]+\.(?:tsx?|css|html|json))`/g)]
  const missing = named.map(([, path = '']) => path).filter((path) => !exists(path))
  expect(named.length).toBeGreaterThan(5)
  expect(missing).toEqual([])
})

test('the calls are told as many as there are', () => {
  const families = new Set(Object.keys(contract).map((name) => name.split('.')[0]))
  for (const family of families) expect(text).toContain(`\`${family}.`)
})

function exists(path: string): boolean {
  try {
    readFileSync(join(ROOT, path))
    return true
  } catch {
    return false
  }
}
