/** The files that lie beside the program's archive, unpacked, and their hashes as the build made them: one list for build and start. */

/** Path from the program's root, with `/`, to the SHA-256 of the file in hexadecimal digits. */
export type UnpackedHashes = Readonly<Record<string, string>>

/** In the built program, within the archive. */
export const UNPACKED_FILE = 'checks/unpacked.json'

export const ADDON_FOLDER = 'node_modules/better-sqlite3/prebuilds'
