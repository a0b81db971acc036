/** The loopback host's entry: composes the services, prints the address, opens the default browser. */
import { homedir } from 'node:os'
import { join } from 'node:path'
import { dataFolder } from '#main/data-folder.ts'
import { openLog } from '#main/log.ts'
import { startLoopback } from '#main/loopback.ts'
import { openInBrowser } from '#main/open-browser.ts'
import { makeServe, readPage } from '#main/serve.ts'
import { openServices } from '#main/services.ts'

const BUILT = join(import.meta.dirname, '..')

async function startWeb(words: readonly string[]): Promise<void> {
  const folder = dataFolder(process.env, process.platform, homedir())
  const log = openLog(join(folder, 'logs'))
  const [services, files] = await Promise.all([
    openServices({
      folder,
      built: BUILT,
      log,
      fetch: nodeTileFetch,
      host: 'loopback',
      printer: null,
    }),
    readPage(join(BUILT, 'page')),
  ])
  const serve = makeServe({
    files,
    isOurs: (url) => url.protocol === 'http:' && url.hostname === '127.0.0.1',
    tilePrefix: services.tilePrefix,
    tiles: services.tiles,
  })
  const host = await startLoopback({
    handlers: services.handlers,
    serve,
    log,
    onStolen: (address) => say(`Another program used the browser's way in. The address is now ${address}`),
  })
  say(`Standpoint is at ${host.address()}`)
  say('It runs until you press Ctrl+C. The address opens your library: keep it to yourself.')
  if (!words.includes('--no-open')) openInBrowser(host.wayIn(), log)
  const stop = (): void => {
    void host.close().then(async () => {
      await services.close()
      process.exit(0)
    })
  }
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, stop)
}

function say(line: string): void {
  process.stdout.write(`${line}\n`)
}

await startWeb(process.argv.slice(2))
