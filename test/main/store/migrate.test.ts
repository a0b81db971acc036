/** Every step of the library's form runs in its order, over data of the step before, and the outcome is the known form. */
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { shootShape, spotShape } from '#app/contract/records.ts'
import { APPLICATION_ID } from '#main/store/file-header.ts'
import { type Connection, connect, create } from '#main/store/handle.ts'
import { formAfter, formOf, migrate, MIGRATIONS, NEWEST_FORM } from '#main/store/migrate.ts'
import type { Migration } from '#main/store/migration.ts'
import { enterPlaces } from '#main/store/place-index.ts'
import { shootRecord, spotRecord } from '#test/help/library-records.ts'
import { openedLibrary, valueOf } from '#test/help/open-library.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'

const exercised = new Set<number>()

/** A library as a program of that form would have left it. */
function libraryOfForm(folder: string, form: number): Connection {
  const connection = create(join(folder, 'library.sqlite'), APPLICATION_ID)
  migrate(connection, upTo(form))
  return connection
}

function upTo(form: number): readonly Migration[] {
  return MIGRATIONS.filter((migration) => migration.form <= form)
}

function putRecords({ immediately }: Connection): void {
  const shoot = shootRecord('a', { revision: 1, name: 'Herbst' })
  const spot = spotRecord('s', 'a', { revision: 4, name: 'Große Brücke', at: { lat: 50.5, lon: 8.25 } })
  immediately((handle) => {
    handle.run(
      'INSERT INTO shoot (id, revision, name, made_at, document) VALUES (?, 1, ?, 5, ?)',
      shoot.id,
      shoot.name,
      JSON.stringify(shoot),
    )
    handle.run(
      `INSERT INTO spot (id, shoot_id, revision, rank, name, status, stars, lat, lon, document)
         VALUES (?, ?, 4, 0, ?, ?, 3, 50.5, 8.25, ?)`,
      spot.id,
      spot.shootId,
      spot.name,
      spot.status,
      JSON.stringify(spot),
    )
    // As a program of that form did.
    if (formOf(handle) >= 20) enterPlaces(handle, [1])
  })
}

describe('from the step before, with records in it, opening the library', () => {
  const steps = MIGRATIONS.map(({ form }, at) => ({ form, before: MIGRATIONS[at - 1]?.form ?? 0 }))

  test.each(steps)('brings form $before to the newest: nothing lost, everything found', async ({ form, before }) => {
    const folder = temporaryFolder()
    const connection = libraryOfForm(folder, before)
    if (before > 0) putRecords(connection)
    // The step itself, then the rest by opening.
    expect(migrate(connection, upTo(form))).toEqual([form])
    exercised.add(form)
    if (before === 0) putRecords(connection)
    connection.close()
    const { handlers } = await openedLibrary(folder)
    const state = valueOf(await handlers['library.state']({}))
    expect([state.state, state.spotCount]).toEqual(['open', 1])
    const { spots } = valueOf(await handlers['library.open']({ shootId: 'a' }))
    expect(spots).toMatchObject([{ id: 's', revision: 4, name: 'Große Brücke' }])
    const box = { south: 50, north: 51, west: 8, east: 9 }
    expect(valueOf(await handlers['library.find']({ words: 'brucke herbst', within: box, limit: 5 })).total).toBe(1)
    expect(valueOf(await handlers['settings.get']({})).units).toBe('metric')
    // A copy was made first, of the form as it was, and counts as a backup.
    expect(state.backups.map(({ name, spots }) => [name.slice(0, 7), spots])).toEqual(
      form === NEWEST_FORM ? [] : [['before_', 1]],
    )
  })
})

test('records from before light was planned get its beginnings, and what they hold is left as it was', async () => {
  const folder = temporaryFolder()
  const connection = libraryOfForm(folder, 40)
  putRecords(connection)
  connection.immediately((handle) => {
    handle.run(
      "UPDATE shoot SET document = json_remove(document, '$.stoppingGround', '$.keepOuts', '$.scanWishes', '$.obstructions', '$.zone', '$.light', '$.sky', '$.iso', '$.bag.camera.fastestShutter', '$.bag.camera.slowestShutter')",
    )
    handle.run("UPDATE spot SET document = json_remove(document, '$.when')")
  })
  connection.close()
  const before = Date.now() - 1_000
  const { handlers } = await openedLibrary(folder)
  const { shoot, spots } = valueOf(await handlers['library.open']({ shootId: 'a' }))
  expect(shoot).toEqual({ ...shootRecord('a', { revision: 1, name: 'Herbst' }) })
  expect(shootShape.parse(shoot)).toEqual(shoot)
  const [spot] = spots
  expect(spot?.when).toBeGreaterThanOrEqual(before)
  expect(spot?.when).toBeLessThanOrEqual(Date.now())
  expect(spotShape.parse(spot)).toEqual(spot)
})

test('records from before slopes were measured get none, each landmark in its place, and damage is left as it was', async () => {
  const folder = temporaryFolder()
  const connection = libraryOfForm(folder, 70)
  putRecords(connection)
  const common = { height: 30, baseElevation: null, baseSlope: null, baseAspect: null }
  const at = { lat: 50.5, lon: 8.25 }
  const landmarks = [
    { id: 'z', name: 'Ä "tower"', kind: 'upright', at, width: 6, ...common },
    { id: 'a', name: '', kind: 'summit', at, width: 800, ...common },
  ] as const
  connection.immediately((handle) => {
    handle.run("UPDATE shoot SET document = json_set(document, '$.landmarks', json(?))", JSON.stringify(landmarks))
    for (const each of [0, 1]) {
      handle.run(
        `UPDATE shoot SET document = json_remove(document, '$.landmarks[${each}].baseSlope', '$.landmarks[${each}].baseAspect')`,
      )
    }
    handle.run(
      "UPDATE spot SET document = json_remove(document, '$.stop.slope', '$.stop.aspect', '$.standpoint.slope', '$.standpoint.aspect')",
    )
    handle.run("INSERT INTO shoot (id, revision, name, made_at, document) VALUES ('broken', 1, '', 6, '{')")
  })
  connection.close()
  const { handlers } = await openedLibrary(folder)
  const { shoot, spots } = valueOf(await handlers['library.open']({ shootId: 'a' }))
  expect(shoot.landmarks).toEqual(landmarks)
  expect(shootShape.parse(shoot)).toEqual(shoot)
  expect(spots[0]?.stop).toEqual({ at, heading: 45, elevation: null, slope: null, aspect: null })
  expect(spots[0]?.standpoint).toMatchObject({ elevation: 12.5, slope: null, aspect: null })
  const [spot] = spots
  expect(spotShape.parse(spot)).toEqual(spot)
  const broken = await handlers['library.open']({ shootId: 'broken' })
  expect(broken.ok ? 'read' : broken.fault.reason).toBe('damaged')
})

test('what was stored as screens is stored as obstructions, damage is left as it was', async () => {
  const folder = temporaryFolder()
  const connection = libraryOfForm(folder, 80)
  putRecords(connection)
  const at = { lat: 50.5, lon: 8.25 }
  const trees = { id: 't', name: 'Ä "poplars"', line: [at, { lat: 50.5, lon: 8.26 }], height: 12.5 }
  connection.immediately((handle) => {
    handle.run("UPDATE shoot SET document = json_remove(document, '$.obstructions')")
    for (const id of ['empty', 'odd']) {
      handle.run(
        "INSERT INTO shoot (id, revision, name, made_at, document) SELECT ?, 1, '', 6, document FROM shoot WHERE id = 'a'",
        id,
      )
    }
    const put = (id: string, screens: unknown): void =>
      void handle.run(
        "UPDATE shoot SET document = json_set(document, '$.id', ?, '$.screens', json(?)) WHERE id = ?",
        id,
        JSON.stringify(screens),
        id,
      )
    put('a', [trees])
    put('empty', [])
    put('odd', 'no list')
    handle.run("INSERT INTO shoot (id, revision, name, made_at, document) VALUES ('broken', 1, '', 7, '{')")
  })
  connection.close()
  const { handlers } = await openedLibrary(folder)
  const { shoot } = valueOf(await handlers['library.open']({ shootId: 'a' }))
  expect(shoot.obstructions).toEqual([trees])
  expect(shootShape.parse(shoot)).toEqual(shoot)
  expect(valueOf(await handlers['library.open']({ shootId: 'empty' })).shoot.obstructions).toEqual([])
  // Whoever reads it says so, as before.
  expect(valueOf(await handlers['library.open']({ shootId: 'odd' })).shoot.obstructions).toBe('no list')
  const broken = await handlers['library.open']({ shootId: 'broken' })
  expect(broken.ok ? 'read' : broken.fault.reason).toBe('damaged')
})

test('a copy made before migrating is a library of the older form, and restoring it brings it up again', async () => {
  const folder = temporaryFolder()
  const connection = libraryOfForm(folder, 10)
  putRecords(connection)
  connection.close()
  const { handlers } = await openedLibrary(folder)
  const [copy] = valueOf(await handlers['library.state']({})).backups
  const opened = connect(join(folder, 'backups', copy?.name ?? ''), { readonly: true })
  expect(formOf(opened.read)).toBe(10)
  opened.close()
  valueOf(await handlers['library.restore']({ backup: copy?.name ?? '' }))
  expect(valueOf(await handlers['library.find']({ words: 'brücke', within: null, limit: 5 })).total).toBe(1)
})

test('a step that fails leaves the form and the data of the step before', () => {
  const folder = temporaryFolder()
  const connection = libraryOfForm(folder, 10)
  putRecords(connection)
  const failing = {
    form: 20,
    script: 'DELETE FROM spot; CREATE TABLE half (key INTEGER) STRICT; INSERT INTO nowhere VALUES (1)',
  }
  expect(() => migrate(connection, [...upTo(10), failing])).toThrow('nowhere')
  expect(formOf(connection.read)).toBe(10)
  expect(connection.read.row('SELECT count(*) AS count FROM spot')).toEqual({ count: 1 })
  expect(connection.read.row("SELECT 1 FROM sqlite_schema WHERE name = 'half'")).toBeUndefined()
  connection.close()
})

test.each([
  ['twice the same number', [10, 20, 20]],
  ['a step back', [10, 30, 20]],
  ['a number between the tens', [10, 15]],
  ['zero', [0]],
])('a list with %s is refused', (_, forms) => {
  expect(() => formAfter(forms.map((form) => ({ form, script: '' })))).toThrow('out of order')
})

test('has one file for each step, named by its number', () => {
  const files = readdirSync(join(import.meta.dirname, '../../../main/store/migrations'))
  expect(files.map((name) => Number(name.slice(0, 4))).toSorted((a, b) => a - b)).toEqual(
    MIGRATIONS.map(({ form }) => form),
  )
})

test('the newest form is the one written down: a change of it shows in this file', async () => {
  const connection = create(join(temporaryFolder(), 'new.sqlite'), APPLICATION_ID)
  migrate(connection)
  // The shadow tables of FTS5 and R*Tree are theirs, not ours.
  const rows = connection.read.rows<{ sql: string }>(
    `SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL
       AND name NOT GLOB 'spot_find_*' AND name NOT GLOB 'word_part_*' AND name NOT GLOB 'spot_place_*' ORDER BY name`,
  )
  connection.close()
  const schema = rows.map(({ sql }) => `${sql.replace(/ +--[^\n]*\n/g, '').replace(/\s+/g, ' ')};\n`).join('')
  await expect(`-- form ${NEWEST_FORM}\n${schema}`).toMatchFileSnapshot('schema.sql')
})

test('every table of ours is STRICT', () => {
  const connection = create(join(temporaryFolder(), 'new.sqlite'), APPLICATION_ID)
  migrate(connection)
  const loose = connection.read.rows<{ name: string }>(
    "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND strict = 0 AND name <> 'sqlite_schema'",
  )
  connection.close()
  expect(loose).toEqual([])
})

test('no step went untried', () => {
  expect([...exercised]).toEqual(MIGRATIONS.map(({ form }) => form))
})
