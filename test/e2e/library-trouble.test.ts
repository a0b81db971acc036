/** A library that does not open: what happened and the way back are said, and what is on the disk is never made worse. */
import { cpSync, readdirSync, readFileSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import { connect } from '#main/store/handle.ts'
import { NEWEST_FORM } from '#main/store/migrate.ts'
import { words } from '#renderer/words/en.ts'
import { eventually } from '#test/help/eventually.ts'
import { startHost, temporaryData } from '#test/help/host.ts'
import { boardReady, soon } from './board.ts'
import { library } from './library.ts'
import { type Opened, open } from './open.ts'
import { names } from './shelf.ts'

const say = words.board.trouble
const SPOTS = ['Track below Hallow Brae', 'Quennick harbour wall', 'Orvane lay-by']

/** A data folder with the demo and a good backup of it, closed: made once, copied for each test. */
let sample: Awaited<ReturnType<typeof temporaryData>>
let opened: Opened | null = null
let folder: Awaited<ReturnType<typeof temporaryData>>

beforeAll(async () => {
  sample = await temporaryData()
  const host = await startHost(sample.folder)
  // The program makes its daily backup some seconds after it has started.
  await eventually(async () => {
    const { backups } = (await library(host, 'library.state', {})) as { backups: unknown[] }
    if (backups.length === 0) throw new Error('no backup has been made')
  }, 60_000)
  await host.stop()
})
afterAll(() => sample.remove())

afterEach(async () => {
  await opened?.close()
  opened = null
  await folder.remove()
})

function libraryFolder(): string {
  return join(folder.folder, 'library')
}

async function copyOfSample(): Promise<string> {
  folder = await temporaryData()
  cpSync(sample.folder, folder.folder, { recursive: true })
  return join(libraryFolder(), 'library.sqlite')
}

describe('a library file cut short', () => {
  test('is told of, and the newest backup brings every spot back while the damaged file is kept', async () => {
    const path = await copyOfSample()
    truncateSync(path, Math.floor(statSync(path).size / 2))
    const damaged = readFileSync(path)
    opened = await open({ host: 'browser', data: folder.folder })
    const { page } = opened
    await page.getByRole('heading', { name: say.damaged }).waitFor()
    await page.getByRole('alert').filter({ hasText: 'cut short' }).waitFor()
    expect(readFileSync(path).equals(damaged)).toBe(true)
    await page.getByRole('button', { name: say.restoreNewest }).click()
    await boardReady(page)
    expect(await names(page)).toEqual(SPOTS)
    const kept = readdirSync(libraryFolder()).find((name) => name.startsWith('library-replaced-'))
    await page.getByText(say.restored(kept ?? 'nothing')).waitFor()
    expect(readFileSync(join(libraryFolder(), kept ?? '')).equals(damaged)).toBe(true)
  })

  test('without any backup says that there is none, and trying again says the same', async () => {
    const path = await copyOfSample()
    rmSync(join(libraryFolder(), 'backups'), { recursive: true })
    truncateSync(path, Math.floor(statSync(path).size / 2))
    opened = await open({ host: 'browser', data: folder.folder })
    const { page } = opened
    await page.getByText(say.noBackups).waitFor()
    await page.getByRole('button', { name: say.again }).click()
    await page.getByText(say.noBackups).waitFor()
    expect(await page.getByRole('button', { name: say.restoreNewest }).count()).toBe(0)
  })
})

describe('a record broken within a sound file', () => {
  async function openBroken(sql: string): Promise<Opened['page']> {
    const path = await copyOfSample()
    const writer = connect(path, { readonly: false })
    writer.immediately((handle) => handle.script(sql))
    writer.close()
    opened = await open({ host: 'browser', data: folder.folder })
    return opened.page
  }

  test('of a spot leaves the others on the shelf, and the backup that is offered brings it back', async () => {
    const page = await openBroken(`UPDATE spot SET document = substr(document, 1, 99) WHERE name = '${SPOTS[1]}'`)
    await boardReady(page)
    expect(await names(page)).toEqual([SPOTS[0], SPOTS[2]])
    await page.getByText(say.brokenSpots([SPOTS[1] ?? ''])).waitFor()
    await page.getByRole('button', { name: say.showBackups }).click()
    await page.getByRole('heading', { name: say.backupsTitle }).waitFor()
    await page.getByRole('button', { name: say.back }).click()
    await boardReady(page)
    await page.reload()
    await boardReady(page)
    await page.getByRole('button', { name: say.showBackups }).click()
    await page.getByRole('button', { name: say.restoreNewest }).click()
    await boardReady(page)
    await soon(async () => (await names(page)).length === SPOTS.length)
  })

  test('of the shoot says so, and the backup that is offered brings it back', async () => {
    const page = await openBroken(`UPDATE shoot SET document = '{'`)
    await page.getByRole('button', { name: say.showBackups }).click()
    await page.getByRole('button', { name: say.restoreNewest }).click()
    await boardReady(page)
    expect(await names(page)).toEqual(SPOTS)
  })
})

test('a library written over while it is open is told, and the backup brings it back', async () => {
  const path = await copyOfSample()
  opened = await open({ host: 'browser', data: folder.folder })
  const { page } = opened
  await boardReady(page)
  writeFileSync(path, 'A letter, no library. '.repeat(5_000))
  await page.getByRole('heading', { name: say.damaged }).waitFor()
  await page.getByRole('button', { name: say.restoreNewest }).click()
  await boardReady(page)
  expect(await names(page)).toEqual(SPOTS)
})

test('a backup that could not be made is told', async () => {
  await copyOfSample()
  const backups = join(libraryFolder(), 'backups')
  rmSync(backups, { recursive: true })
  writeFileSync(backups, 'a file where the folder should be')
  opened = await open({ host: 'browser', data: folder.folder })
  await boardReady(opened.page)
  await opened.page.getByText(say.backupNotMade('unavailable')).waitFor({ timeout: 60_000 })
})

test('a library of a newer version is named so, offers no backup to put over it, and stays as it was', async () => {
  const path = await copyOfSample()
  const writer = connect(path, { readonly: false })
  writer.immediately((handle) => handle.script(`PRAGMA user_version = ${NEWEST_FORM + 10}`))
  writer.close()
  const before = readFileSync(path)
  opened = await open({ host: 'browser', data: folder.folder })
  const { page } = opened
  await page.getByRole('heading', { name: say.newer }).waitFor()
  await page.getByRole('alert').filter({ hasText: 'update the program' }).waitFor()
  expect(await page.getByRole('button', { name: say.restoreNewest }).count()).toBe(0)
  await page.getByRole('button', { name: say.again }).click()
  await page.getByRole('heading', { name: say.newer }).waitFor()
  await soon(() => readFileSync(path).equals(before))
})
