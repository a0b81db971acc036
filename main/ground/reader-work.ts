/** Owns the work of the thread that reads elevation files: each task by its name, files kept open between them. */
import { unpack } from './archive.ts'
import { countGaps, type FileRef, loadChunk, type LocalFile, openLocalFile } from './local-file.ts'
import type { ReaderTasks, TaskName } from './reader-task.ts'
import type { Result } from '#core/result.ts'

type Work = {
  readonly [Name in TaskName]: (
    task: ReaderTasks[Name]['task'],
    alive: () => void,
  ) => Promise<ReaderTasks[Name]['answer']>
}

/** Files held open at once. */
const MOST_OPEN = 64

export function readerWork(): Work {
  /** By path, the one used last at the end. */
  const held = new Map<string, { readonly state: string; readonly file: LocalFile }>()

  async function letGo(path: string): Promise<void> {
    const known = held.get(path)
    held.delete(path)
    await known?.file.close()
  }

  async function opened(ref: FileRef): Promise<Result<LocalFile>> {
    const known = held.get(ref.path)
    if (known?.state === ref.state) {
      held.delete(ref.path)
      held.set(ref.path, known)
      return { ok: true, value: known.file }
    }
    await letGo(ref.path)
    const file = await openLocalFile(ref)
    if (!file.ok) return file
    held.set(ref.path, { state: ref.state, file: file.value })
    const [oldest] = held.keys()
    if (held.size > MOST_OPEN && oldest !== undefined) await letGo(oldest)
    return file
  }

  return {
    look: async (ref) => {
      const file = await opened(ref)
      return file.ok ? { ok: true, value: file.value.facts } : file
    },
    count: async (ref, alive) => {
      const file = await opened(ref)
      return file.ok ? { ok: true, value: await countGaps(file.value, alive) } : file
    },
    chunk: async ({ level, x, y, ...ref }) => {
      const file = await opened(ref)
      return file.ok ? loadChunk(file.value, level, x, y) : { heights: null, trouble: file.fault.message }
    },
    unpack: (wish, alive) => unpack({ ...wish, ending: /\.hgt$/i }, alive),
    forget: async ({ path }) => {
      await letGo(path)
      return null
    },
  }
}
