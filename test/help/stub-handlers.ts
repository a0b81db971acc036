/** Handlers that answer nothing but what a test gives them: every call left out throws when asked. */
import { CALL_NAMES } from '#app/contract/names.ts'
import type { Handlers } from '#main/door/handle.ts'
import type { Log, LogDetail } from '#main/log.ts'

export function stubHandlers(some: Partial<Handlers>): Handlers {
  const none = Object.fromEntries(
    CALL_NAMES.map((name) => [
      name,
      () => {
        throw new Error(`the test gave no handler for ${name}`)
      },
    ]),
  )
  return { ...none, ...some } as unknown as Handlers
}

export interface Heard {
  readonly event: string
  readonly detail: LogDetail
}

/** A log that remembers instead of writing. */
export function listeningLog(): Log & { readonly heard: readonly Heard[] } {
  const heard: Heard[] = []
  const write = (event: string, detail: LogDetail = {}): void => {
    heard.push({ event, detail })
  }
  return { heard, info: write, error: write }
}
