/** Puts the first shoot into a library that has just been made, once: deleted by its owner, it never comes back. */
import type { Change } from '#app/contract/library.ts'
import { applyChanges } from './apply.ts'
import type { WriteHandle } from './handle.ts'

/** True when the changes were applied. A library that holds shoots already only gets the mark. */
export function seedOnce(handle: WriteHandle, changes: () => readonly Change[]): boolean {
  const marked = handle.run("INSERT OR IGNORE INTO counter (name, value) VALUES ('seeded', 1)")
  if (marked.changes === 0 || handle.row('SELECT 1 FROM shoot LIMIT 1') !== undefined) return false
  applyChanges(handle, changes())
  return true
}
