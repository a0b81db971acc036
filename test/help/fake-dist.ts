/** A folder that electron-builder takes for Electron's: a file with the fuse wire where the program would be. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/** The mark Electron's builders put before the fuses: version 1, nine fuses, each off or on. */
const FUSE_MARK = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX'

export function makeFakeDist(folder: string): void {
  mkdirSync(join(folder, 'resources'), { recursive: true })
  mkdirSync(join(folder, 'locales'), { recursive: true })
  for (const name of ['en-US', 'en-GB', 'de']) writeFileSync(join(folder, 'locales', `${name}.pak`), 'language')
  const wire = Buffer.concat([Buffer.from(FUSE_MARK), Buffer.from([1, 9]), Buffer.from('101100101')])
  writeFileSync(
    join(folder, 'electron'),
    Buffer.concat([Buffer.from('\x7fELF a program that is none '), wire, Buffer.alloc(64)]),
    { mode: 0o755 },
  )
}
