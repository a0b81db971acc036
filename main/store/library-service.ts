/** The services behind the calls on library and settings, over one library file and one keeper of keys. */
import { messageOf } from '#core/message-of.ts'
import type { Answer } from '#app/contract/call.ts'
import type { Contract, Output } from '#app/contract/index.ts'
import type { Change, libraryCalls } from '#app/contract/library.ts'
import { DEFAULT_SETTINGS } from '#app/contract/default-settings.ts'
import { type Settings, type settingsCalls } from '#app/contract/settings.ts'
import type { Keys } from '#main/keys.ts'
import type { z } from 'zod'
import { applyChanges } from './apply.ts'
import { findSpots } from './find.ts'
import { openLibrary } from './library.ts'
import { listShoots, storedShoot } from './records.ts'
import { seedOnce } from './seed.ts'
import { makeSaver } from './saver.ts'
import { readSettings, writeSettings } from './settings.ts'

export interface LibraryServiceOptions {
  readonly dataFolder: string
  readonly keys: Keys
  /** Epoch milliseconds. */
  readonly now: () => number
  /** Waits between two attempts to write while another window is writing. */
  readonly pause?: (milliseconds: number) => Promise<void>
  /** Opens for looking alone, as a write-protected file would be. */
  readonly readonly?: boolean
  /** Told of what tending the library ran into: nobody asked for it, so nobody waits for the answer. */
  readonly onFault?: (reason: string, message: string) => void
}

type CallName = keyof typeof libraryCalls | keyof typeof settingsCalls

type Handlers = {
  readonly [Name in CallName]: (input: z.output<Contract[Name]['input']>) => Promise<Answer<Output<Name>>>
}

export interface LibraryService {
  readonly handlers: Handlers
  /** For fetching tiles; null when the source has none. */
  readonly keyOf: (sourceId: string) => Promise<string | null>
  /** For what needs the settings in main; the defaults while the library is not open. */
  readonly settings: () => Promise<Settings>
  /** Puts the changes into a library that was never seeded and holds no shoot; never again after that. True when it did. */
  readonly seedIfNew: (changes: () => readonly Change[]) => Promise<Answer<boolean>>
  /** The whole check of a large file, the day's backup, housekeeping: the service sees to it, tests may hasten it. */
  readonly tend: () => Promise<Answer<{ backup: string | null }>>
  readonly close: () => Promise<void>
}

/** Tending begins once the start is over, and looks hourly whether a new day wants its backup. */
const TEND_AFTER = 4_000
const TEND_EVERY = 3_600_000

export async function libraryService(options: LibraryServiceOptions): Promise<LibraryService> {
  const { dataFolder, keys, now, pause = sleep, readonly = false, onFault } = options
  const library = await openLibrary({ dataFolder, now, pause, readonly })

  const saver = makeSaver(library)

  /** Nobody waits for it, so nothing of it may throw into the void: that would end the program. */
  async function tendUnasked(): Promise<void> {
    try {
      await tend()
    } catch (error) {
      onFault?.('bug', messageOf(error))
    }
  }

  async function tend(): Promise<Answer<{ backup: string | null }>> {
    const tended = await library.tend()
    if (!tended.ok) onFault?.(tended.fault.reason, tended.fault.message)
    return tended
  }

  async function settings(): Promise<Settings> {
    const read = await library.read(readSettings)
    return read.ok ? read.value : DEFAULT_SETTINGS
  }

  const handlers: Handlers = {
    'library.state': async () => ({ ok: true, value: await library.state() }),
    'library.restore': async ({ backup }) => {
      // What was saved since the backup is not in it, and may be sent again.
      saver.forget()
      return await library.restore(backup)
    },
    'library.shoots': async () => await library.read(listShoots),
    'library.open': async ({ shootId }) => await library.read((handle) => storedShoot(handle, shootId)),
    'library.apply': async ({ changes }) => await library.write((handle) => applyChanges(handle, changes)),
    'library.save': async ({ edits }) => ({ ok: true, value: { answers: await saver.save(edits) } }),
    'library.find': async (search) => await library.read((handle) => findSpots(handle, search)),
    'settings.get': async () => ({ ok: true, value: await settings() }),
    'settings.set': async (changes) => await library.write((handle) => writeSettings(handle, changes)),
    'settings.key': async ({ sourceId, key }) => ({ ok: true, value: { kept: await keys.set(sourceId, key) } }),
  }

  const stopTending = tendInTime(tendUnasked)
  return {
    handlers,
    keyOf: async (sourceId) => await keys.keyOf(sourceId),
    settings,
    seedIfNew: async (changes) => await library.write((handle) => seedOnce(handle, changes)),
    tend,
    close: async () => {
      stopTending()
      await saver.atRest()
      await library.close()
    },
  }
}

/** Timers that do not keep the process alive. */
function tendInTime(tend: () => Promise<void>): () => void {
  const first = setTimeout(() => void tend(), TEND_AFTER).unref()
  const later = setInterval(() => void tend(), TEND_EVERY).unref()
  return () => {
    clearTimeout(first)
    clearInterval(later)
  }
}

async function sleep(milliseconds: number): Promise<void> {
  await new Promise((resolve) => {
    setTimeout(resolve, milliseconds)
  })
}
