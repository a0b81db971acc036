/** What somebody typed or a file holds, short enough to be shown within a sentence. */

const MOST = 40

export function cutShort(text: string): string {
  return text.length > MOST ? `${text.slice(0, MOST)}…` : text
}
