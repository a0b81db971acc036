/** A process that opens a library, tries to save, and prints how both went: for tests that need another user. */
import { libraryService } from '#main/store/library-service.ts'
import { saved, shootRecord } from './library-records.ts'

const [dataFolder = ''] = process.argv.slice(2)
const keys = { keyOf: async () => null, set: async () => 'none' as const }
const service = await libraryService({ dataFolder, keys, now: () => 0 })
const state = await service.handlers['library.state']({})
const apply = await service.handlers['library.apply']({ changes: [saved(shootRecord('late'))] })
await service.close()
process.stdout.write(JSON.stringify({ state: state.ok ? state.value : state, apply }))
