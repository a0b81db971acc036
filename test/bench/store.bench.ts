/** How the library of 100,000 spots fares against the plainest way to the same end, in ratios of one run. */
import { closeSync, fdatasyncSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Change } from '#app/contract/library.ts'
import { applyChanges } from '#main/store/apply.ts'
import { APPLICATION_ID } from '#main/store/file-header.ts'
import { findSpots, type Search } from '#main/store/find.ts'
import { type Connection, connect, create } from '#main/store/handle.ts'
import { openLibrary } from '#main/store/library.ts'
import { completeForm } from '#main/store/library-file.ts'
import { saved, type SpotRecord } from '#test/help/library-records.ts'
import { type BenchRow, median } from './measure.ts'
import { COMMON_WORD, manyShoots, manySpots, RARE_NAME } from './many-spots.ts'

type Clock = () => number
/** Milliseconds of processor time of this process: what other programs do meanwhile does not count. */
const processor: Clock = () => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1_000
}
/** Milliseconds of wall time: for what waits on the disk. */
const wall: Clock = () => performance.now()

const BATCH = 20_000

export async function benchStore(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'standpoint-bench-'))
  try {
    const spots = manySpots()
    const lines = [bulkLoad(folder, spots)]
    const connection = connect(join(folder, 'library.sqlite'), { readonly: false })
    lines.push(committedEdit(folder, connection, spots), box(connection), phrase(connection), ...finds(connection))
    connection.close()
    lines.push(...(await starts(folder)))
    return lines
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** P9. Ours is all of it: revisions, rows, R*Tree, words and the list of words, in the batches that the door lets in. */
function bulkLoad(folder: string, spots: readonly SpotRecord[]): BenchRow {
  const ours = (): void => {
    const path = join(folder, 'library.sqlite')
    remove(path)
    const connection = create(path, APPLICATION_ID)
    completeForm(connection)
    connection.immediately((handle) => applyChanges(handle, manyShoots()))
    for (let from = 0; from < spots.length; from += BATCH) {
      const changes: Change[] = spots.slice(from, from + BATCH).map((spot) => saved(spot))
      connection.immediately((handle) => applyChanges(handle, changes))
    }
    connection.close()
  }
  const anchor = (): void => {
    const path = join(folder, 'plain.sqlite')
    remove(path)
    const connection = create(path, APPLICATION_ID)
    connection.immediately((handle) => {
      handle.script('CREATE TABLE plain (id TEXT, shoot_id TEXT, name TEXT, lat REAL, lon REAL, document TEXT) STRICT')
      for (const { id, shootId, name, stop, ...others } of spots) {
        const document = JSON.stringify({ id, shootId, name, stop, ...others })
        handle.run('INSERT INTO plain VALUES (?, ?, ?, ?, ?, ?)', id, shootId, name, stop.at.lat, stop.at.lon, document)
      }
    })
    connection.close()
  }
  const compared = compare(ours, anchor, { rounds: 3, calls: 1, clock: processor })
  return line('load 100,000 spots, all indexes / plain table', compared, '2.0 or less, at most 3.0', 0)
}

/** P10. One spot moved and saved, durable; against writing 4 KiB to a file and waiting for the disk. */
function committedEdit(folder: string, connection: Connection, spots: readonly SpotRecord[]): BenchRow {
  const revisions = new Map<string, number>()
  let turn = 0
  const ours = (): void => {
    turn += 1
    const spot = spots[(turn * 7_919) % spots.length]
    if (spot === undefined) return
    const before = revisions.get(spot.id) ?? 1
    const at = { lat: spot.stop.at.lat + 0.000_01, lon: spot.stop.at.lon }
    const moved = { ...spot, revision: before, stop: { ...spot.stop, at } }
    const { revisions: after } = connection.immediately((handle) => applyChanges(handle, [saved(moved, before)]))
    revisions.set(spot.id, after[0] ?? 0)
  }
  const file = openSync(join(folder, 'raw'), 'w')
  const page = Buffer.alloc(4_096, 1)
  let place = 0
  const anchor = (): void => {
    writeSync(file, page, 0, page.length, place)
    place += page.length
    fdatasyncSync(file)
  }
  const compared = compare(ours, anchor, { rounds: 9, calls: 60, clock: wall })
  closeSync(file)
  return line('one committed edit / 4 KiB and fdatasync', compared, '1.8 or less, at most 3.0', 3)
}

const BRIEF = `spot.id, spot.shoot_id AS shootId, shoot.name AS shootName, spot.name, spot.status, spot.stars, spot.lat, spot.lon`

/** P11. About one spot in a hundred lies in the box. */
function box(connection: Connection): BenchRow {
  const within = { south: 0, north: 16, west: 10, east: 46 }
  const ours = (): void => {
    findSpots(connection.read, { words: '', within, limit: 500 })
  }
  const anchor = (): void => {
    connection.read.rows(
      `SELECT ${BRIEF} FROM spot NOT INDEXED JOIN shoot ON shoot.id = spot.shoot_id
         WHERE spot.lat BETWEEN ? AND ? AND spot.lon BETWEEN ? AND ?`,
      within.south,
      within.north,
      within.west,
      within.east,
    )
  }
  return line('box, 1 % of the spots / full scan', compare(ours, anchor, READS), '1/20 or less, at most 1/10', 2)
}

/** P12. A name of two words that twelve spots bear. */
function phrase(connection: Connection): BenchRow {
  const ours = (): void => {
    findSpots(connection.read, { words: RARE_NAME, within: null, limit: 500 })
  }
  const anchor = (): void => {
    connection.read.rows(
      `SELECT ${BRIEF} FROM spot_words JOIN spot USING (key) JOIN shoot ON shoot.id = spot.shoot_id
         WHERE spot_words.words LIKE '%kap nordwind%'`,
    )
  }
  return line('phrase / LIKE scan', compare(ours, anchor, READS), '1/30 or less, at most 1/15', 2)
}

const GLOBE = { south: -90, north: 90, west: -180, east: 180 }
const CONTINENT = { south: -80, north: 40, west: -120, east: 160 }
const BOX = { south: 0, north: 16, west: 10, east: 46 }

/** What people ask for, in milliseconds of processor time; the aim of 5 ms stands for box and word. */
function finds(connection: Connection): BenchRow[] {
  const asked: readonly (readonly [string, Omit<Search, 'limit'>, string])[] = [
    ['box and common word', { words: COMMON_WORD, within: BOX }, '5 ms'],
    ['box and rare words', { words: RARE_NAME, within: BOX }, '5 ms'],
    ['box and part of a word', { words: 'arbo', within: BOX }, '5 ms'],
    ['box and two letters', { words: 'rb', within: BOX }, '5 ms'],
    ['globe and rare words', { words: RARE_NAME, within: GLOBE }, '5 ms'],
    ['continent, 58 % of the spots', { words: '', within: CONTINENT }, 'never joined'],
    ['continent and common word', { words: COMMON_WORD, within: CONTINENT }, 'never joined'],
    ['common word alone', { words: COMMON_WORD, within: null }, ''],
    ['one letter alone', { words: 'b', within: null }, ''],
    ['two letters nobody has', { words: 'qx', within: null }, ''],
  ]
  return asked.map(([name, search, aim]) => {
    const took = median(
      timed(() => findSpots(connection.read, { ...search, limit: 200 }), { rounds: 9, calls: 10, clock: processor }),
    )
    const { total, more } = findSpots(connection.read, { ...search, limit: 200 })
    return {
      name: `find: ${name}`,
      ours: `${took.toFixed(2)} ms`,
      anchor: `${total} found${more ? ', more' : ''}`,
      ratio: took,
      aim,
    }
  })
}

/** Opening the full library, and the check of it that waits until the start is over. */
async function starts(folder: string): Promise<BenchRow[]> {
  const options = { dataFolder: folder, now: () => 0, pause: async () => {}, readonly: false }
  const opened: number[] = []
  for (let round = 0; round < 5; round += 1) {
    const begin = wall()
    const library = await openLibrary(options)
    await library.state()
    opened.push(wall() - begin)
    await library.close()
  }
  const library = await openLibrary(options)
  const begin = wall()
  const tended = await library.tend()
  const took = wall() - begin
  await library.close()
  if (!tended.ok) throw new Error(tended.fault.message)
  return [
    milliseconds('open 100,000 spots and count them', median(opened), 'well under 100 ms'),
    milliseconds('afterwards: whole check, backup, its check', took, ''),
  ]
}

function milliseconds(name: string, took: number, aim: string): BenchRow {
  return { name, ours: `${took.toFixed(1)} ms`, anchor: '', ratio: took, aim }
}

interface Pace {
  readonly rounds: number
  /** Calls in one round: short work is repeated until the clock can tell it. */
  readonly calls: number
  readonly clock: Clock
}
const READS: Pace = { rounds: 9, calls: 10, clock: processor }

interface Compared {
  readonly ours: number
  readonly anchor: number
  readonly ratio: number
}

/** Rounds of anchor and ours in turn; the ratio is the median of the rounds' own ratios. */
function compare(ours: () => unknown, anchor: () => unknown, pace: Pace): Compared {
  const rounds = Array.from({ length: pace.rounds }, () => {
    const [theirs = 0] = timed(anchor, { ...pace, rounds: 1 })
    const [own = 0] = timed(ours, { ...pace, rounds: 1 })
    return { own, theirs }
  })
  return {
    ours: median(rounds.map(({ own }) => own)),
    anchor: median(rounds.map(({ theirs }) => theirs)),
    ratio: median(rounds.map(({ own, theirs }) => own / theirs)),
  }
}

/** Milliseconds per call of each round. */
function timed(work: () => unknown, { rounds, calls, clock }: Pace): number[] {
  return Array.from({ length: rounds }, () => {
    const begin = clock()
    for (let call = 0; call < calls; call += 1) work()
    return (clock() - begin) / calls
  })
}

function line(name: string, { ours, anchor, ratio }: Compared, aim: string, digits: number): BenchRow {
  return { name, ours: `${ours.toFixed(digits)} ms`, anchor: `${anchor.toFixed(digits)} ms`, ratio, aim }
}

function remove(path: string): void {
  for (const suffix of ['', '-wal', '-shm']) rmSync(path + suffix, { force: true })
}
