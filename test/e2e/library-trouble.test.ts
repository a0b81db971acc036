/** A library that does not open: what happened and the way back are said, and what is on the disk is never made worse. */
import { cpSync, readdirSync, readFileSync, rmSync, statSync, truncateSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest'
import { connect } from '#main/store/handle.ts'
import { NEWEST_FORM } from '#main/store/migrate.ts'
import { words } from '#renderer/words/en.ts'
import { startHost, temporaryData } from '#test/help/host.ts'
import { boardReady, library, soon } from './board.ts'
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
  await vi.waitFor(
    async () => {
      const { backups } = (await library(host, 'library.state', {})) as { backups: unknown[] }
      if (backups.length === 0) throw new Error('no backup has been made')
    },
    { timeout: 60_000, interval: 200 },
  )
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
