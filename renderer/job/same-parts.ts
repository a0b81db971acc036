/** Lists of what something was worked out from, compared by identity: an edit of one thing leaves the others as they were. */
export function sameParts(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((part, index) => Object.is(part, other[index]))
}
