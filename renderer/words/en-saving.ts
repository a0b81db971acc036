/** Words for changes that could not be saved, and for leaving while there are some. */

const FIRST = 80

function short(text: string): string {
  const characters = Array.from(text.replaceAll(/\s+/gu, ' ').trim())
  return characters.length > FIRST ? `${characters.slice(0, FIRST).join('')}…` : characters.join('')
}

export const savingWords = {
  notSaved: 'Not saved.',
  notSavedCount: (count: number) => `Not saved: ${count}`,
  notSavedHint: 'The messages ask what to do about it.',
  /** Beside the field: the text in it is the user's own. */
  elsewhere: 'Another window has changed it.',
  theirs: (text: string) => (text.trim() === '' ? 'Saved there: nothing.' : `Saved there: “${short(text)}”`),
  held: (what: string, why: string) => `${what}: not saved. ${why}`,
  keepMine: 'Save mine',
  keepTheirs: 'Use the saved one',
  tryAgain: 'Try again',
  discard: 'Discard mine',
  /** A screen reader hears which of several is meant. */
  of: (act: string, what: string) => `${act}: ${what}`,
  more: (count: number) => `${count} more not saved`,
}
