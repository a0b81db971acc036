/** Keys of map services: enciphered on disk where the system offers that, else in memory until the program ends. */
import { readFileSync, renameSync, writeFileSync } from 'node:fs'
import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'

/** The system's own enciphering, where there is one worth the name; null elsewhere. */
export interface Cipher {
  readonly encrypt: (text: string) => Promise<Uint8Array>
  readonly decrypt: (bytes: Uint8Array) => Promise<string>
}

export interface Keys {
  readonly keyOf: (sourceId: string) => Promise<string | null>
  readonly set: (sourceId: string, key: string | null) => Promise<'stored' | 'session' | 'none'>
}

const fileShape = z.record(z.string(), z.string())

export async function openKeys(folder: string, cipher: Cipher | null): Promise<Keys> {
  await mkdir(folder, { recursive: true, mode: 0o700 })
  const file = join(folder, 'keys.json')
  const stored = new Map(Object.entries(readStored(file)))
  const session = new Map<string, string>()
  return {
    keyOf: async (sourceId) => session.get(sourceId) ?? (await deciphered(stored.get(sourceId), cipher)),
    set: async (sourceId, key) => {
      session.delete(sourceId)
      if (stored.delete(sourceId)) writeStored(file, stored)
      if (key === null || key === '') return 'none'
      session.set(sourceId, key)
      if (cipher === null) return 'session'
      try {
        stored.set(sourceId, Buffer.from(await cipher.encrypt(key)).toString('base64'))
        writeStored(file, stored)
        return 'stored'
      } catch {
        stored.delete(sourceId)
        return 'session'
      }
    },
  }
}

/** A key that another user or machine enciphered cannot be read: as if there were none, to be typed again. */
async function deciphered(kept: string | undefined, cipher: Cipher | null): Promise<string | null> {
  if (kept === undefined || cipher === null) return null
  return cipher.decrypt(Buffer.from(kept, 'base64')).catch(() => null)
}

function readStored(file: string): Record<string, string> {
  try {
    const parsed = fileShape.safeParse(JSON.parse(readFileSync(file, 'utf8')))
    return parsed.success ? parsed.data : {}
  } catch {
    return {}
  }
}

function writeStored(file: string, stored: ReadonlyMap<string, string>): void {
  writeFileSync(`${file}.new`, JSON.stringify(Object.fromEntries(stored)), { mode: 0o600 })
  renameSync(`${file}.new`, file)
}
