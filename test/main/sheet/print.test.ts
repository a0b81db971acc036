/** Printing the sheet before a fake Electron: the page's own paper, a wait for its readiness, a file the user names. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { fakeElectron } from '#test/help/fake-electron.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'standpoint-print-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

async function printer(ready: unknown = true) {
  const fake = fakeElectron()
  fake.app.on('web-contents-created', (_event, contents: { scriptAnswer: unknown }) => {
    contents.scriptAnswer = ready
  })
  vi.resetModules()
  vi.doMock('electron', () => fake.mod)
  const { makePrinter } = await import('#main/sheet/print.ts')
  const session = fake.mod.session.fromPartition('persist:page') as never
  return { fake, ...makePrinter({ session, preload: 'p', icon: 'i' }, () => null, folder) }
}

const wish = { shootId: 's', spotId: 'a b&c', paper: 'letter', title: 'Harbour: evening', crop: null } as const

test('prints the sheet page hidden, on its own paper, with its colours, and saves where the user says', async () => {
  const { fake, print } = await printer()
  const path = join(folder, 'mine.pdf')
  fake.dialog.showSaveDialog.mockResolvedValue({ canceled: false, filePath: path })
  expect(await print(wish)).toEqual({ ok: true, value: { saved: true, name: 'mine.pdf' } })
  const [made] = fake.made
  expect(made?.options).toMatchObject({
    show: false,
    webPreferences: { sandbox: true, contextIsolation: true, nodeIntegration: false },
  })
  expect(made?.window.loaded).toEqual(['app://standpoint/sheet.html?shoot=s&spot=a+b%26c&paper=letter'])
  expect(made?.window.webContents.scripts.join()).toContain("dataset.ready === 'yes'")
  expect(made?.window.webContents.printed).toMatchObject([
    { preferCSSPageSize: true, printBackground: true, generateTaggedPDF: true },
  ])
  expect(made?.window.calls).toEqual(['destroy'])
  expect(fake.dialog.showSaveDialog.mock.calls[0]?.[0]).toMatchObject({
    defaultPath: join(folder, 'Harbour evening.pdf'),
  })
  expect(readFileSync(path, 'utf8')).toBe('%PDF-fake')
})

test('the sheet page is told of the crop that was chosen', async () => {
  const { fake, print } = await printer()
  fake.dialog.showSaveDialog.mockResolvedValue({ canceled: true, filePath: '' })
  await print({ ...wish, crop: { wide: 16, high: 9 } })
  const [loaded = ''] = fake.made[0]?.window.loaded ?? []
  expect(new URL(loaded).searchParams.get('crop')).toBe('16:9')
})

test('a user who cancels has saved nothing', async () => {
  const { fake, print } = await printer()
  fake.dialog.showSaveDialog.mockResolvedValue({ canceled: true, filePath: '' })
  expect(await print(wish)).toEqual({ ok: true, value: { saved: false, name: '' } })
})

test('a sheet that is never ready is told, asked nowhere, and its window is gone', async () => {
  const { fake, print } = await printer(false)
  expect(await print(wish)).toMatchObject({ ok: false, fault: { reason: 'not-ready' } })
  expect(fake.dialog.showSaveDialog).not.toHaveBeenCalled()
  expect([fake.made[0]?.window.calls, fake.made[0]?.window.webContents.printed]).toEqual([['destroy'], []])
})

test('a folder that cannot be written is told, with the name alone', async () => {
  const { fake, print } = await printer()
  fake.dialog.showSaveDialog.mockResolvedValue({ canceled: false, filePath: join(folder, 'none', 'x.pdf') })
  const answer = await print(wish)
  expect(answer).toMatchObject({ ok: false, fault: { reason: 'not-saved', message: expect.stringContaining('x.pdf') } })
})
