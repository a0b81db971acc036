/** One change of a record brought onto another state of it: only what the change touched is set, all else stays as it stands there. */

/**
 * `theirs` with whatever differs between `base` and `mine` set as `mine` has it. Lists of things with ids are gone through thing by
 * thing; any other list is one value.
 */
export function rebased<Value>(base: Value, mine: Value, theirs: Value): Value
export function rebased(base: unknown, mine: unknown, theirs: unknown): unknown {
  if (same(base, mine)) return theirs
  if (same(base, theirs)) return mine
  if (areThings(base) && areThings(mine) && areThings(theirs)) return mergedThings(base, mine, theirs)
  if (isFields(base) && isFields(mine) && isFields(theirs)) return mergedFields(base, mine, theirs)
  return mine
}

type Fields = Readonly<Record<string, unknown>>
type Thing = Fields & { readonly id: string }

function mergedFields(base: Fields, mine: Fields, theirs: Fields): Fields {
  const names = [...new Set([...Object.keys(theirs), ...Object.keys(mine)])]
  return Object.fromEntries(
    names
      // A name that one side has dropped stays dropped unless the other side has changed what it held.
      .filter((name) => has(mine, name) || !has(base, name) || !same(base[name], theirs[name]))
      .filter((name) => has(theirs, name) || !has(base, name) || !same(base[name], mine[name]))
      .map((name) => [name, has(mine, name) ? rebased(base[name], mine[name], theirs[name]) : theirs[name]]),
  )
}

/** In their order; what I added comes last, what I took away is gone unless they changed it, and the other way round. */
function mergedThings(base: readonly Thing[], mine: readonly Thing[], theirs: readonly Thing[]): readonly Thing[] {
  const find = (list: readonly Thing[], id: string): Thing | undefined => list.find((thing) => thing.id === id)
  const kept = theirs.flatMap<Thing>((thing) => {
    const [before, own] = [find(base, thing.id), find(mine, thing.id)]
    if (own !== undefined) return [before === undefined ? own : rebased(before, own, thing)]
    return before === undefined || !same(before, thing) ? [thing] : []
  })
  const added = mine.filter((thing) => {
    const before = find(base, thing.id)
    return find(theirs, thing.id) === undefined && (before === undefined || !same(before, thing))
  })
  return [...kept, ...added]
}

function has(fields: Fields, name: string): boolean {
  return Object.hasOwn(fields, name)
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** An empty list may be one of things: it is taken for one beside others. */
function areThings(value: unknown): value is readonly Thing[] {
  return Array.isArray(value) && value.every((one) => isFields(one) && typeof one['id'] === 'string')
}

function same(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true
  if (Array.isArray(one) && Array.isArray(other)) {
    return one.length === other.length && one.every((value, at) => same(value, other[at]))
  }
  if (!isFields(one) || !isFields(other)) return false
  const names = Object.keys(one)
  return (
    names.length === Object.keys(other).length &&
    names.every((name) => has(other, name) && same(one[name], other[name]))
  )
}
