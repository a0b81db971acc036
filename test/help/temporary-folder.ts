/** A folder for one test's files. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'

/** Gone when the test is over. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'standpoint-library-'))
  onTestFinished(() => {
    rmSync(folder, { recursive: true, force: true })
  })
  return folder
}
