/** What is done with whole shoots: make, delete with undo, and keep as a file or read from one. */
import { openPage, backToBoard, page } from '#renderer/state/session/navigation.ts'
import { pickSpots } from '#renderer/state/session/picked.ts'
import { whenDrawn } from '#renderer/state/session/when-drawn.ts'
import { newShoot } from '#core/record/new-records.ts'
import { NAME_MOST } from '#core/record/record-limits.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { download } from '#renderer/host/download.ts'
import { ask } from '#renderer/host/host.ts'
import { commit, openAnother, undoOffer } from '#renderer/state/library/history.ts'
import { openShoot, refreshShootList, shoot, spots, workOnSpot } from '#renderer/state/library/library.ts'
import { shootName } from '#renderer/text/names.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { headerWords } from '#renderer/words/en-header.ts'
import { words } from '#renderer/words/en.ts'

/** A fresh shoot. On the page of shoots it stays there; from anywhere else the board leads on with its first steps. */
export async function makeShoot(): Promise<void> {
  const fresh = newShoot(crypto.randomUUID(), crypto.randomUUID(), Date.now())
  pickSpots([])
  if (page.peek() !== 'shoot') backToBoard()
  const after = { ...fresh, name: words.shoot.newShootName }
  await commit({ label: words.shoot.edit.newShoot, records: [{ kind: 'shoot', before: null, after }] })
}

/** A copy with all of its spots, and on the board. */
export async function copyShoot(of: Shoot): Promise<void> {
  pickSpots([])
  const name = words.board.shelf.copyName(shootName(of)).slice(0, NAME_MOST)
  const after: Shoot = { ...of, id: crypto.randomUUID(), name, revision: 0 }
  const copies = spots.peek().map((spot) => ({
    kind: 'spot' as const,
    before: null,
    after: { ...spot, id: crypto.randomUUID(), shootId: after.id, revision: 0 },
  }))
  await commit({ label: headerWords.duplicate, records: [{ kind: 'shoot', before: null, after }, ...copies] })
  const [first] = copies
  if (first !== undefined) workOnSpot(first.after.id)
  backToBoard()
}

/** Brings the name of the shoot on the board to be typed. */
export function renameShoot(): void {
  openPage('shoot')
  whenDrawn('.shoot-name input', (field) => {
    if (field instanceof HTMLInputElement) field.select()
  })
}

/** Deletes the shoot on the board with its spots, which are listed so that undo brings all of them back. */
export async function deleteShoot(gone: Shoot): Promise<void> {
  const all = spots.value
  pickSpots([])
  const saved = commit({
    label: words.shoot.edit.deleteShoot,
    records: [
      ...all.map((spot) => ({ kind: 'spot' as const, before: spot, after: null })),
      { kind: 'shoot', before: gone, after: null },
    ],
  })
  tell('done', words.shoot.deleted(shootName(gone), all.length), undoOffer())
  await saved
  await openAnother()
}

/** Adds the shoot of a file to the library and opens it. */
export async function addShootFile(text: string): Promise<void> {
  const answer = await ask('shoot.import', { text })
  if (!answer.ok) return tell('fault', answer.fault.message)
  await refreshShootList()
  if (await openShoot(answer.value.shootId)) backToBoard()
  tell('done', words.board.files.opened(shootName({ name: answer.value.name }), answer.value.spots))
  const { mended } = answer.value
  if (mended !== undefined) tell('fault', words.board.files.mended(mended))
}

/** Lets the user choose a shoot file and adds it. */
export function chooseShootFile(): void {
  const input = document.createElement('input')
  input.type = 'file'
  input.accept = '.standpoint,.json'
  input.addEventListener('change', () => {
    const [file] = input.files ?? []
    if (file !== undefined) void readFile(file)
  })
  input.click()
}

async function readFile(file: File): Promise<void> {
  try {
    await addShootFile(await file.text())
  } catch {
    tell('fault', words.board.files.unreadable(file.name))
  }
}

/** Hands the shoot on the board to the user as a file. */
export async function saveShootFile(): Promise<void> {
  const open = shoot.value
  if (open === null) return tell('fault', words.board.files.noShoot)
  const answer = await ask('shoot.export', { shootId: open.id })
  if (!answer.ok) return tell('fault', answer.fault.message)
  download(answer.value.name, answer.value.text, 'application/json')
}
