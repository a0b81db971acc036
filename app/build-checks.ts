/** Writes the hashes of what is packed beside the archive, for the program to check at its start. */
import { createHash } from 'node:crypto'
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { ADDON_FOLDER, type UnpackedHashes } from './unpacked.ts'

/** Those of all machines' addons: each system packs its own. */
export async function writeUnpackedHashes(root: string, file: string): Promise<void> {
  const addons = (await readdir(join(root, ADDON_FOLDER))).filter((name) => name.endsWith('.node'))
  const zones = await readdir(join(root, 'out/zones'))
  const paths = [...addons.map((name) => `${ADDON_FOLDER}/${name}`), ...zones.map((name) => `out/zones/${name}`)]
  const hashes: [string, string][] = await Promise.all(
    paths.map(async (path) => [
      path,
      createHash('sha256')
        .update(await readFile(join(root, path)))
        .digest('hex'),
    ]),
  )
  await mkdir(dirname(file), { recursive: true })
  await writeFile(file, JSON.stringify(Object.fromEntries(hashes) satisfies UnpackedHashes, null, 2))
}
