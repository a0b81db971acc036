/** The thread that reads elevation files, run from its source as tests want it. */
import { pathToFileURL } from 'node:url'
import { resolve } from 'node:path'

const ENTRY = pathToFileURL(resolve(import.meta.dirname, '../../main/ground/reader-entry.ts')).href

/** What the thread is begun with in place of what the build makes. */
export const READER_CODE = (): Promise<string> => Promise.resolve(`import(${JSON.stringify(ENTRY)})`)
