/** Short texts in one row of the sheet, dots between them: what is a sentence leaves its full stop before a dot. */

export function withoutStop(text: string): string {
  return text.replace(/\.$/u, '')
}

export function inARow(texts: readonly string[]): string {
  return texts.map((text, at) => (at < texts.length - 1 ? withoutStop(text) : text)).join(' · ')
}
