/** The library as one thing: opens, reads, writes with patience, backs up, recovers, and says how it stands. */
import type { Output } from '#app/contract/index.ts'
import type { Result } from '#core/result.ts'
import { backUp, backupIsDue, isAhead, listBackups } from './backup.ts'
import { faultOf, resultOf, guardedLater, Refused, type StoreReason } from './fault.ts'
import type { Connection, ReadHandle, WriteHandle } from './handle.ts'
import { completeForm, isComplete, libraryPath, type Opening, openFile, takeOverwritten } from './library-file.ts'
import { formOf, NEWEST_FORM } from './migrate.ts'
import { type FileChange, type FileWatch, NO_CHANGE, settledChange, watchFile } from './overwritten.ts'
import { countRecords, raiseVersion } from './records.ts'
import { oneByOne } from './one-by-one.ts'
import { patiently } from './patience.ts'
import { restoreBackup } from './restore.ts'
import { isSmall, isSound } from './soundness.ts'
import { strikeUnusedWords } from './word-index.ts'

export interface LibraryOptions {
  readonly dataFolder: string
  /** Epoch milliseconds. */
  readonly now: () => number
  /** Waits between two attempts to write while another window is writing. */
  readonly pause: (milliseconds: number) => Promise<void>
  readonly readonly: boolean
}

export interface Library {
  read<Value>(work: (handle: ReadHandle) => Value): Promise<Result<Value, StoreReason>>
  /** Durable when answered: the log has reached the disk. */
  write<Value>(work: (handle: WriteHandle) => Value): Promise<Result<Value, StoreReason>>
  state(): Promise<Output<'library.state'>>
  restore(backup: string): Promise<Result<{ keptAs: string }, StoreReason>>
  /** What may wait until the start is over: the whole check of a large file, the day's backup, striking unused words. */
  tend(): Promise<Result<{ backup: string | null }, StoreReason>>
  close(): Promise<void>
}

const OVERWRITTEN =
  'Another program wrote over the library file while it was open. What it put there is the library now; ' +
  'the log of the last changes is kept beside it.'

function notSaved(): Refused {
  return new Refused(
    'changed-elsewhere',
    'Another program replaced the library file. This change was not saved; look at it again, then decide.',
  )
}

const DAMAGED =
  'The library file is damaged: it did not pass its check. ' +
  'Restore a backup; the damaged file is kept under another name.'

export async function openLibrary(options: LibraryOptions): Promise<Library> {
  const library = new OpenLibrary(options)
  await library.open(true)
  return library
}

class OpenLibrary implements Library {
  readonly #options: LibraryOptions
  #opening: Opening = { state: 'unavailable', message: 'The library is not open yet.' }
  #watch: FileWatch = NO_CHANGE
  /** Two that found the file changed at once must not both open what is there now. */
  readonly #alone = oneByOne()
  /** How often another program was found to have written over the file. */
  #overwritings = 0
  #checked = false
  /** Why the last backup that was due is not there; null when it is. */
  #backupFault: string | null = null
  #tending: Promise<Result<{ backup: string | null }, StoreReason>> | null = null
  /** Writes begun and not ended: they may be waiting for another window's. */
  readonly #writing = new Set<Promise<unknown>>()

  constructor(options: LibraryOptions) {
    this.#options = options
  }

  async open(mayMake: boolean): Promise<void> {
    const { dataFolder, now, readonly } = this.#options
    this.#checked = false
    // The connection to what was watched is closed by now.
    this.#watch.close()
    this.#watch = NO_CHANGE
    this.#opening = openFile({ dataFolder, now, readonly, mayMake })
    if (isSmall(dataFolder)) this.#check()
    if (this.#opening.state === 'open') await this.#bringUpToDate(this.#opening.connection)
    this.#watch = 'connection' in this.#opening ? watchFile(libraryPath(dataFolder)) : NO_CHANGE
  }

  /** A library of an older form is copied first: a migration gone wrong must leave a way back. */
  async #bringUpToDate(connection: Connection): Promise<void> {
    const { dataFolder, now } = this.#options
    const brought = await patiently(async () => {
      if (isComplete(connection)) return
      if (formOf(connection.read) < NEWEST_FORM) await backUp(connection, dataFolder, now(), 'before')
      completeForm(connection)
    }, this.#options.pause)
    if (brought.ok) return
    connection.close()
    this.#opening = {
      state: brought.fault.reason === 'damaged' ? 'damaged' : 'unavailable',
      message: `The library is from an older version and could not be updated. ${brought.fault.message}`,
    }
  }

  #check(): void {
    const opening = this.#opening
    if (!('connection' in opening)) return
    this.#checked = true
    if (isSound(opening.connection)) return
    opening.connection.close()
    this.#opening = { state: 'damaged', message: DAMAGED }
  }

  /** The connection, after looking whether another window or program has put something else in the file's place. */
  async #current(): Promise<Connection> {
    return this.#alone(async () => {
      await this.#follow(await settledChange(this.#watch, this.#options.pause))
      const opening = this.#opening
      if ('connection' in opening) return opening.connection
      throw new Refused(opening.state, opening.message)
    })
  }

  async #follow(change: FileChange): Promise<void> {
    const { dataFolder, now } = this.#options
    const opening = this.#opening
    if (change === 'none' || !('connection' in opening)) return
    if (change === 'overwritten') {
      this.#overwritings += 1
      takeOverwritten(dataFolder, opening.connection, now())
    } else opening.connection.close()
    await this.open(false)
    if (change === 'overwritten')
      this.#opening = { ...this.#opening, message: `${OVERWRITTEN} ${this.#opening.message}` }
  }

  async read<Value>(work: (handle: ReadHandle) => Value): Promise<Result<Value, StoreReason>> {
    return this.#noticed(await patiently(async () => (await this.#current()).steadily(work), this.#options.pause))
  }

  async write<Value>(work: (handle: WriteHandle) => Value): Promise<Result<Value, StoreReason>> {
    const known = this.#overwritings
    const writing = patiently(async () => {
      const connection = await this.#current()
      if (this.#opening.state === 'read-only') throw new Refused('read-only', this.#opening.message)
      // The change was made for what stood there before: its maker has to look again.
      if (this.#overwritings !== known) throw notSaved()
      const value = connection.immediately(work)
      // Once more before it is acknowledged: what was just written may have gone into a file that is not there any more.
      if ((await this.#current()) !== connection) throw notSaved()
      return value
    }, this.#options.pause)
    this.#writing.add(writing)
    try {
      return this.#noticed(await writing)
    } finally {
      this.#writing.delete(writing)
    }
  }

  /** Damage met while working is damage of the library: from then on it is said and nothing more is written. */
  #noticed<Value>(tried: Result<Value, StoreReason>): Result<Value, StoreReason> {
    if (!tried.ok && tried.fault.reason === 'damaged') this.#check()
    return tried
  }

  async state(): Promise<Output<'library.state'>> {
    const counts = await this.read(countRecords)
    const { state, message } = this.#opening
    const { dataFolder, now } = this.#options
    const backups = listBackups(dataFolder, now()).map((backup) => ({ ...backup, ahead: isAhead(backup, now()) }))
    return {
      state,
      message,
      backups,
      backupFault: this.#backupFault,
      ...(counts.ok ? counts.value : { version: 0, shootCount: 0, spotCount: 0 }),
    }
  }

  async restore(backup: string): Promise<Result<{ keptAs: string }, StoreReason>> {
    const { dataFolder, now, readonly } = this.#options
    if (readonly) return { ok: false, fault: { reason: 'read-only', message: this.#opening.message } }
    await this.#tending
    const { version } = await this.state()
    const restored = await this.#alone(async () => {
      if ('connection' in this.#opening) this.#opening.connection.close()
      const put = resultOf(() => ({ keptAs: restoreBackup(dataFolder, backup, now()) }))
      await this.open(false)
      return put
    })
    if (!restored.ok) return restored
    // The backup's own count is an older one; pages tell by the count's growth that they must look again.
    const raised = await this.write((handle) => raiseVersion(handle, version))
    if (!raised.ok) return raised
    if (this.#opening.state === 'open') {
      this.#opening = { ...this.#opening, message: `The backup ${backup} is in the library's place.` }
    }
    return restored
  }

  async tend(): Promise<Result<{ backup: string | null }, StoreReason>> {
    this.#tending ??= guardedLater(async () => await this.#tendOnce()).finally(() => {
      this.#tending = null
    })
    return this.#noticed(await this.#tending)
  }

  async #tendOnce(): Promise<{ backup: string | null }> {
    const { dataFolder, now } = this.#options
    await this.#current()
    if (!this.#checked) this.#check()
    const connection = await this.#current()
    if (this.#opening.state !== 'open') return { backup: null }
    if (!backupIsDue(dataFolder, now())) {
      // Another window has made it meanwhile.
      this.#backupFault = null
      return { backup: null }
    }
    const name = await this.#backUpDaily(connection)
    await this.write(strikeUnusedWords)
    return { backup: name }
  }

  async #backUpDaily(connection: Connection): Promise<string> {
    const { dataFolder, now } = this.#options
    try {
      const { name } = await backUp(connection, dataFolder, now(), 'daily')
      this.#backupFault = null
      return name
    } catch (error) {
      this.#backupFault = faultOf(error)?.reason ?? 'bug'
      throw error
    }
  }

  async close(): Promise<void> {
    await this.#tending
    // What was asked for before the end is still saved.
    await Promise.allSettled(this.#writing)
    await this.#alone(async () => {
      if ('connection' in this.#opening) this.#opening.connection.close()
      this.#watch.close()
      this.#watch = NO_CHANGE
      this.#opening = { state: 'unavailable', message: 'The library is closed.' }
    })
  }
}
