/** Finds programs the tests need on this machine, and installs Debian's package where that is allowed. */
import { spawnSync } from 'node:child_process'
import { accessSync, constants, existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

/** Full path of a program on the search path, or null. */
export function onPath(name: string): string | null {
  for (const folder of (process.env['PATH'] ?? '').split(delimiter)) {
    const path = join(folder, process.platform === 'win32' ? `${name}.exe` : name)
    if (folder !== '' && isProgram(path)) return path
  }
  return null
}

export function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK)
    return true
  } catch {
    return false
  }
}

/** Installs a package where this is root on Debian or its kin; false where it is not, or it failed. */
export function installDebian(name: string): boolean {
  if (!existsSync('/etc/debian_version') || process.getuid?.() !== 0 || onPath('apt-get') === null) return false
  process.stdout.write(`Installing ${name} from Debian …\n`)
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  const run = (words: readonly string[]): boolean =>
    spawnSync('apt-get', words, { stdio: 'ignore', env: environment, timeout: 300_000 }).status === 0
  return (
    run(['install', '-y', '--no-install-recommends', name]) ||
    (run(['update']) && run(['install', '-y', '--no-install-recommends', name]))
  )
}
