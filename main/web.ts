/** The loopback host's entry: composes the services, prints the address, opens the default browser. */
import { messageOf } from '#core/message-of.ts'
import { readFile } from 'node:fs/promises'
import { homedir } from 'node:os'
import { join } from 'node:path'
import { done } from '#core/result.ts'
import { dataFolder, prepareDataFolder } from './data-folder.ts'
import { guardLast } from './last-guard.ts'
import { openLog } from './log.ts'
import { startLoopback } from './loopback.ts'
import { openInBrowser } from './open-browser.ts'
import { makeServe, readPage } from './serve.ts'
import { openServices } from './services.ts'
import { nodeTileFetch } from '#main/tiles/node-fetch.ts'

const BUILT = join(import.meta.dirname, '..')

async function startWeb(words: readonly string[]): Promise<void> {
  const folder = dataFolder(process.env, process.platform, homedir())
  const prepared = prepareDataFolder(folder)
  if (!prepared.ok) return refuse(prepared.fault.message)
  const log = openLog(join(folder, 'logs'))
  const [services, files] = await Promise.all([
    openServices({
      folder,
      built: BUILT,
      log,
      host: 'loopback',
      version: await versionOf(join(BUILT, '..', 'package.json')),
      fetch: nodeTileFetch,
      cipher: null,
      printer: null,
      // Run from a folder of the user's own: there is no package to hold it to.
      dataSound: async () => done(null),
      // For the tests' own tile server: never set by `npm start`.
      allowLoopbackTiles: process.env['STANDPOINT_TEST_TILES'] === 'loopback',
    }),
    readPage(join(BUILT, 'page')),
  ])
  const serve = makeServe({
    files,
    isOurs: (url) => url.protocol === 'http:' && url.hostname === '127.0.0.1',
    tilePrefix: services.tilePrefix,
    tiles: services.tiles,
    groundPrefix: services.groundPrefix,
    ground: services.ground,
  })
  const host = await startLoopback({
    handlers: services.handlers,
    serve,
    log,
    onStolen: (address) => say(`Another program used the browser's way in. The address is now ${address}`),
    onEntered: (address) => say(`For another window: ${address}`),
  })
  const stop = (code: number) => (): void => {
    void host.close().then(async () => {
      await services.close()
      process.exit(code)
    })
  }
  guardLast({ on: process, log, say, answerFailed: host.answerFailed, end: stop(1), now: Date.now })
  say(`Standpoint is at ${host.address()}`)
  say('It runs until you press Ctrl+C. The address opens your library, in one window: keep it to yourself.')
  if (!words.includes('--no-open')) openInBrowser(host.wayIn(), log)
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, stop(0))
}

async function versionOf(packageFile: string): Promise<string> {
  const about: unknown = JSON.parse(await readFile(packageFile, 'utf8'))
  return typeof about === 'object' && about !== null && 'version' in about ? String(about.version) : 'unknown'
}

/** A start that cannot go on, in words; a stack of ours tells a user nothing. */
function refuse(why: string): void {
  process.stderr.write(`Standpoint could not start. ${why}\n`)
  process.exitCode = 1
}

function say(line: string): void {
  process.stdout.write(`${line}\n`)
}

// A terminal that is gone cannot be told anything; that is no fault of the program's.
process.stdout.on('error', () => undefined)

await startWeb(process.argv.slice(2)).catch((error: unknown) => {
  openLog(join(dataFolder(process.env, process.platform, homedir()), 'logs')).error('start-failed', { error })
  refuse(
    `${messageOf(error)}. The log in the data folder has the details; ` +
      'when a file of the program itself is missing, install it again.',
  )
  // Services that were opened before the fault must not keep half a program running.
  process.exit()
})
