/** The generator is deterministic: run again it gives the committed files, byte for byte. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, it } from 'vitest'
import { committed } from './island-file.ts'

const FILES = ['island.geojson', 'elevation.bin', 'elevation.json'] as const
const program = fileURLToPath(import.meta.resolve('#app/demo/make-island.ts'))
const folders: string[] = []

/** Runs the generator in a process of its own, into a new folder. */
function run(): string {
  const folder = mkdtempSync(join(tmpdir(), 'island-'))
  folders.push(folder)
  execFileSync(process.execPath, [program, folder])
  return folder
}

afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true })
})

describe('the generator of the demo island', () => {
  it('gives the same bytes on every run, and those are the committed ones', { timeout: 180_000 }, () => {
    const [first, second] = [run(), run()]
    for (const file of FILES) {
      const made = readFileSync(join(first, file))
      expect(Buffer.compare(made, readFileSync(join(second, file))), `${file}, run again`).toBe(0)
      expect(Buffer.compare(made, committed(file)), `${file}, as committed`).toBe(0)
    }
  })
})
