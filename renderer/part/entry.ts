/** What is typed into one field, known from the moment of typing: taken, refused with a sentence, given up, or in the field again unsaved. */
import { signal } from '@preact/signals'
import type { Result } from '#core/result.ts'
import { type Refusal, isUndecided, letRefusalGo } from '#renderer/state/library/refusals.ts'
import { takenFrom } from '#renderer/state/library/taken-from.ts'
import { beginUnfinished } from '#renderer/state/library/unfinished.ts'

export type Take = (text: string) => Result<unknown>

export class Entry {
  /** Null while the field shows the record. */
  readonly #text = signal<string | null>(null)
  readonly #sentence = signal<string | null>(null)
  /** What stood against saving the text as it was taken last. */
  readonly #refusal = signal<Refusal | null>(null)
  #taken = ''
  #shown = ''
  #take: Take = () => ({ ok: true, value: null })
  #forget = (): void => {}

  /** What the record holds by now, and how a text is taken on it. */
  follow(shown: string, take: Take): void {
    this.#shown = shown
    this.#take = take
  }

  /** The text in the field; null when that is the record's. Decided for or against elsewhere, it is done with, unless it was typed on. */
  text(): string | null {
    const [text, refusal] = [this.#text.value, this.#refusal.value]
    const decided = refusal !== null && !isUndecided(refusal) && text === this.#taken
    return decided ? null : text
  }

  /** Why the text could not be taken. */
  sentence(): string | null {
    return this.#sentence.value
  }

  /** Why the text could not be saved, until that is decided. */
  unsaved(): Refusal | null {
    const refusal = this.#refusal.value
    return refusal !== null && isUndecided(refusal) ? refusal : null
  }

  type(text: string): void {
    if (this.unsaved() === null) this.#refusal.value = null
    this.#text.value = text
    this.#sentence.value = null
    this.#forget()
    this.#forget = beginUnfinished(() => this.finish())
  }

  /** Takes the text if it can be. One that could not be saved waits for the user's word: leaving a field writes over nothing. */
  finish(): void {
    if (this.unsaved() === null) this.#takeNow()
  }

  /** Back to what the record holds; for a text that could not be saved that decides. */
  giveUp(): void {
    const refusal = this.unsaved()
    if (refusal !== null) letRefusalGo(refusal)
    this.#end()
  }

  /** Saves a text that could not be saved, as it stands in the field by now. */
  saveAgain(): void {
    const refusal = this.unsaved()
    if (refusal !== null) letRefusalGo(refusal)
    this.#refusal.value = null
    this.#takeNow()
  }

  /** The field is gone, and what is in it. */
  forget(): void {
    this.#forget()
  }

  #takeNow(): void {
    const text = this.text()
    if (text === null || text === this.#shown) return this.#end()
    this.#taken = text
    const taken = takenFrom({ refused: (refusal) => this.#comeBack(refusal) }, () => this.#take(text))
    if (taken.ok) this.#end()
    else this.#sentence.value = taken.fault.message
  }

  /** Could not be saved: the text stands in the field again, unless something else is being typed there. */
  #comeBack(refusal: Refusal): void {
    if (this.#text.peek() !== null) return
    this.#text.value = this.#taken
    this.#refusal.value = refusal
  }

  #end(): void {
    this.#forget()
    this.#forget = () => {}
    this.#text.value = null
    this.#sentence.value = null
    this.#refusal.value = null
  }
}
