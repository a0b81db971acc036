/** Things told one after the other in a sentence: one, two and three; small numbers as words. */

export function listed(parts: readonly string[]): string {
  return parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`
}

const NUMBERS = ['none', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'] as const

/** "four"; in figures beyond ten. */
export function numberWord(count: number): string {
  return NUMBERS[count] ?? String(count)
}
