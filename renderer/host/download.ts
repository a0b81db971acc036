/** Files handed to the user: as a download of the browser, which is the shell's own dialog too. */

/** How long a download's address lives: the browser has its own hold on the bytes once it has begun. */
const HELD_MS = 60_000

/** Hands a text to the user as a file of this name. */
export function download(name: string, text: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), HELD_MS)
}

/** A file name made of a title: no separators, no control characters, not too long. */
export function fileNameOf(title: string, ending: string): string {
  const plain = title
    .replace(/[\\/:*?"<>|\p{Cc}]+/gu, ' ')
    .trim()
    .slice(0, 80)
    .trim()
  return `${plain === '' ? 'Location sheet' : plain}${ending}`
}
