/** Files from the desktop: found anywhere in a command line, read with a limit, named without their folders. */
import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { SHOOT_FILE_LIMIT } from '#app/contract/files.ts'
import { fileName } from '#main/files/file-name.ts'
import { readOpened, shootFilesAmong } from '#main/files/opened.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'standpoint-opened-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

describe('a command line', () => {
  test.each([
    [['a.standpoint'], ['/w/a.standpoint']],
    [
      ['--flag', '/x/trip 1/a.STANDPOINT', '--', 'b.standpoint'],
      ['/x/trip 1/a.STANDPOINT', '/w/b.standpoint'],
    ],
    [['--open=a.standpoint', '.', 'https://example.org/', 'a.standpoint.txt', 'standpoint'], []],
    [[], []],
  ])('%j gives %j', (words, paths) => {
    expect(shootFilesAmong(words, '/w')).toEqual(paths)
  })
})

describe('reading', () => {
  test('gives name and text', async () => {
    writeFileSync(join(folder, 'a b.standpoint'), 'ü')
    expect(await readOpened(join(folder, 'a b.standpoint'))).toEqual({
      ok: true,
      value: { name: 'a b.standpoint', text: 'ü' },
    })
  })

  test('tells what is not there, no file, or too large, without its folder', async () => {
    const large = join(folder, 'large.standpoint')
    writeFileSync(large, '')
    truncateSync(large, SHOOT_FILE_LIMIT + 1)
    const answers = await Promise.all([join(folder, 'gone.standpoint'), folder, large].map((path) => readOpened(path)))
    expect(answers.map((one) => (one.ok ? 'read' : one.fault.reason))).toEqual([
      'unreadable',
      'unreadable',
      'too-large',
    ])
    for (const one of answers) if (!one.ok) expect(one.fault.message).not.toContain(tmpdir())
  })
})

describe('a name for a file', () => {
  test.each([
    ['Harbour, evening', 'Harbour, evening.x'],
    ['a/b\\c:d*e?f"g<h>i|j', 'a b c d e f g h i j.x'],
    ['..\\..\\etc', 'etc.x'],
    ['  . ', 'shoot.x'],
    ['', 'shoot.x'],
    ['con', 'shoot con.x'],
    ['LPT1.txt', 'shoot LPT1.txt.x'],
    ['line\nbreak\u202Etxt', 'line break txt.x'],
    ['山🚲', '山🚲.x'],
    ['ends with dots...', 'ends with dots.x'],
  ])('%j becomes %j', (name, expected) => {
    expect(fileName(name, 'shoot', '.x')).toBe(expected)
  })

  test('fits a file system however long it was, and cuts no character in two', () => {
    const name = fileName('🚲'.repeat(10_000), 'shoot', '.standpoint')
    expect(Buffer.byteLength(name)).toBeLessThan(256)
    expect(name).toBe(`${'🚲'.repeat(60)}.standpoint`)
  })
})
