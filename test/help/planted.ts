/** A small house of planted samples in a temporary folder, under this project's own rules and compiler settings. */
import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, resolve } from 'node:path'

const ROOT = resolve(import.meta.dirname, '../..')
const ROOMS = ['core', 'app', 'main', 'renderer', 'test']

export interface Planted {
  readonly folder: string
  readonly remove: () => void
}

/** `files`: path within the house to its text. */
export function plant(files: Readonly<Record<string, string>>): Planted {
  const folder = mkdtempSync(join(tmpdir(), 'standpoint-house-'))
  for (const name of ['.oxlintrc.json', '.tsconfig.base.json', 'package.json'])
    cpSync(join(ROOT, name), join(folder, name))
  for (const room of ROOMS) {
    mkdirSync(join(folder, room))
    cpSync(join(ROOT, room, 'tsconfig.json'), join(folder, room, 'tsconfig.json'))
  }
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'))
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(join(folder, dirname(path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) }
}

/** Rules broken in each file of the house, by the file's path. */
export function lintOf(house: Planted): ReadonlyMap<string, readonly string[]> {
  const tool = join(ROOT, 'node_modules/oxlint/bin/oxlint')
  const run = spawnSync(process.execPath, [tool, '--type-aware', '--format', 'json', '.'], {
    cwd: house.folder,
    encoding: 'utf8',
  })
  const report = JSON.parse(run.stdout) as { diagnostics: { filename: string; code?: string }[] }
  const broken = new Map<string, string[]>()
  for (const { filename, code } of report.diagnostics) {
    const path = filename.replaceAll('\\', '/')
    broken.set(path, [...(broken.get(path) ?? []), code ?? ''])
  }
  return broken
}

/** Lines of compiler errors of one room. */
export function compilerErrors(house: Planted, room: string): readonly string[] {
  const tool = join(ROOT, 'node_modules/typescript/bin/tsc')
  const run = spawnSync(process.execPath, [tool, '-p', room, '--incremental', 'false'], {
    cwd: house.folder,
    encoding: 'utf8',
  })
  return run.stdout.split('\n').filter((line) => line.includes('error TS'))
}
