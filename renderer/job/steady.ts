/** Values computed again that come out as they were: the same object then, so that nothing which hangs on it is worked out again. */
import { type ReadonlySignal, computed } from '@preact/signals'

function alike(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false
  const [keys, others] = [Object.keys(one), Object.keys(other)]
  if (keys.length !== others.length || Array.isArray(one) !== Array.isArray(other)) return false
  return keys.every((key) => Object.is(one[key as keyof typeof one], other[key as keyof typeof other]))
}

/** A computed that goes on giving the object it gave before for as long as its figures, one level deep, are the same. */
export function steady<Value>(compute: () => Value): ReadonlySignal<Value> {
  let before: { readonly value: Value } | null = null
  return computed(() => {
    const value = compute()
    if (before !== null && alike(before.value, value)) return before.value
    before = { value }
    return value
  })
}
