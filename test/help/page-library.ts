/** A library for tests of what is done on the page: it keeps records, numbers revisions, and remembers what it was asked. */
import type { Change } from '#app/contract/library.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'

type Answer = { ok: true; value: unknown } | { ok: false; fault: { reason: string; message: string } }

export class PageLibrary {
  readonly records = new Map<string, { readonly kind: Change['kind']; readonly record: Shoot | Spot }>()
  /** Batches of changes, each as it was saved. */
  readonly batches: (readonly Change[])[] = []
  readonly asked: { readonly name: string; readonly input: unknown }[] = []
  version = 1
  /** Answers to calls that this library does not know, by their name. */
  readonly others = new Map<string, (input: unknown) => Answer | Promise<Answer>>()

  put(kind: Change['kind'], record: Shoot | Spot): void {
    this.records.set(record.id, { kind, record })
  }

  spots(): Spot[] {
    return this.#all<Spot>('spot').toSorted((one, other) => one.rank - other.rank)
  }

  shoots(): Shoot[] {
    return this.#all<Shoot>('shoot')
  }

  #all<Kept>(kind: Change['kind']): Kept[] {
    return [...this.records.values()].filter((kept) => kept.kind === kind).map(({ record }) => record as Kept)
  }

  async answer(name: string, input: unknown): Promise<Answer> {
    this.asked.push({ name, input })
    const other = this.others.get(name)
    if (other !== undefined) return other(input)
    if (name === 'library.save') {
      const { edits } = input as { edits: readonly { readonly changes: readonly Change[] }[] }
      return { ok: true, value: { answers: edits.map(({ changes }) => this.#apply(changes)) } }
    }
    if (name === 'library.open') return this.#open((input as { shootId: string }).shootId)
    const shoots = this.shoots().map(({ id, name: called }) => ({ id, name: called, spots: 0 }))
    return { ok: true, value: { shoots, state: 'open', version: this.version, message: '' } }
  }

  #apply(changes: readonly Change[]): Answer {
    this.batches.push(changes)
    const revisions = changes.map(({ kind, id, before, record }) => {
      const revision = (before ?? 0) + 1
      if (record === null) this.records.delete(id)
      else this.records.set(id, { kind, record: { ...record, revision } })
      return revision
    })
    this.version += 1
    return { ok: true, value: { version: this.version, revisions } }
  }

  #open(shootId: string): Answer {
    const shoot = this.shoots().find(({ id }) => id === shootId)
    if (shoot === undefined) return { ok: false, fault: { reason: 'gone', message: 'gone' } }
    const spots = this.spots().filter((spot) => spot.shootId === shootId)
    return { ok: true, value: { shoot, spots, version: this.version } }
  }
}
