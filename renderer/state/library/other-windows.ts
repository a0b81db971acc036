/** Another window's changes: noticed by the library's version, read again, and kept safe from this window's undo. */
import { ask } from '#renderer/host/host.ts'
import { forgetEditsOf } from './history.ts'
import { moving, openAny, refreshShootList, revisions, seenVersion, noteVersion, tellLibraryState } from './library.ts'
import { tellFault } from './damage.ts'
import { shoot, showOpened, spotId, spots } from './library.ts'
import { unsaved } from './saving.ts'

/** Nothing may be read over a change that is still under way on this screen. */
function busy(): boolean {
  return unsaved.value > 0 || moving.value
}

/** Looks whether another window has changed the library since, and reads it again if so. */
export async function refreshIfChanged(): Promise<void> {
  if (busy()) return
  const answer = await ask('library.state', {})
  if (!answer.ok || busy()) return
  tellLibraryState(answer.value)
  if (answer.value.version === seenVersion.value) return
  await refreshShootList()
  const open = shoot.value
  if (open === null) await openAny(null, null)
  else await readAgain(open.id, answer.value.version)
}

async function readAgain(shootId: string, version: number): Promise<void> {
  const answer = await ask('library.open', { shootId })
  if (busy() || shoot.value?.id !== shootId) return
  if (!answer.ok && answer.fault.reason !== 'gone') {
    tellFault(answer.fault)
    return
  }
  if (!answer.ok) {
    // Deleted in the other window: there is nothing to undo here any more.
    forgetEditsOf(new Set([shootId, ...spots.value.map((spot) => spot.id)]))
    await openAny(null, null)
    noteVersion(version)
    return
  }
  const now = [answer.value.shoot, ...answer.value.spots]
  const foreign = new Set(now.filter((record) => revisions.get(record.id) !== record.revision).map(({ id }) => id))
  const still = new Set(now.map((record) => record.id))
  for (const spot of spots.value) if (!still.has(spot.id)) foreign.add(spot.id)
  forgetEditsOf(foreign)
  showOpened(answer.value, spotId.value)
}
