/** Owns the reading of elevation files apart from the program's own thread: what they are, their gaps, their samples, archives. */
import { done, type Result } from '#core/result.ts'
import type { Unpacked } from './archive.ts'
import { type ElevationFile, elevationFile } from './elevation-facts.ts'
import { LARGEST_HGT } from './hgt.ts'
import type { FileRef, Gaps } from './local-file.ts'
import { openReader, type Reader } from './reader.ts'

export interface FileReader {
  look(ref: FileRef): Promise<Result<ElevationFile>>
  countGaps(ref: FileRef): Promise<Result<Gaps>>
  /** The .hgt files in an archive, each under a name of its own in the folder that begins with the prefix; `name` is told. */
  unpack(archive: string, name: string, to: { folder: string; prefix: string }): Promise<Result<Unpacked>>
  /** Nothing of the file is held open any more. */
  forget(path: string): Promise<void>
  close(): Promise<void>
}

/** Bytes that one archive may unpack to. */
const MOST_UNPACKED = 4_000_000_000

/** `code` is what the build made of `reader-entry.ts`. Two threads: a look at a new file must not hold up the samples of others. */
export function openFileReader(code: () => Promise<string>): FileReader {
  const looking = openReader(code)
  const sampling = openReader(code)
  return {
    look: async (ref) => {
      const looked = await looking.ask('look', ref, ref.name)
      if (!looked.ok) return looked
      if (!looked.value.ok) return looked.value
      return done(elevationFile(rasterId(ref), looked.value.value, (level) => loader(sampling, ref, level)))
    },
    countGaps: async (ref) => {
      const counted = await looking.ask('count', ref, ref.name)
      return counted.ok ? counted.value : counted
    },
    unpack: async (archive, name, to) =>
      looking.ask('unpack', { archive, ...to, largest: LARGEST_HGT, most: MOST_UNPACKED }, name),
    forget: async (path) => {
      await Promise.all([looking, sampling].map((reader) => reader.ask('forget', { path }, path)))
    },
    close: async () => {
      await Promise.all([looking.close(), sampling.close()])
    },
  }
}

export function localId(name: string): string {
  return `file:${name}`
}

function rasterId({ name, state }: FileRef): string {
  return `${localId(name)}|${state}`
}

function loader(sampling: Reader, ref: FileRef, level: number) {
  return async (x: number, y: number, signal: AbortSignal) => {
    signal.throwIfAborted()
    const loaded = await sampling.ask('chunk', { ...ref, level, x, y }, `A part of ${ref.name}`)
    return loaded.ok ? loaded.value : { heights: null, trouble: loaded.fault.message }
  }
}
