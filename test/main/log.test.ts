/** The log: lines that can be read back, a size that ends, and nothing in it that tells a place or a key. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { openLog, redact } from '#main/log.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'standpoint-log-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const lines = (): unknown[] =>
  readFileSync(join(folder, 'standpoint.log'), 'utf8')
    .trimEnd()
    .split('\n')
    .map((line): unknown => JSON.parse(line))

describe('log', () => {
  test('writes one object a line', () => {
    const log = openLog(folder)
    log.info('started', { version: '1' })
    log.error('bug', { error: new TypeError('two\nlines') })
    expect(lines()).toMatchObject([
      { level: 'info', event: 'started', version: '1' },
      { level: 'error', event: 'bug', error: { name: 'TypeError', message: 'two\nlines' } },
    ])
  })

  test('keeps three older files and no more', () => {
    const log = openLog(folder, 200)
    for (let number = 0; number < 60; number += 1) log.info('event', { number })
    expect(readdirSync(folder).toSorted()).toEqual([
      'standpoint.log',
      'standpoint.log.1',
      'standpoint.log.2',
      'standpoint.log.3',
    ])
    for (const name of readdirSync(folder)) expect(statSync(join(folder, name)).size).toBeLessThan(400)
    expect(lines().at(-1)).toMatchObject({ number: 59 })
  })

  test('never stops the program when it cannot be written', () => {
    const log = openLog(folder)
    rmSync(folder, { recursive: true })
    expect(() => log.info('lost')).not.toThrow()
  })

  test.each([
    ['a place', 'at 63.41234, -18.98765', /63\.4|18\.9/],
    ['a key in a query', 'GET https://tiles.example/1.png?key=abc123', /abc123/],
    ['a tile', 'https://tiles.example/14/7335/4350.png failed', /7335|4350/],
    ['a token', 'http://127.0.0.1:80/#t=abcDEF', /abcDEF/],
    ['the key of an address', 'http://127.0.0.1:80/#k=abcDEF', /abcDEF/],
    ['a long secret', 'Bearer dGhpcyBpcyBhIHNlY3JldCBvZiAzMiBieXRlcw', /dGhpc/],
  ])('does not hold %s', (_name, text, secret) => {
    expect(redact(text)).not.toMatch(secret)
  })

  test('does not hold whole records', () => {
    openLog(folder).info('saved', { spot: { lat: 1.5 }, error: null })
    expect(lines()).toMatchObject([{ spot: '[object]', error: null }])
  })
})
