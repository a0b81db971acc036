/** Which unit tests need a worker of their own: those that stand in for modules, load them again, or fill the page's signals. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'

const TEST = resolve(import.meta.dirname, '..')
const ROOMS = ['core', 'app', 'main', 'renderer', 'reference', 'house']

/** Calls that change a worker for whatever comes after, and what remembers: the page's signals, and the zones, whose library takes its folder once. */
const LASTING =
  /\bvi\.(?:mock|doMock|resetModules|stubGlobal|stubEnv|useFakeTimers|setSystemTime)\b|\bglobalThis\.|#renderer\/(?:state|host)\b|process\.chdir|makeZoneFinder/

/** Paths from the root of the repository. */
export function filesAlone(): string[] {
  return ROOMS.flatMap((room) =>
    readdirSync(join(TEST, room), { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.test.ts') && LASTING.test(readFileSync(join(TEST, room, path), 'utf8')))
      .map((path) => `test/${room}/${path.replaceAll('\\', '/')}`),
  )
}
