/** Looks at the start whether what lies unpacked beside the archive is what was packed: the archive's own check leaves it out. */
import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { pipeline } from 'node:stream/promises'
import { ADDON_FOLDER, UNPACKED_FILE, type UnpackedHashes } from '#app/unpacked.ts'
import { done, failed, type Result } from '#core/result.ts'

export type Soundness = Result<null, 'not-as-packed'>

/** To be awaited before the addon is loaded. `built` is the folder of what the build made, `root` the one it lies in. */
export async function checkAddon(root: string, built: string): Promise<Soundness> {
  return checked(root, built, (path) => isAddon(path) && isForThisMachine(path))
}

/** To be awaited before any of the data is read. It is large: a window may well open meanwhile. */
export async function checkUnpackedData(root: string, built: string): Promise<Soundness> {
  return checked(root, built, (path) => !isAddon(path))
}

async function checked(root: string, built: string, isAsked: (path: string) => boolean): Promise<Soundness> {
  const hashes = await readHashes(join(built, UNPACKED_FILE))
  if (hashes === null) return failed('not-as-packed', notAsPacked('the list of its own files'))
  const own = Object.keys(hashes).filter(isAsked)
  const found = await Promise.all(own.map(async (path) => (await hashOf(join(root, path))) === hashes[path]))
  const wrong = own.find((_, at) => found[at] === false)
  return wrong === undefined ? done(null) : failed('not-as-packed', notAsPacked(`its file ${wrong}`))
}

function isAddon(path: string): boolean {
  return path.startsWith(`${ADDON_FOLDER}/`)
}

/** As the addon's own package names them: system and processor, and for some Linuxes the C library in between. */
function isForThisMachine(path: string): boolean {
  return path.endsWith(`/${process.platform}-${process.arch}.node`)
}

async function readHashes(file: string): Promise<UnpackedHashes | null> {
  try {
    return JSON.parse(await readFile(file, 'utf8')) as UnpackedHashes
  } catch {
    return null
  }
}

async function hashOf(file: string): Promise<string | null> {
  try {
    const hash = createHash('sha256')
    await pipeline(createReadStream(file, { highWaterMark: 1_048_576 }), hash)
    return hash.digest('hex')
  } catch {
    return null
  }
}

function notAsPacked(what: string): string {
  return (
    `Of this installation of Standpoint, ${what} is missing or is not the one it was made with, so it is not used. ` +
    'Install the program again from where you had it. Your library is not part of it and is kept.'
  )
}
