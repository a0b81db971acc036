/** Settles a received elevation file in the folder: looks at it, counts its gaps and gives it its name, or deletes what is of no use. */
import { randomUUID } from 'node:crypto'
import { rename, rm, stat } from 'node:fs/promises'
import { extname, join } from 'node:path'
import { done, failed, type Result } from '#core/result.ts'
import { fileName } from '#main/files/file-name.ts'
import { type FileReader } from './file-reader.ts'
import type { GapNotes } from './gap-notes.ts'
import { hgtCorner, hgtName } from './hgt.ts'

export interface Settling {
  readonly folder: string
  readonly reader: FileReader
  readonly notes: GapNotes
}

/** The name under which it then lies in the folder. */
export async function settleFile(settling: Settling, received: string, name: string): Promise<Result<string>> {
  const settled = await settleUnder(settling, received, name)
  if (!settled.ok) await rm(received, { force: true })
  return settled
}

async function settleUnder(
  { folder, reader, notes }: Settling,
  received: string,
  name: string,
): Promise<Result<string>> {
  const { size } = await stat(received)
  const ref = { path: received, name, bytes: size, state: randomUUID() }
  const file = await reader.look(ref)
  if (!file.ok) return file
  const counted = await reader.countGaps(ref)
  await reader.forget(received)
  if (!counted.ok) return counted
  const gaps = counted.value
  if (gaps.trouble !== null) return failed('damaged', gaps.trouble)
  if (gaps.unlikely !== null) return failed('not-elevation', gaps.unlikely)
  if (gaps.whole && gaps.share === 1)
    return failed('empty', `${name} holds no height at all, only gaps. Choose another file.`)
  const settled = settledName(name)
  const path = join(folder, settled)
  if (await exists(path))
    return failed('already-there', `${settled} is there already. Remove it first if this one is to take its place.`)
  await rename(received, path)
  const about = await stat(path)
  await notes.put(settled, `${about.size}-${about.mtimeMs}`, gaps.share)
  return done(settled)
}

/** The plain name of a degree for .hgt; otherwise the file's own, without what a file system may not like. */
function settledName(name: string): string {
  const corner = /\.hgt$/i.test(name) ? hgtCorner(name) : null
  if (corner?.ok === true) return `${hgtName(corner.value)}.hgt`
  const ending = extname(name)
  return fileName(name.slice(0, -ending.length), 'elevation', ending.toLowerCase())
}

async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  )
}
