/** Owns what was counted of the gaps in each elevation file, so that a start need not read gigabytes again. */
import { readFile, writeFile } from 'node:fs/promises'
import { z } from 'zod'

export interface GapNotes {
  /** Null when that content was not counted yet. */
  get(name: string, state: string): number | null
  put(name: string, state: string, share: number): Promise<void>
}

const notesShape = z.record(z.string(), z.object({ state: z.string(), share: z.number().min(0).max(1) }))
type Notes = z.infer<typeof notesShape>

export async function readGapNotes(file: string): Promise<GapNotes> {
  let notes = await readNotes(file)
  return {
    get: (name, state) => (notes[name]?.state === state ? notes[name].share : null),
    put: async (name, state, share) => {
      notes = { ...notes, [name]: { state, share } }
      // Lost notes are counted again: a full disk or two windows writing at once do no harm.
      await writeFile(file, JSON.stringify(notes)).catch(() => undefined)
    },
  }
}

async function readNotes(file: string): Promise<Notes> {
  try {
    const read = notesShape.safeParse(JSON.parse(await readFile(file, 'utf8')))
    return read.success ? read.data : {}
  } catch {
    return {}
  }
}
