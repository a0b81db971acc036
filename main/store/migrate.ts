/** Brings a library file to the newest form, one numbered step after the other, each in a transaction of its own. */
import type { Connection, ReadHandle } from './handle.ts'
import type { Migration } from './migration.ts'
import { records } from '#main/store/migrations/0010-records.ts'
import { places } from '#main/store/migrations/0020-places.ts'
import { words } from '#main/store/migrations/0030-words.ts'
import { settings } from '#main/store/migrations/0040-settings.ts'
import { light } from '#main/store/migrations/0050-light.ts'
import { screens } from '#main/store/migrations/0060-screens.ts'
import { scan } from '#main/store/migrations/0070-scan.ts'
import { measuredSlope } from '#main/store/migrations/0080-measured-slope.ts'
import { obstructions } from '#main/store/migrations/0090-obstructions.ts'

/** In order. Add to the end; a step that has been in anyone's hands is never changed. */
export const MIGRATIONS: readonly Migration[] = [
  records,
  places,
  words,
  settings,
  light,
  screens,
  scan,
  measuredSlope,
  obstructions,
]

export const NEWEST_FORM = formAfter(MIGRATIONS)

/** The form that the whole list leads to. Throws on a list out of order: that is a bug, not a broken file. */
export function formAfter(migrations: readonly Migration[]): number {
  let last = 0
  for (const { form } of migrations) {
    if (form % 10 !== 0 || form <= last) throw new Error(`migration ${form} stands out of order after ${last}`)
    last = form
  }
  return last
}

export function formOf(handle: ReadHandle): number {
  return handle.row<{ user_version: number }>('PRAGMA user_version')?.user_version ?? 0
}

/** Runs what is missing; answers the forms reached. Another window may be at it too: each step looks again, inside. */
export function migrate(connection: Connection, migrations: readonly Migration[] = MIGRATIONS): readonly number[] {
  const newest = formAfter(migrations)
  const reached: number[] = []
  for (const { form, script } of migrations) {
    connection.immediately((handle) => {
      const now = formOf(handle)
      if (now > newest) throw new Error(`a library of form ${now} is newer than this program's ${newest}`)
      if (now >= form) return
      handle.script(script)
      handle.script(`PRAGMA user_version = ${form}`)
      reached.push(form)
    })
  }
  return reached
}
