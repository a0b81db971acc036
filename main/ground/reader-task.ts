/** Owns what passes between the program and the thread that reads elevation files: tasks one way, signs of life and answers the other. */
import type { Result } from '#core/result.ts'
import type { Unpacked } from './archive.ts'
import type { ElevationFacts } from './elevation-facts.ts'
import type { FileRef, Gaps } from './local-file.ts'
import type { Chunk } from './raster.ts'

export interface ReaderTasks {
  /** What a file is. */
  readonly look: { readonly task: FileRef; readonly answer: Result<ElevationFacts> }
  readonly count: { readonly task: FileRef; readonly answer: Result<Gaps> }
  readonly chunk: {
    readonly task: FileRef & { readonly level: number; readonly x: number; readonly y: number }
    readonly answer: Chunk
  }
  readonly unpack: {
    readonly task: {
      readonly archive: string
      readonly folder: string
      readonly prefix: string
      readonly largest: number
      readonly most: number
    }
    readonly answer: Unpacked
  }
  /** Lets go of a file, so that it can be deleted. */
  readonly forget: { readonly task: { readonly path: string }; readonly answer: null }
}

export type TaskName = keyof ReaderTasks

export type ToReader = {
  readonly [Name in TaskName]: {
    readonly id: number
    readonly name: Name
    readonly task: ReaderTasks[Name]['task']
  }
}[TaskName]

export type FromReader =
  /** Still at work: a part of it is done. */
  | { readonly id: number; readonly say: 'alive' }
  | { readonly id: number; readonly say: 'done'; readonly answer: ReaderTasks[TaskName]['answer'] }
  /** A task that threw: the file could not even be opened, or a bug. */
  | { readonly id: number; readonly say: 'failed'; readonly message: string }
