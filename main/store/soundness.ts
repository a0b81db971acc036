/** Whether the library file is sound: SQLite's whole check of it, and whether the file is small enough to be checked before all else. */
import { statSync } from 'node:fs'
import { resultOf } from './fault.ts'
import type { Connection } from './handle.ts'
import { libraryPath } from './library-file.ts'

/** Up to this size SQLite's whole check takes less than about 50 ms and is made before anything is read or written. */
const CHECKED_AT_ONCE = 16_000_000

/** By its size alone: opening and closing the file now would drop SQLite's locks on it. */
export function isSmall(dataFolder: string): boolean {
  const about = resultOf(() => statSync(libraryPath(dataFolder), { throwIfNoEntry: false }))
  return about.ok && about.value !== undefined && about.value.size <= CHECKED_AT_ONCE
}

/** False when damage was found; what kept the check from being made says nothing about the file. */
export function isSound(connection: Connection): boolean {
  const found = resultOf(() => connection.pragma('integrity_check'))
  return found.ok ? found.value === 'ok' : found.fault.reason !== 'damaged'
}
