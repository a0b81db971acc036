/** What the Electron shell's preload puts on the page as `window.standpoint`; the loopback host has none of it. */
import type { CommandId } from './commands.ts'
import type { Answer } from '#app/contract/call.ts'
import type { CallName, Input, Output } from '#app/contract/index.ts'

/** A file the user opened from the desktop: its name without folders, and its text. */
export interface OpenedFile {
  readonly name: string
  readonly text: string
}

export interface Bridge {
  readonly call: <Name extends CallName>(name: Name, input: Input<Name>) => Promise<Answer<Output<Name>>>
  /** Tells the listener each menu command; returns the way to stop. */
  readonly onCommand: (listener: (id: CommandId) => void) => () => void
  /** Tells the listener each file opened from the desktop, also those opened before it listened. */
  readonly onOpenFile: (listener: (file: OpenedFile) => void) => () => void
}

/** Channels between preload and main: one to ask, two to be told. */
export const CHANNELS = { call: 'standpoint:call', command: 'standpoint:command', file: 'standpoint:file' } as const
