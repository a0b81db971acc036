/** Keeps what was made of a thing for as long as the thing is the same object and what it was made with is the same too. */

/** `make` with its last result for each thing: made again only with another `by`. */
export function keptWith<Of extends object, By, Made>(make: (of: Of, by: By) => Made): (of: Of, by: By) => Made {
  const kept = new WeakMap<Of, { readonly by: By; readonly made: Made }>()
  return (of, by) => {
    const before = kept.get(of)
    if (before !== undefined && before.by === by) return before.made
    const made = make(of, by)
    kept.set(of, { by, made })
    return made
  }
}
