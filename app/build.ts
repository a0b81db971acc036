/** Builds the program into out/: the page, the two hosts, the thread that reads files, the preload, the data, licences and checks; only what is stale when asked so. */
import { copyFile, mkdir, readdir, stat, utimes, writeFile } from 'node:fs/promises'
import { builtinModules } from 'node:module'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { writeCoastFile } from './build-coast.ts'
import { writeUnpackedHashes } from './build-checks.ts'
import { writeGazetteer } from './build-gazetteer.ts'
import { BUNDLED_LICENCES, writeLicences } from './build-licences.ts'
import { LICENCES_FILE } from './licence.ts'
import { UNPACKED_FILE } from './unpacked.ts'

const ROOT = resolve(import.meta.dirname, '..')
/** The library's name of it, which it looks for at run time. */
const ZONES_FILE = 'timezones.geojson.geo.dat'
/** Files whose change makes everything stale: what is installed and how it is built. */
const COMMON = ['package.json', 'package-lock.json', '.tsconfig.base.json', 'app/build.ts']

interface Part {
  readonly name: string
  readonly sources: readonly string[]
  /** One file that is there when the part was built. */
  readonly result: string
  readonly build: () => Promise<void>
}

const PARTS: readonly Part[] = [
  { name: 'page', sources: ['renderer', 'core', 'app'], result: 'out/page/index.html', build: buildPage },
  {
    name: 'main',
    sources: ['main', 'core', 'app'],
    result: 'out/main/electron.js',
    build: () => buildNode('main', 'main/electron.ts', 'es'),
  },
  {
    name: 'web',
    sources: ['main', 'core', 'app'],
    result: 'out/web/web.js',
    build: () => buildNode('web', 'main/web.ts', 'es'),
  },
  {
    name: 'reader',
    sources: ['main', 'core', 'app'],
    result: 'out/reader/reader-entry.cjs',
    build: () => buildNode('reader', 'main/ground/reader-entry.ts', 'cjs'),
  },
  {
    name: 'preload',
    sources: ['app'],
    result: 'out/preload/preload.cjs',
    build: () => buildNode('preload', 'app/preload.ts', 'cjs'),
  },
  {
    name: 'gazetteer',
    sources: ['app/build-gazetteer.ts', 'core/geo/town-list.ts'],
    result: 'out/gazetteer/towns.gz',
    build: async () => {
      await writeGazetteer(join(ROOT, 'out/gazetteer/towns.gz'))
    },
  },
  {
    name: 'zones',
    sources: ['node_modules/geo-tz/package.json'],
    result: `out/zones/${ZONES_FILE}`,
    build: copyZones,
  },
  {
    name: 'coast',
    sources: ['app/build-coast.ts', 'core/geo/coast.ts'],
    result: 'out/coast/coast.gz',
    build: async () => writeCoastFile(join(ROOT, 'out/coast/coast.gz')),
  },
  {
    name: 'ground',
    sources: ['app/demo/elevation.bin'],
    result: 'out/ground/elevation.bin',
    build: copyDemoGround,
  },
  { name: 'icon', sources: ['app/resources'], result: 'out/icon.png', build: copyIcon },
]

/** What is gathered from the parts once they are built. */
const GATHERED = [join('out/page', LICENCES_FILE), 'out/licences/LICENCES.txt', join('out', UNPACKED_FILE)]
const GATHERED_BY = ['build-checks', 'build-licences', 'data-credits', 'licence', 'unpacked'].map(
  (name) => `app/${name}.ts`,
)

async function gather(): Promise<void> {
  await Promise.all([
    writeLicences({
      root: ROOT,
      from: ['page', 'main', 'web', 'preload', 'reader'].map((folder) => join(ROOT, 'out', folder)),
      page: join(ROOT, 'out/page', LICENCES_FILE),
      text: join(ROOT, 'out/licences/LICENCES.txt'),
    }),
    writeUnpackedHashes(ROOT, join(ROOT, 'out', UNPACKED_FILE)),
  ])
}

/** Builds all parts, or those alone whose sources are newer than they; tells which. */
export async function buildParts(which: 'all' | 'stale'): Promise<readonly string[]> {
  const wanted = which === 'all' ? PARTS : await staleParts()
  await mkdir(join(ROOT, 'out/stamps'), { recursive: true })
  await Promise.all(wanted.map(buildPart))
  if (wanted.length > 0 || (await isGatheredStale())) await gather()
  return wanted.map((part) => part.name)
}

async function isGatheredStale(): Promise<boolean> {
  const newest = async (paths: readonly string[]): Promise<readonly number[]> =>
    Promise.all(paths.map(async (path) => newestIn(join(ROOT, path))))
  const [made, sources] = await Promise.all([newest(GATHERED), newest(GATHERED_BY)])
  return Math.min(...made) < Math.max(...sources)
}

async function buildPart(part: Part): Promise<void> {
  // The stamp carries the moment the build began: a file saved meanwhile makes the part stale again.
  const began = new Date()
  await part.build()
  await writeFile(stampOf(part), '')
  await utimes(stampOf(part), began, began)
}

async function staleParts(): Promise<readonly Part[]> {
  const stale = await Promise.all(PARTS.map(isStale))
  return PARTS.filter((_part, index) => stale[index])
}

async function isStale(part: Part): Promise<boolean> {
  const [result, stamp] = await Promise.all([newestIn(join(ROOT, part.result)), newestIn(stampOf(part))])
  // A part that was never built, or whose result was taken away since.
  if (result === 0 || stamp === 0) return true
  const sources = await Promise.all([...part.sources, ...COMMON].map((path) => newestIn(join(ROOT, path))))
  return Math.max(...sources) > stamp
}

function stampOf(part: Part): string {
  return join(ROOT, 'out/stamps', part.name)
}

/** The newest change in a file or folder, 0 when there is none; a folder's own time tells of files taken away. */
async function newestIn(path: string): Promise<number> {
  const about = await stat(path).catch(() => null)
  if (about === null) return 0
  if (!about.isDirectory()) return about.mtimeMs
  const entries = await readdir(path)
  return Math.max(about.mtimeMs, ...(await Promise.all(entries.map((entry) => newestIn(join(path, entry))))))
}

async function buildPage(): Promise<void> {
  const { build } = await import('vite')
  await build({ configFile: join(ROOT, 'renderer/vite.config.ts'), logLevel: 'warn' })
}

/** Bundles an entry for Node or Electron; a sandboxed preload and a thread run from its text must be one CommonJS file. */
async function buildNode(folder: string, input: string, format: 'es' | 'cjs'): Promise<void> {
  const { build } = await import('vite')
  const external = [/^node:/, ...builtinModules, 'electron', 'better-sqlite3']
  const entryFileNames = format === 'cjs' ? '[name].cjs' : '[name].js'
  await build({
    root: ROOT,
    configFile: false,
    publicDir: false,
    logLevel: 'warn',
    ssr: { noExternal: true },
    build: {
      ssr: true,
      target: 'node24',
      outDir: `out/${folder}`,
      emptyOutDir: true,
      minify: false,
      sourcemap: true,
      license: { fileName: BUNDLED_LICENCES },
      rolldownOptions: {
        checks: { pluginTimings: false },
        input: join(ROOT, input),
        external,
        output: { format, entryFileNames },
      },
    },
  })
}

/** The library finds its index within the bundle; the boundaries it reads from this file. */
async function copyZones(): Promise<void> {
  await mkdir(join(ROOT, 'out/zones'), { recursive: true })
  await copyFile(join(ROOT, 'node_modules/geo-tz/data', ZONES_FILE), join(ROOT, 'out/zones', ZONES_FILE))
}

async function copyDemoGround(): Promise<void> {
  await mkdir(join(ROOT, 'out/ground'), { recursive: true })
  await copyFile(join(ROOT, 'app/demo/elevation.bin'), join(ROOT, 'out/ground/elevation.bin'))
}

async function copyIcon(): Promise<void> {
  await copyFile(join(ROOT, 'app/resources/icon.png'), join(ROOT, 'out/icon.png'))
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  process.chdir(ROOT)
  const began = performance.now()
  const built = await buildParts('all')
  process.stdout.write(`Built ${built.join(', ')} in ${((performance.now() - began) / 1000).toFixed(1)} s\n`)
}
