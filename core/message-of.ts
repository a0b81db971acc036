/** What was thrown, as words: anything can be thrown, not only errors. */
export function messageOf(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown)
}
