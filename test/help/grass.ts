/** GRASS modules run without its shell, in a database of their own. */
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { run } from './gdal.ts'

const ROOT = '/usr/lib'

/** A way to run modules in a folder, UTM 32 N; null, with a sentence printed, when there is no GRASS here. */
export function openGrass(folder: string): ((module: string, ...parts: readonly string[]) => string) | null {
  const version = existsSync(ROOT) ? readdirSync(ROOT).find((name) => /^grass\d+$/.test(name)) : undefined
  const base = join(ROOT, version ?? '')
  if (version === undefined || !existsSync(join(base, 'bin', 'r.viewshed'))) {
    process.stdout.write('skipped: GRASS is not installed, so we could not compare with it (Debian: grass-core)\n')
    return null
  }
  const database = join(folder, 'database')
  mkdirSync(database)
  run('grass', ['-c', 'EPSG:32632', join(database, 'place'), '-e'])
  const settings = join(folder, 'gisrc')
  writeFileSync(settings, `GISDBASE: ${database}\nLOCATION_NAME: place\nMAPSET: PERMANENT\nGUI: text\n`)
  const env = {
    ...process.env,
    GISBASE: base,
    GISRC: settings,
    PATH: `${base}/bin:${base}/scripts:${process.env['PATH'] ?? ''}`,
    LD_LIBRARY_PATH: `${base}/lib`,
  }
  return (module, ...parts) => run(join(base, 'bin', module), parts, env)
}
