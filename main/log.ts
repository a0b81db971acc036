/** The log: one JSON object a line, rotated by size, with neither places nor keys in it. */
import { appendFileSync, renameSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { ownFile, ownFolder } from './owner-alone.ts'

export interface Log {
  readonly info: (event: string, detail?: LogDetail) => void
  readonly error: (event: string, detail?: LogDetail) => void
}

export type LogDetail = Readonly<Record<string, unknown>>

const FILE_NAME = 'standpoint.log'
const KEPT = 3

/** Opens the log in a folder. A log that cannot be written never stops the program. */
export function openLog(folder: string, limitBytes = 1_000_000): Log {
  const file = join(folder, FILE_NAME)
  make(folder, file)
  const write = (level: 'info' | 'error', event: string, detail: LogDetail = {}): void => {
    try {
      rotate(file, limitBytes)
      const line = JSON.stringify({ at: new Date().toISOString(), level, event, ...plain(detail) })
      appendFileSync(file, `${line}\n`, { mode: 0o600 })
    } catch {
      // A full or read-only disk: the faults that matter are told to the user by their own calls.
    }
  }
  return {
    info: (event, detail) => write('info', event, detail),
    error: (event, detail) => write('error', event, detail),
  }
}

function make(folder: string, file: string): void {
  try {
    ownFolder(folder)
    for (const name of [file, ...Array.from({ length: KEPT }, (_, at) => `${file}.${at + 1}`)]) ownFile(name)
  } catch {
    // No folder for the log: as with a full disk, the program goes on without.
  }
}

function rotate(file: string, limitBytes: number): void {
  const size = statSync(file, { throwIfNoEntry: false })?.size ?? 0
  if (size < limitBytes) return
  rmSync(`${file}.${KEPT}`, { force: true })
  for (let number = KEPT - 1; number >= 1; number -= 1) {
    if (statSync(`${file}.${number}`, { throwIfNoEntry: false }))
      renameSync(`${file}.${number}`, `${file}.${number + 1}`)
  }
  renameSync(file, `${file}.1`)
}

function plain(detail: LogDetail): Record<string, unknown> {
  return Object.fromEntries(Object.entries(detail).map(([key, value]) => [key, plainValue(value)]))
}

function plainValue(value: unknown): unknown {
  if (value instanceof Error)
    return { name: value.name, message: redact(value.message), stack: redact(value.stack ?? '') }
  if (typeof value === 'string') return redact(value)
  if (typeof value === 'number' || typeof value === 'boolean' || value === null) return value
  return `[${typeof value}]`
}

/** Takes out what could be a place, a key, an address's query or a tile's numbers. */
export function redact(text: string): string {
  return text
    .replaceAll(/-?\d{1,3}[.,]\d{3,}/g, '#')
    .replaceAll(/\?[^\s'"]*/g, '?…')
    .replaceAll(/#([kt])=[\w-]+/g, '#$1=…')
    .replaceAll(/\b[\w-]{24,}\b/g, '…')
    .replaceAll(/\/\d{1,2}\/\d+\/\d+/g, '/z/x/y')
}
