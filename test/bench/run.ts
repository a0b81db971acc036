/** `npm run bench`: measurements in one run, all or those named, as a table; what got worse than the gate; `--accept` writes the gate. */
import { buildParts } from '#app/build.ts'
import { benchAlignment } from './alignment.bench.ts'
import { benchAreas } from './areas.bench.ts'
import { benchAssess } from './assess.bench.ts'
import { benchFrames } from './frames.bench.ts'
import { acceptedWith, gateFindings, readGate, writeGate } from './gate.ts'
import { benchGround } from './ground.bench.ts'
import { benchLight } from './light.bench.ts'
import type { BenchRow } from './measure.ts'
import { benchTolerance } from './tolerance.bench.ts'
import { benchScan } from './scan.bench.ts'
import { benchStart } from './start.bench.ts'
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
  frames: () => benchFrames('hills'),
  'frames-real': () => benchFrames('real'),
  'frames-scan': () => benchFrames('scan'),
  start: benchStart,
}

// On a fresh checkout nothing is built, and a stale page would be measured in place of this one.
await buildParts('stale')

const words = process.argv.slice(2)
const asked = words.filter((word) => !word.startsWith('--'))
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

const accepted = readGate()
const findings = gateFindings(rows, accepted)
if (words.includes('--accept')) {
  writeGate(acceptedWith(rows, accepted))
  process.stdout.write('\nAccepted: test/bench/gate.json holds these ratios now.\n')
} else {
  process.stdout.write(findings.length === 0 ? '\nNothing is worse than the gate.\n' : '\nAgainst the gate:\n')
  for (const finding of findings) process.stdout.write(`- ${finding}\n`)
}
