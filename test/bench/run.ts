/** `npm run bench`: every measurement in one run, as a table; ratios against an anchor timed in the same run. */
import { buildParts } from '#app/build.ts'
import { benchAlignment } from './alignment.bench.ts'
import { benchAreas } from './areas.bench.ts'
import { benchAssess } from './assess.bench.ts'
import { benchGround } from './ground.bench.ts'
import { benchLight } from './light.bench.ts'
import type { BenchRow } from './measure.ts'
import { benchPage } from './page.bench.ts'
import { benchTolerance } from './tolerance.bench.ts'
import { benchScan } from './scan.bench.ts'
import { benchStore } from './store.bench.ts'
import { benchWorkers } from './workers.bench.ts'

const PARTS: Readonly<Record<string, () => BenchRow[] | Promise<BenchRow[]>>> = {
  assess: benchAssess,
  ground: benchGround,
  areas: benchAreas,
  workers: benchWorkers,
  light: benchLight,
  alignment: benchAlignment,
  tolerance: benchTolerance,
  scan: benchScan,
  store: benchStore,
  page: benchPage,
}

// On a fresh checkout nothing is built, and a stale page would be measured in place of this one.
await buildParts('stale')

const asked = process.argv.slice(2)
const rows: BenchRow[] = []
for (const [name, bench] of Object.entries(PARTS)) {
  if (asked.length === 0 || asked.includes(name)) rows.push(...(await bench()))
}
const columns = rows.map((row) => [row.name, row.ours, row.anchor, row.ratio.toFixed(3), row.aim])
const table = [['what', 'ours', 'anchor', 'ratio', 'aim'], ...columns]
const widths = table[0]?.map((_, column) => Math.max(...table.map((cells) => cells[column]?.length ?? 0))) ?? []
for (const cells of table) {
  process.stdout.write(
    `${cells
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join('  ')
      .trimEnd()}\n`,
  )
}
