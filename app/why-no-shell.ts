/** Why Electron did not start, in one phrase, by what it said and how it ended. */

export interface ShellFailure {
  /** What it wrote to its error output. */
  readonly said: string
  readonly code: number | null
  readonly signal: string | null
  /** The system's word when it could not be started at all. */
  readonly errno: string | null
  /** Whole seconds after which it was given up, its window still missing; null when it ended by itself. */
  readonly hungFor: number | null
}

/** Electron's and the system's own wording, from memory and from their sources; what fits none is told by code and last line. */
const KNOWN: readonly (readonly [RegExp, (found: RegExpExecArray) => string])[] = [
  [
    /Running as root without --no-sandbox/,
    () => 'it does not run as root, since that takes its sandbox away; start it as an ordinary user',
  ],
  [
    /error while loading shared libraries: ([^:\s]+)|Library not loaded: (\S+)/,
    (found) => `this system lacks the library ${found[1] ?? found[2] ?? ''}`,
  ],
  [
    /No usable sandbox|SUID sandbox helper|setuid sandbox|Failed to move to new namespace/i,
    () => 'this system refuses its sandbox; allow user namespaces for it, or set up its helper chrome-sandbox',
  ],
  [
    /Missing X server|(?:cannot|unable to) open (?:X )?display|platform failed to initialize|Failed to connect to Wayland/i,
    () => 'there is no display for its window',
  ],
  [/cannot execute binary file|Exec format error/i, () => 'its program is not made for this machine'],
]

const ERRNO: Readonly<Record<string, string>> = {
  EACCES: 'its program may not be run by this user',
  EPERM: 'its program may not be run by this user',
  ENOEXEC: 'its program is not made for this machine',
  ENOENT: 'its program, or what is needed to run it, is not there',
}

const LONGEST_LINE = 160

export function whyNoShell(failure: ShellFailure): string {
  const { said, errno, hungFor, signal, code } = failure
  if (errno !== null) return ERRNO[errno] ?? `the system says ${errno}`
  for (const [form, phrase] of KNOWN) {
    const found = form.exec(said)
    if (found !== null) return phrase(found)
  }
  if (hungFor !== null) return `its window had not come after ${hungFor} seconds`
  const ended = signal === null ? `it ended with code ${code ?? 'none'}` : `it was ended by ${signal}`
  const last = lastLine(said)
  return `${ended} while starting${last === '' ? '' : `, saying “${last}”`}`
}

function lastLine(said: string): string {
  const lines = said.split('\n').map((line) => line.trim())
  const last = lines.findLast((line) => line !== '') ?? ''
  return last.length > LONGEST_LINE ? `${last.slice(0, LONGEST_LINE)}…` : last
}
