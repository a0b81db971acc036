/** Puts an edit on the screen: the records as they are after it, the board where the change is to be seen. */
import { batch } from '@preact/signals'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import type { Edit } from './edit.ts'
import { type TryOut, shoot, spotId, spots, workOnSpot, endLive, showRecords } from './library.ts'

export function showEdit(edit: Edit): void {
  batch(() => {
    endLive()
    for (const record of edit.records) {
      if (record.kind === 'shoot') showShoot(record.before, record.after)
      else if (record.kind === 'spot') showSpot(record.before, record.after)
      else showTryOut(record.after)
    }
  })
}

function showTryOut(after: TryOut | null): void {
  showRecords({ tryOut: after })
  if (after !== null && spots.value.some(({ id }) => id === after.home)) workOnSpot(after.home)
}

function showShoot(before: Shoot | null, after: Shoot | null): void {
  const open = shoot.value
  if (after !== null && (open === null || open.id === after.id || before === null)) {
    if (open?.id !== after.id) emptyShelf()
    showRecords({ shoot: after })
  } else if (after === null && open?.id === before?.id) {
    emptyShelf()
    showRecords({ shoot: null })
  }
}

/** Another shoot comes on the board: the spots of the one before are not its own. */
function emptyShelf(): void {
  showRecords({ spots: [], spotId: null, tryOut: null })
}

function showSpot(before: Spot | null, after: Spot | null): void {
  const id = (after ?? before)?.id
  const others = spots.value.filter((spot) => spot.id !== id)
  const mine = after !== null && after.shootId === shoot.value?.id ? [...others, after] : others
  showRecords({ spots: mine.toSorted((one, other) => one.rank - other.rank) })
  if (after !== null && before === null) workOnSpot(after.id)
  if (after === null && spotId.value === id) workOnSpot(spots.value[0]?.id ?? null)
}
