/** Calls the program's services past the page. */
import type { RunningHost } from '#test/help/host.ts'

/** Reads the library as the services hold it, past the page. */
export async function library(host: RunningHost | null, call: string, input: unknown): Promise<unknown> {
  if (host === null) throw new Error('the library is read through the loopback host')
  const response = await fetch(`${host.origin}/api/${call}`, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      authorization: `Bearer ${host.token}`,
      origin: host.origin,
      // A kept connection may be closed by the host while a test reckons for seconds, and be found dead by its next call.
      connection: 'close',
    },
    body: JSON.stringify(input),
  })
  const answer = (await response.json()) as { ok: boolean; value: unknown; fault?: { message: string } }
  if (!answer.ok) throw new Error(answer.fault?.message)
  return answer.value
}
