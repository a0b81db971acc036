/** A process that saves one spot after the other and prints the id of each acknowledged one, until it is killed. */
import { writeSync } from 'node:fs'
import { openKeys } from '#main/keys.ts'
import { libraryService } from '#main/store/library-service.ts'
import { saved, spotRecord } from './library-records.ts'

const [dataFolder = '', prefix = 'spot', most = '100000'] = process.argv.slice(2)
const keys = await openKeys(dataFolder, null)
const { handlers, close } = await libraryService({ dataFolder, keys, now: () => 0 })
for (let count = 0; count < Number(most); count += 1) {
  const id = `${prefix}-${count}`
  // oxlint-disable-next-line no-await-in-loop
  const answer = await handlers['library.apply']({ changes: [saved(spotRecord(id, 'a', { name: `Pier ${id}` }))] })
  writeSync(1, answer.ok ? `${id}\n` : `fault ${answer.fault.reason}: ${answer.fault.message}\n`)
}
await close()
