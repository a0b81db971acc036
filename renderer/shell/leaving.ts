/** Leaving the page, for another address or for good: what is begun is brought to an end, what is not saved yet is sent so that it arrives. */
import { inShell, onLeaving } from '#renderer/host/host.ts'
import { page } from '#renderer/state/session/navigation.ts'
import { refusals } from '#renderer/state/library/refusals.ts'
import { allSaved, outlivesLeaving, sendAtLeaving } from '#renderer/state/library/saving.ts'
import { settleUnfinished, somethingUnfinished } from '#renderer/state/library/unfinished.ts'

/** Something would be lost: it could not be saved, can't be as it is, or is too large to be sent by a page that is gone. */
function wouldLose(): boolean {
  return refusals.peek().length > 0 || somethingUnfinished() || !outlivesLeaving()
}

export function followLeaving(): void {
  // Another page takes the parts of this one away, and what is begun in them.
  page.subscribe(settleUnfinished)
  addEventListener('pagehide', () => {
    settleUnfinished()
    sendAtLeaving()
  })
  // A page that comes back from the browser's memory has sent what it had and knows no answers.
  addEventListener('pageshow', (event) => {
    if (event.persisted) location.reload()
  })
  // The shell asks before it closes the window, and waits; there this would hold the window without a word.
  if (inShell()) return onLeaving(leaveWhenSaved)
  addEventListener('beforeunload', (event) => {
    settleUnfinished()
    if (wouldLose()) event.preventDefault()
  })
}

/** Answers the shell, once all is saved, whether it may close the window without a loss. */
async function leaveWhenSaved(): Promise<boolean> {
  settleUnfinished()
  await allSaved()
  return !wouldLose()
}
