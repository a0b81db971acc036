/** Opens a library service for a test and closes it afterwards; takes answers apart. */
import { onTestFinished } from 'vitest'
import type { Answer } from '#app/contract/call.ts'
import { openKeys } from '#main/keys.ts'
import { type LibraryService, type LibraryServiceOptions, libraryService } from '#main/store/library-service.ts'

export const NOON = Date.UTC(2026, 4, 20, 12)

export async function openedLibrary(
  dataFolder: string,
  options: Partial<LibraryServiceOptions> = {},
): Promise<LibraryService> {
  const keys = options.keys ?? (await openKeys(dataFolder, null))
  const service = await libraryService({ dataFolder, now: () => NOON, pause: async () => {}, ...options, keys })
  onTestFinished(async () => {
    await service.close()
  })
  return service
}

export function valueOf<Value>(answer: Answer<Value>): Value {
  if (answer.ok) return answer.value
  throw new Error(`${answer.fault.reason}: ${answer.fault.message}`)
}

export function reasonOf(answer: Answer<unknown>): string | null {
  return answer.ok ? null : answer.fault.reason
}
