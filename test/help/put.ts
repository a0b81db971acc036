/** Puts a value into a signal that the page exports as read-only: a test may set the scene without the verbs that lead there. */
import type { ReadonlySignal, Signal } from '@preact/signals'

export function put<Value>(signal: ReadonlySignal<Value>, value: Value): void {
  ;(signal as Signal<Value>).value = value
}
