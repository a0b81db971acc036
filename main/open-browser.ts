/** Opens the user's default browser at an address, by the operating system's own means. */
import { spawn } from 'node:child_process'
import type { Log } from './log.ts'

/** The command that opens an address on a platform. The address is one of ours: letters, digits, `:/.-_`. */
export function openCommand(platform: string, address: string): readonly [string, ...string[]] {
  if (platform === 'darwin') return ['open', address]
  // `start` is a word of cmd.exe; its first quoted argument would be a window's title.
  if (platform === 'win32') return ['cmd.exe', '/c', 'start', '""', address]
  return ['xdg-open', address]
}

export function openInBrowser(address: string, log: Log): void {
  const [command, ...words] = openCommand(process.platform, address)
  const child = spawn(command, words, { stdio: 'ignore', detached: true })
  // No browser to open, as on a server: the printed address remains.
  child.on('error', (error) => log.error('no-browser', { error }))
  child.unref()
}
