/** The one set of services that both hosts mount: library, tiles, places, shoot files, and what differs between hosts. */
import { randomUUID } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Input } from '#app/contract/index.ts'
import { demoChanges } from '#app/demo/shoot.ts'
import { done, failed, type Result } from '#core/result.ts'
import { shootFileHandlers } from '#main/files/shoot-calls.ts'
import { secret } from '#main/door/gate.ts'
import type { Handlers } from '#main/door/handle.ts'
import { type Cipher, openKeys } from './keys.ts'
import type { Log } from './log.ts'
import { makeGazetteer } from '#main/places/gazetteer.ts'
import { makeZoneFinder } from '#main/places/zones.ts'
import { coastFile } from '#main/ground/sea.ts'
import { demoFile, groundService, readerFile } from '#main/ground/service.ts'
import { webTileSource } from '#main/ground/web-tiles.ts'
import type { GroundPort, TilePort } from './serve.ts'
import type { Printer } from '#main/sheet/printer.ts'
import { libraryService, type LibraryService } from '#main/store/library-service.ts'
import type { Soundness } from './unpacked-check.ts'
import { type AddressRules, checkTemplate } from '#main/tiles/address.ts'
import { type TileFetch, userAgentOf } from '#main/tiles/fetch.ts'
import { tileService } from '#main/tiles/service.ts'

export interface ServicesOptions {
  /** The user's data folder. */
  readonly folder: string
  /** The folder of what the build made. */
  readonly built: string
  readonly log: Log
  readonly host: 'electron' | 'loopback'
  readonly version: string
  readonly fetch: TileFetch
  /** Null where the system has no key store: keys then live until the program ends. */
  readonly cipher: Cipher | null
  /** Null where the page prints by itself. */
  readonly printer: Printer | null
  /** Awaited before data is read that the host cannot hold to its hash otherwise. */
  readonly dataSound: () => Promise<Soundness>
  /** Lets a test's own tile server on this machine be asked. */
  readonly allowLoopbackTiles?: boolean
}

export interface Services {
  readonly handlers: Handlers
  readonly tiles: TilePort
  /** Path under which the host answers tiles; new at each start. */
  readonly tilePrefix: string
  readonly ground: GroundPort
  readonly groundPrefix: string
  readonly close: () => Promise<void>
}

/** Where a user of map services is asked to be reachable. */
const CONTACT = 'https://example.org/standpoint'

export async function openServices(options: ServicesOptions): Promise<Services> {
  const { folder, log } = options
  const keys = await openKeys(folder, options.cipher)
  const library = await libraryService({
    dataFolder: join(folder, 'library'),
    keys,
    now: Date.now,
    onFault: (reason) => log.error('library-tending', { reason }),
  })
  // A library that cannot be written says so by its own state; the demo then waits for one that can.
  await library.seedIfNew(() => demoChanges(Date.now()))
  const tilePrefix = `/tiles/${secret()}`
  const groundPrefix = `/ground/${secret()}`
  const rules = { allowLoopbackHttp: options.allowLoopbackTiles ?? false }
  const settings = await followSettings(library, rules)
  const tiles = tileService({
    folder: join(folder, 'tiles'),
    settings: settings.now,
    others: () => [webTileSource(settings.now().elevationTiles)],
    keyOf: (sourceId) => library.keyOf(sourceId),
    fetch: options.fetch,
    now: Date.now,
    userAgent: userAgentOf(options.version, CONTACT),
    prefix: tilePrefix,
    ...rules,
  })
  const ground = await groundService({
    folder: join(folder, 'elevation'),
    demoFile: demoFile(options.built),
    coastFile: coastFile(options.built),
    readerCode: async () => readFile(readerFile(options.built), 'utf8'),
    settings: settings.now,
    askTile: (source, z, x, y, signal) => tiles.tile(source, z, x, y, signal),
    prefix: groundPrefix,
    now: Date.now,
  })
  const handlers = {
    ...settings.handlers,
    ...tiles.handlers,
    ...ground.handlers,
    ...shootFileHandlers(library.handlers, randomUUID),
    'places.find': makeGazetteer(join(options.built, 'gazetteer', 'towns.gz')).find,
    'places.zones': makeZoneFinder(join(options.built, 'zones'), options.dataSound).zones,
    'host.about': () => done({ host: options.host, version: options.version, platform: process.platform }),
    'sheet.pdf': (wish) => (options.printer === null ? printsElsewhere() : options.printer.print(wish)),
  } satisfies Handlers
  return {
    handlers,
    tiles: (source, z, x, y, signal) => tiles.tileSoon(source, z, x, y, signal),
    tilePrefix,
    ground,
    groundPrefix,
    close: async () => {
      await ground.close()
      tiles.close()
      await library.close()
    },
  }
}

function printsElsewhere(): Result<never> {
  return failed('not-here', 'In the browser the sheet is printed from its own page: open it and choose Print.')
}

/** The first tile address among the changes that may not be used: told when it is typed, not when a tile is missing. */
function refusedTemplate(changes: Input<'settings.set'>, rules: AddressRules) {
  const templates = [
    ...(changes.ownSources ?? []).map((source) => source.template),
    ...Object.values(changes.templates ?? {}),
    ...(changes.elevationTiles === undefined || changes.elevationTiles.template.trim() === ''
      ? []
      : [changes.elevationTiles.template.trim()]),
  ]
  for (const template of templates) {
    const checked = checkTemplate(template, rules)
    if (!checked.ok) return checked
  }
  return null
}

/** The settings as last read or set through this process, for what cannot wait for the library. */
async function followSettings(library: LibraryService, rules: AddressRules) {
  let latest = await library.settings()
  const { handlers } = library
  return {
    now: () => latest,
    handlers: {
      ...handlers,
      'settings.set': async (changes) => {
        const refused = refusedTemplate(changes, rules)
        if (refused !== null) return refused
        const answer = await handlers['settings.set'](changes)
        if (answer.ok) latest = answer.value
        return answer
      },
      'library.restore': async (wish) => {
        const answer = await handlers['library.restore'](wish)
        latest = await library.settings()
        return answer
      },
    } satisfies LibraryService['handlers'],
  }
}
