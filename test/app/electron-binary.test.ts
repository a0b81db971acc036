/** Whether Electron's binary is here: read from its folder, never by starting it, and fetched only while it moves. */
import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { electronBinary, fetchElectron } from '#app/electron-binary.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'standpoint-binary-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

describe('the binary', () => {
  test('is not here without its path file, or when the file names nothing', () => {
    expect(electronBinary(folder)).toBeNull()
    writeFileSync(join(folder, 'path.txt'), 'electron')
    expect(electronBinary(folder)).toBeNull()
  })

  test('is where its path file says', () => {
    mkdirSync(join(folder, 'dist'))
    writeFileSync(join(folder, 'path.txt'), 'electron\n')
    writeFileSync(join(folder, 'dist/electron'), '')
    chmodSync(join(folder, 'dist/electron'), 0o755)
    expect(electronBinary(folder)).toBe(join(folder, 'dist/electron'))
  })
})

describe('fetching', () => {
  const install = (script: string): void => writeFileSync(join(folder, 'install.js'), script)
  const patient = { stallMs: 60_000, lookEveryMs: 20 }

  test('gives the binary when the install step brings it', async () => {
    install(`const fs = require('fs'), p = require('path')
      fs.mkdirSync(p.join(__dirname, 'dist')); fs.writeFileSync(p.join(__dirname, 'dist/electron'), 'x')
      fs.writeFileSync(p.join(__dirname, 'path.txt'), 'electron')`)
    expect(await fetchElectron(() => undefined, { ...patient, folder })).toBe(join(folder, 'dist/electron'))
  })

  test('gives nothing when the install step fails', async () => {
    install('process.exit(1)')
    expect(await fetchElectron(() => undefined, { ...patient, folder })).toBeNull()
  })

  test('ends an install step to which nothing comes', async () => {
    install('setInterval(() => {}, 1000)')
    const said: string[] = []
    // It answers only once the step's process is gone.
    expect(await fetchElectron((line) => said.push(line), { folder, stallMs: 300, lookEveryMs: 20 })).toBeNull()
    expect(said).toEqual([])
  })
})
