/** The keys while a pointer holds something: Escape gives it up, and no other may change the board under the hand. */

export interface KeysWhileHeld {
  readonly begin: () => void
  readonly end: () => void
}

export function keysWhileHeld(giveUp: () => void): KeysWhileHeld {
  const onKey = (event: KeyboardEvent): void => {
    event.preventDefault()
    event.stopPropagation()
    if (event.key === 'Escape') giveUp()
  }
  return {
    begin: () => document.addEventListener('keydown', onKey, true),
    end: () => document.removeEventListener('keydown', onKey, true),
  }
}
