/** Saves the page's edits in the order in which they come, each once however often it is sent. */
import type { Answer } from '#app/contract/call.ts'
import type { SavedEdit, SentEdit } from '#app/contract/library.ts'
import { applyChanges } from './apply.ts'
import type { Library } from './library.ts'

export interface Saver {
  readonly save: (edits: readonly SentEdit[]) => Promise<Answer<SavedEdit>[]>
  /** From now on no edit is known again. */
  readonly forget: () => void
  /** Resolves once all that was asked for so far is answered. */
  readonly atRest: () => Promise<unknown>
}

/** Edits known again by their ids. A page sends again only what it has no answer for: its last few hundred at the very most. */
const KNOWN = 5_000

export function makeSaver(library: Pick<Library, 'write'>): Saver {
  const known = new Map<string, SavedEdit>()
  // One call after the other: an edit must not be looked for while the call that saves it is still waiting to write.
  let last: Promise<unknown> = Promise.resolve()

  async function saveOne({ id, changes }: SentEdit): Promise<Answer<SavedEdit>> {
    const before = known.get(id)
    if (before !== undefined) return { ok: true, value: before }
    const answer = await library.write((handle) => applyChanges(handle, changes))
    if (!answer.ok) return answer
    known.set(id, answer.value)
    const [oldest] = known.keys()
    if (known.size > KNOWN && oldest !== undefined) known.delete(oldest)
    return answer
  }

  async function saveAll(edits: readonly SentEdit[]): Promise<Answer<SavedEdit>[]> {
    const answers: Answer<SavedEdit>[] = []
    const refused = new Set<string>()
    for (const edit of edits) {
      const rests = edit.changes.some(({ id }) => refused.has(id))
      // oxlint-disable-next-line no-await-in-loop
      const answer = rests ? RESTS : await saveOne(edit)
      if (!answer.ok) for (const { id } of edit.changes) refused.add(id)
      answers.push(answer)
    }
    return answers
  }

  return {
    save: async (edits) => {
      const saving = last.then(async () => await saveAll(edits))
      last = saving.catch(() => undefined)
      return await saving
    },
    forget: () => known.clear(),
    atRest: () => last,
  }
}

/** A revision that fits by chance must not let it through: it was made on a state that is not there. */
const RESTS: Answer<never> = {
  ok: false,
  fault: { reason: 'rests', message: 'It was made upon a change that was not saved. Nothing of it was saved.' },
}
