/** The system's key store through Electron, where it really enciphers. */
import { safeStorage } from 'electron'
import type { Cipher } from './keys.ts'

/** Null where there is none; on Linux without a keyring Electron would only disguise the text, which is not kept then. */
export async function electronCipher(): Promise<Cipher | null> {
  if (!(await safeStorage.isAsyncEncryptionAvailable())) return null
  if (process.platform === 'linux' && safeStorage.getSelectedStorageBackend() === 'basic_text') return null
  return {
    encrypt: (text) => safeStorage.encryptStringAsync(text),
    decrypt: async (bytes) => (await safeStorage.decryptStringAsync(Buffer.from(bytes))).result,
  }
}
