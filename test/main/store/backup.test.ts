/** Backups are made daily, checked before they count, kept by a plan, and put back without losing what stood there. */
import {
  copyFileSync,
  existsSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { backUp, backupFolder, listBackups, spotsIfGood } from '#main/store/backup.ts'
import { connect } from '#main/store/handle.ts'
import { dayNumber, outdatedBackups, weekNumber } from '#main/store/rotation.ts'
import { saved, shootRecord, spotRecord } from '#test/help/library-records.ts'
import { NOON, openedLibrary, reasonOf, valueOf } from '#test/help/open-library.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'

const DAY = 86_400_000

async function filled(folder: string, spots: number, now = (): number => NOON): ReturnType<typeof openedLibrary> {
  const service = await openedLibrary(folder, { now })
  const records = Array.from({ length: spots }, (_, n) => spotRecord(`s${n}`, 'a'))
  valueOf(await service.handlers['library.apply']({ changes: [shootRecord('a'), ...records].map((one) => saved(one)) }))
  return service
}

// P75: what was saved last stands in the log; a copy of the file alone misses it.
test('a backup of the open library holds all 100 spots, a copy of its file does not', async () => {
  const folder = temporaryFolder()
  const { handlers, tend } = await filled(folder, 100)
  copyFileSync(join(folder, 'library.sqlite'), join(folder, 'copy.sqlite'))
  valueOf(await tend())
  const [backup] = valueOf(await handlers['library.state']({})).backups
  expect(backup).toEqual({
    name: 'daily_2026-05-20T12-00-00Z_100-spots.sqlite',
    savedAt: NOON,
    spots: 100,
    ahead: false,
  })
  expect(spotsIfGood(join(backupFolder(folder), backup?.name ?? ''))).toBe(100)
  expect(spotsIfGood(join(folder, 'copy.sqlite'))).not.toBe(100)
})

test('one backup a day, also after the clock was set back', async () => {
  const folder = temporaryFolder()
  let now = NOON
  const { tend } = await filled(folder, 1, () => now)
  const made = async (at: number): Promise<boolean> => {
    now = at
    return valueOf(await tend()).backup !== null
  }
  // Set back within what a clock is off by: the same day. Farther: nobody knows what day it is, so one is made.
  const days = [NOON, NOON + 60_000, NOON + DAY, NOON + DAY / 2, NOON + DAY, NOON - 3 * DAY, NOON - 3 * DAY + 60_000]
  const each: boolean[] = []
  // oxlint-disable-next-line no-await-in-loop
  for (const at of days) each.push(await made(at))
  expect(each).toEqual([true, false, true, false, false, true, false])
})

describe('a clock that was ahead', () => {
  const YEARS = 3_652 * DAY

  test('by ten years at one start does not stop the daily backups', async () => {
    const folder = temporaryFolder()
    let now = NOON + YEARS
    const { handlers, tend } = await filled(folder, 1, () => now)
    expect(valueOf(await tend()).backup).toContain('2036-05-19')
    for (let day = 0; day < 3; day += 1) {
      now = NOON + day * DAY
      // oxlint-disable-next-line no-await-in-loop
      expect(valueOf(await tend()).backup).toContain(`2026-05-${20 + day}`)
    }
    const { backups } = valueOf(await handlers['library.state']({}))
    expect(backups.map(({ name, ahead }) => [name.slice(6, 16), ahead])).toEqual([
      ['2026-05-22', false],
      ['2026-05-21', false],
      ['2026-05-20', false],
      ['2036-05-19', true],
    ])
  })

  test('at many starts takes no place from the backups that follow', async () => {
    const folder = temporaryFolder()
    const service = await filled(folder, 1)
    await service.close()
    const connection = connect(join(folder, 'library.sqlite'), { readonly: false })
    for (let day = 0; day < 20; day += 1) await backUp(connection, folder, NOON + YEARS + day * DAY, 'daily')
    for (let day = 0; day < 60; day += 1) await backUp(connection, folder, NOON + day * DAY, 'daily')
    connection.close()
    const last = NOON + 59 * DAY
    const ages = listBackups(folder, last).map(({ savedAt }) => (last - savedAt) / DAY)
    expect(ages.filter((age) => age >= 0)).toEqual([0, 1, 2, 3, 4, 5, 6, 13, 20, 27, 34])
  })

  test('or one that is behind now strikes nothing of what was made before', async () => {
    const folder = temporaryFolder()
    const service = await filled(folder, 1)
    await service.close()
    const connection = connect(join(folder, 'library.sqlite'), { readonly: false })
    for (let day = 0; day < 10; day += 1) await backUp(connection, folder, NOON + day * DAY, 'daily')
    const before = listBackups(folder, NOON + 9 * DAY).map(({ name }) => name)
    for (let day = 0; day < 20; day += 1) await backUp(connection, folder, NOON - YEARS + day * DAY, 'daily')
    connection.close()
    const names = listBackups(folder, NOON - YEARS + 19 * DAY).map(({ name }) => name)
    expect(names).toEqual(expect.arrayContaining(before))
    expect(names).toHaveLength(before.length + 9)
  })

  test('leaves the copy made ahead of a migration standing', async () => {
    const folder = temporaryFolder()
    const service = await filled(folder, 1)
    await service.close()
    const connection = connect(join(folder, 'library.sqlite'), { readonly: false })
    for (let day = 0; day < 4; day += 1) await backUp(connection, folder, NOON + YEARS + day * DAY, 'before')
    const { name } = await backUp(connection, folder, NOON, 'before')
    connection.close()
    expect(existsSync(join(backupFolder(folder), name))).toBe(true)
  })
})

describe('a backup that cannot be made', () => {
  test('is told of by the library’s state until one is made, and ends nothing', async () => {
    const folder = temporaryFolder()
    const faults: string[] = []
    const { handlers, tend } = await openedLibrary(folder, { onFault: (reason) => faults.push(reason) })
    writeFileSync(backupFolder(folder), 'a file where the folder should be')
    expect((await tend()).ok).toBe(false)
    const amiss = valueOf(await handlers['library.state']({})).backupFault
    expect(amiss).toEqual(expect.any(String))
    expect(faults).toEqual([amiss])
    valueOf(await handlers['library.apply']({ changes: [saved(shootRecord('a'))] }))
    rmSync(backupFolder(folder))
    valueOf(await tend())
    expect(valueOf(await handlers['library.state']({})).backupFault).toBeNull()
  })
})

test('two months of daily backups leaves seven days and four weeks', async () => {
  const folder = temporaryFolder()
  const service = await filled(folder, 1)
  await service.close()
  const connection = connect(join(folder, 'library.sqlite'), { readonly: false })
  for (let day = 0; day < 60; day += 1) await backUp(connection, folder, NOON + day * DAY, 'daily')
  connection.close()
  const last = NOON + 59 * DAY
  const ages = listBackups(folder, last).map(({ savedAt }) => (last - savedAt) / DAY)
  // 2026-05-20 is a Wednesday and the last day, 59 days on, a Saturday: the weeks end on Sundays, 6, 13, ... days before.
  expect([new Date(NOON).getUTCDay(), new Date(last).getUTCDay()]).toEqual([3, 6])
  expect(ages).toEqual([0, 1, 2, 3, 4, 5, 6, 13, 20, 27, 34])
})

describe('the plan of what is kept', () => {
  test('weeks run from Monday to Sunday', () => {
    const sunday = Date.UTC(2026, 4, 24, 23, 59, 59)
    expect(weekNumber(sunday + 1_000) - weekNumber(sunday)).toBe(1)
    expect(weekNumber(sunday) - weekNumber(sunday - 6 * DAY)).toBe(0)
    expect(dayNumber(-1)).toBe(-1)
  })

  test('nothing is struck of seven, however old', () => {
    expect(outdatedBackups(Array.from({ length: 7 }, (_, n) => ({ savedAt: NOON - n * 100 * DAY })))).toEqual([])
  })

  test('of a week that the seven cover nothing more stays, of the four before it the newest', () => {
    const all = Array.from({ length: 14 }, (_, n) => ({ savedAt: NOON - n * 60_000 }))
    expect(outdatedBackups(all)).toEqual(all.slice(7))
    const weeks = Array.from({ length: 12 }, (_, n) => ({ savedAt: NOON - (n + 1) * 7 * DAY - (n % 2) * 3_600_000 }))
    expect(outdatedBackups([...all, ...weeks])).toEqual([...all.slice(7), ...weeks.slice(4)])
  })
})

test('a backup that does not pass its check never counts, and those there are stay', async () => {
  const folder = temporaryFolder()
  const { handlers, tend } = await filled(folder, 40)
  valueOf(await tend())
  const good = valueOf(await handlers['library.state']({})).backups
  const connection = connect(join(folder, 'library.sqlite'), { readonly: false })
  const lying = {
    ...connection,
    backUp: async (path: string) => {
      await connection.backUp(path)
      truncateSync(path, statSync(path).size - 3_000)
    },
  }
  await expect(backUp(lying, folder, NOON + DAY, 'daily')).rejects.toThrow('does not pass its check')
  connection.close()
  expect(listBackups(folder, NOON)).toEqual(good.map(({ name, savedAt, spots }) => ({ name, savedAt, spots })))
  expect(readdirSync(backupFolder(folder))).toHaveLength(1)
})

test('only names of our own making count as backups', async () => {
  const folder = temporaryFolder()
  const { handlers, tend } = await filled(folder, 1)
  valueOf(await tend())
  for (const name of ['notes.txt', 'unchecked-1.part', 'daily_2026-99-99T00-00-00Z_1-spots.sqlite']) {
    writeFileSync(join(backupFolder(folder), name), 'x')
  }
  expect(valueOf(await handlers['library.state']({})).backups).toHaveLength(1)
  const outside = await handlers['library.restore']({ backup: '../library.sqlite' })
  expect(reasonOf(outside)).toBe('gone')
  expect(valueOf(await handlers['library.state']({})).state).toBe('open')
})

describe('the way back', () => {
  test('puts the backup in place of a damaged file and keeps that beside it', async () => {
    const folder = temporaryFolder()
    const first = await filled(folder, 30)
    valueOf(await first.tend())
    await first.close()
    const path = join(folder, 'library.sqlite')
    truncateSync(path, statSync(path).size - 3_000)
    const damaged = readFileSync(path)
    const { handlers } = await openedLibrary(folder)
    const { state, backups } = valueOf(await handlers['library.state']({}))
    expect(state).toBe('damaged')
    const { keptAs } = valueOf(await handlers['library.restore']({ backup: backups[0]?.name ?? '' }))
    expect(readFileSync(join(folder, keptAs)).equals(damaged)).toBe(true)
    expect(valueOf(await handlers['library.state']({}))).toMatchObject({ state: 'open', spotCount: 30 })
    valueOf(await handlers['library.apply']({ changes: [saved(spotRecord('new', 'a'))] }))
    expect(existsSync(join(backupFolder(folder), backups[0]?.name ?? ''))).toBe(true)
  })

  test('a log left by a killed process goes aside with its file and is not played into the backup', async () => {
    const folder = temporaryFolder()
    const first = await filled(folder, 10)
    valueOf(await first.tend())
    valueOf(await first.handlers['library.apply']({ changes: [saved(spotRecord('late', 'a'))] }))
    // As a killed process leaves it: file and log copied while open.
    const path = join(folder, 'library.sqlite')
    const [file, log] = [readFileSync(path), readFileSync(`${path}-wal`)]
    await first.close()
    writeFileSync(path, file.fill(0x5a, 5 * 4_096, 9 * 4_096))
    writeFileSync(`${path}-wal`, log)
    const { handlers } = await openedLibrary(folder)
    const [backup] = valueOf(await handlers['library.state']({})).backups
    const { keptAs } = valueOf(await handlers['library.restore']({ backup: backup?.name ?? '' }))
    expect(valueOf(await handlers['library.state']({}))).toMatchObject({ state: 'open', spotCount: 10 })
    expect(keptAs).not.toBe('')
  })

  test('goes back from a sound library too, and the version grows all the same', async () => {
    const folder = temporaryFolder()
    const { handlers, tend } = await filled(folder, 5)
    valueOf(await tend())
    for (const id of ['x', 'y']) valueOf(await handlers['library.apply']({ changes: [saved(spotRecord(id, 'a'))] }))
    const before = valueOf(await handlers['library.state']({}))
    const { keptAs } = valueOf(await handlers['library.restore']({ backup: before.backups[0]?.name ?? '' }))
    const after = valueOf(await handlers['library.state']({}))
    expect([before.spotCount, after.spotCount]).toEqual([7, 5])
    expect(after.version).toBeGreaterThan(before.version)
    expect(spotsIfGood(join(folder, keptAs))).toBe(7)
  })

  test('another window that has the replaced file open goes over to the new one', async () => {
    const folder = temporaryFolder()
    const one = await filled(folder, 5)
    valueOf(await one.tend())
    const other = await openedLibrary(folder)
    valueOf(await other.handlers['library.apply']({ changes: [saved(spotRecord('x', 'a'))] }))
    const [backup] = valueOf(await one.handlers['library.state']({})).backups
    valueOf(await one.handlers['library.restore']({ backup: backup?.name ?? '' }))
    valueOf(await other.handlers['library.apply']({ changes: [saved(spotRecord('y', 'a'))] }))
    for (const { handlers } of [one, other]) {
      const { spots } = valueOf(await handlers['library.open']({ shootId: 'a' }))
      expect(spots.map(({ id }) => id).toSorted()).toEqual(['s0', 's1', 's2', 's3', 's4', 'y'])
    }
  })

  test('refuses a backup that has gone bad since and leaves the library as it is', async () => {
    const folder = temporaryFolder()
    const { handlers, tend } = await filled(folder, 20)
    valueOf(await tend())
    const name = valueOf(await handlers['library.state']({})).backups[0]?.name ?? ''
    const file = join(backupFolder(folder), name)
    truncateSync(file, statSync(file).size - 3_000)
    expect(reasonOf(await handlers['library.restore']({ backup: name }))).toBe('damaged')
    expect(valueOf(await handlers['library.state']({}))).toMatchObject({ state: 'open', spotCount: 20 })
  })
})

test('words that no spot bears any longer are struck with the backup, those that are borne stay', async () => {
  const folder = temporaryFolder()
  const { handlers, tend } = await filled(folder, 1)
  valueOf(
    await handlers['library.apply']({ changes: [saved(spotRecord('w', 'a', { name: 'Weir', notes: 'Weirdd' }))] }),
  )
  valueOf(await handlers['library.apply']({ changes: [saved(spotRecord('w', 'a', { name: 'Weir' }), 1)] }))
  const listed = (): unknown => {
    const connection = connect(join(folder, 'library.sqlite'), { readonly: true })
    const words = connection.read.rows<{ word: string }>("SELECT word FROM word WHERE word LIKE 'weir%'")
    connection.close()
    return words.map(({ word }) => word)
  }
  expect(listed()).toEqual(['weir', 'weirdd'])
  valueOf(await tend())
  expect(listed()).toEqual(['weir'])
  expect(valueOf(await handlers['library.find']({ words: 'eir', within: null, limit: 5 })).total).toBe(1)
  expect(valueOf(await handlers['library.find']({ words: 'weirdd', within: null, limit: 5 })).total).toBe(0)
})
