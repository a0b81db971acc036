/** The calls on shoot files, over the library's own calls: what a file adds is saved as any other batch of changes. */
import { done, failed } from '#core/result.ts'
import { SHOOT_FILE_ENDING } from '#app/contract/files.ts'
import type { Handlers } from '#main/door/handle.ts'
import { fileName } from './file-name.ts'
import { changesToAdd, readShootFile, shootFileText } from './shoot-file.ts'

type Library = Pick<Handlers, 'library.open' | 'library.apply'>

export function shootFileHandlers(
  library: Library,
  makeId: () => string,
): Pick<Handlers, 'shoot.export' | 'shoot.import'> {
  return {
    'shoot.export': async ({ shootId }) => {
      const opened = await library['library.open']({ shootId })
      if (!opened.ok) return opened
      const { shoot, spots } = opened.value
      return done({ name: fileName(shoot.name, 'shoot', SHOOT_FILE_ENDING), text: shootFileText({ shoot, spots }) })
    },
    'shoot.import': async ({ text }) => {
      const file = readShootFile(text)
      if (!file.ok) return failed(file.fault.reason, file.fault.message)
      const changes = changesToAdd(file.value, makeId)
      const applied = await library['library.apply']({ changes: [...changes] })
      if (!applied.ok) return applied
      const { shoot, spots, mended } = file.value
      const added = { shootId: changes[0]?.id ?? '', name: shoot.name, spots: spots.length }
      return done(mended === undefined ? added : { ...added, mended: [...mended] })
    },
  }
}
