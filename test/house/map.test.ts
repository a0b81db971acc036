/** DEVELOPERS.md names the rooms that exist, so that the map of the house stays true. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { expect, test } from 'vitest'
import { contract } from '#app/contract/index.ts'
import { FLOORS } from './floors.ts'

const ROOT = resolve(import.meta.dirname, '../..')
const text = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8')

function roomsTold(): string[] {
  const [, section = ''] = text.split(/^## Rooms$/m)
  const [own = ''] = section.split(/^## /m)
  return [...own.matchAll(/^- `([^`]+)`/gm)].map(([, name = '']) => name)
}

/** Folders with a file of ours in them. */
function roomsBuilt(top: string): string[] {
  const holdsFiles = (folder: string): boolean =>
    readdirSync(folder, { recursive: true, withFileTypes: true }).some((entry) => entry.isFile())
  return readdirSync(join(ROOT, top), { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && entry.name !== 'shots')
    .map((entry) => `${top}/${entry.name}`)
    .filter((room) => holdsFiles(join(ROOT, room)))
}

const told = roomsTold()

test.each(['core', 'renderer'] as const)('the rooms of %s are told in the order of the floors', (top) => {
  const floors = FLOORS[top].flat().filter((room) => room !== top)
  // Style sheets that all share are no code and stand on no floor.
  expect(told.filter((room) => room.startsWith(`${top}/`) && room !== 'renderer/style')).toEqual(floors)
})

test.each(['app', 'main', 'test'])('the rooms of %s told are the rooms built', (top) => {
  expect(told.filter((room) => room.startsWith(`${top}/`)).toSorted()).toEqual(roomsBuilt(top).toSorted())
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
