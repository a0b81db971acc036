/** Owns how a file comes in: streamed to the disk with its size watched. */
import { randomUUID } from 'node:crypto'
import { type FileHandle, open, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { ELEVATION_FILE_LIMIT } from '#app/contract/ground.ts'
import { done, failed, type Result } from '#core/result.ts'
import { isDiskFull } from '#main/disk-full.ts'

export type TakeInReason = 'too-large' | 'disk-full' | 'not-written' | 'left' | 'empty'

/** The path it then lies under; nothing is left behind when it fails. */
export async function takeInFile(
  folder: string,
  name: string,
  body: AsyncIterable<Uint8Array>,
  signal: AbortSignal,
  limit: number = ELEVATION_FILE_LIMIT,
): Promise<Result<string, TakeInReason>> {
  const path = incoming(folder)
  try {
    const file = await open(path, 'wx', 0o600)
    const written = await writeAll(file, name, body, signal, limit).finally(() => file.close())
    if (written.ok) return done(path)
    await rm(path, { force: true })
    return written
  } catch (error) {
    await rm(path, { force: true }).catch(() => undefined)
    if (signal.aborted) return failed('left', `${name} was not added: the page did not send all of it.`)
    return isDiskFull(error)
      ? failed('disk-full', `There is no room on the disk for ${name}. Make some and add it again.`)
      : failed('not-written', `${name} could not be written to ${folder}, or did not arrive whole. Add it again.`)
  }
}

async function writeAll(
  file: FileHandle,
  name: string,
  body: AsyncIterable<Uint8Array>,
  signal: AbortSignal,
  limit: number,
): Promise<Result<null, TakeInReason>> {
  let bytes = 0
  for await (const part of body) {
    signal.throwIfAborted()
    bytes += part.byteLength
    if (bytes > limit) return tooLarge(name, limit)
    await file.writeFile(part)
  }
  signal.throwIfAborted()
  return bytes === 0 ? failed('empty', `${name} is empty. Download it again.`) : done(null)
}

function tooLarge(name: string, limit: number): Result<never, 'too-large'> {
  return failed(
    'too-large',
    `${name} is larger than ${limit >= 1e9 ? `${Math.round(limit / 1e9)} GB` : `${Math.round(limit / 1e6)} MB`}, the most that can be added here. Cut out the part you need, for instance by gdalwarp -te, or put the file into the data folder’s “elevation” by hand.`,
  )
}

/** What the names of files begin with that are not looked at yet. */
export const INCOMING = '.incoming-'

function incoming(folder: string): string {
  return join(folder, `${INCOMING}${randomUUID()}`)
}
