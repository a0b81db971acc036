/** Answers that are asked for again and again while something moves, kept for the next time. */

/** A function that remembers so many answers by their key, and begins afresh beyond; what throws is not remembered. */
export function remembered<Key extends string | number, Value>(
  most: number,
  work: (key: Key) => Value,
): (key: Key) => Value {
  const known = new Map<Key, { readonly value: Value }>()
  return (key) => {
    const before = known.get(key)
    if (before !== undefined) return before.value
    const value = work(key)
    if (known.size >= most) known.clear()
    known.set(key, { value })
    return value
  }
}
