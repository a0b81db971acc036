/** The picture of one tile: few are asked for at once, and one that is being fetched is asked for again until it is there. */
import { makeTurns } from '#renderer/job/turns.ts'

/** A browser has six connections to the program: pictures take half of them, so that a save never waits for one. */
const AT_ONCE = 3
/** Seconds before an unready tile is asked for again: what the program says at first, then growing. */
const LONGEST_PAUSE = 5

const turns = makeTurns(AT_ONCE)

type Told = { readonly picture: Blob | null } | { readonly again: number }

/** Null when it cannot be had now. Rejects when the signal gives it up. */
export async function tilePicture(path: string, signal: AbortSignal): Promise<Blob | null> {
  for (let pause = 0; ; pause = Math.min(LONGEST_PAUSE, pause * 2)) {
    // oxlint-disable-next-line no-await-in-loop -- one wish at a time is the point
    const answer = await turns.run(() => askOnce(path, signal), signal)
    if ('picture' in answer) return answer.picture
    pause = Math.max(pause, answer.again)
    // oxlint-disable-next-line no-await-in-loop
    await waited(pause * 1000, signal)
  }
}

async function askOnce(path: string, signal: AbortSignal): Promise<Told> {
  try {
    const response = await fetch(path, { signal })
    if (response.status === 202) {
      await response.body?.cancel()
      return { again: Number(response.headers.get('retry-after') ?? 1) }
    }
    return { picture: response.ok ? await response.blob() : null }
  } catch {
    signal.throwIfAborted()
    return { picture: null }
  }
}

async function waited(milliseconds: number, signal: AbortSignal): Promise<void> {
  const { promise, resolve, reject } = Promise.withResolvers<void>()
  const leave = (): void => {
    clearTimeout(timer)
    reject(signal.reason as Error)
  }
  const timer = setTimeout(() => {
    signal.removeEventListener('abort', leave)
    resolve()
  }, milliseconds)
  signal.addEventListener('abort', leave, { once: true })
  return promise
}
