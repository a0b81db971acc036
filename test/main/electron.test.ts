/** The Electron entry before a fake Electron: order, switches, and every way out of the page that must stay shut. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { done, failed, type Result } from '#core/result.ts'
import { CHANNELS } from '#app/bridge.ts'
import { HEADERS } from '#main/serve.ts'
import { eventually } from '#test/help/eventually.ts'
import { FakeContents, fakeElectron } from '#test/help/fake-electron.ts'
import { stubHandlers } from '#test/help/stub-handlers.ts'

type Fake = ReturnType<typeof fakeElectron>

let folder: string
let closed: number
let closing: Promise<void>
const given: {
  sound?: Result<null>
  data?: Promise<Result<null>>
  dataSound?: () => Promise<Result<null>>
  fetch?: (url: string, headers: Headers, signal: AbortSignal) => Promise<Response>
} = {}
const words = process.argv

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'standpoint-shell-'))
  process.env['STANDPOINT_DATA'] = folder
  closed = 0
  closing = Promise.resolve()
})

afterEach(() => {
  process.argv = words
  delete process.env['STANDPOINT_DATA']
  for (const name of ['uncaughtException', 'unhandledRejection'])
    for (const listener of process.listeners(name as 'uncaughtException'))
      if (String(listener).includes('log.error')) process.off(name, listener)
  rmSync(folder, { recursive: true, force: true })
})

async function load(lock = true): Promise<Fake> {
  const fake = fakeElectron(lock)
  vi.resetModules()
  vi.doMock('electron', () => fake.mod)
  vi.doMock('#main/services.ts', () => ({
    openServices: async (options: typeof given) => {
      given.fetch = options.fetch as NonNullable<(typeof given)['fetch']>
      given.dataSound = options.dataSound as NonNullable<(typeof given)['dataSound']>
      return {
        handlers: stubHandlers({ 'library.shoots': () => done({ shoots: [] }) }),
        tilePrefix: '/tiles/key',
        tiles: async () => ({
          status: 200,
          type: 'image/png',
          body: new Uint8Array([1]),
          maxAgeSeconds: 1,
          retryAfterSeconds: null,
        }),
        close: async () => {
          closed += 1
          await closing
        },
      }
    },
  }))
  vi.doMock('#main/unpacked-check.ts', () => ({
    checkAddon: async () => given.sound ?? done(null),
    checkUnpackedData: async () => given.data ?? done(null),
  }))
  vi.doMock('#main/serve.ts', async (original) => ({
    ...(await original<typeof import('#main/serve.ts')>()),
    readPage: async () => new Map([['/index.html', { type: 'text/html; charset=utf-8', body: new Uint8Array([60]) }]]),
  }))
  await import('#main/electron.ts')
  return fake
}

async function started(): Promise<Fake & { window: Fake['made'][number] }> {
  const fake = await load()
  fake.becomeReady()
  await eventually(() => expect(fake.made).toHaveLength(1))
  const [window] = fake.made
  if (!window) throw new Error('no window')
  return { ...fake, window }
}

let shared: ReturnType<typeof started> | null = null

/** One start for all tests that only look and ask; `outside` begins empty for each. */
async function running(): ReturnType<typeof started> {
  shared ??= started()
  const fake = await shared
  fake.outside.length = 0
  return fake
}

describe('before it is ready', () => {
  test('schemes, sandbox and lock come first, and nothing is made yet', async () => {
    const fake = await load()
    expect(fake.order).toEqual(['schemes', 'sandbox', 'lock', 'wait'])
    expect(fake.made).toEqual([])
  })

  test('the scheme has exactly these privileges', async () => {
    const fake = await load()
    expect(fake.schemes).toEqual([
      [{ scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } }],
    ])
  })

  test('all of it lives in the named folder, and crash reports leave nothing', async () => {
    const fake = await load()
    expect([fake.app.paths.get('userData'), fake.app.paths.get('sessionData')]).toEqual([
      folder,
      join(folder, 'chromium'),
    ])
    expect(fake.mod.crashReporter.start.mock.calls).toEqual([[{ uploadToServer: false }]])
  })

  test('a second instance opens nothing and leaves', async () => {
    const fake = await load(false)
    fake.becomeReady()
    await new Promise(setImmediate)
    expect(fake.app.quit).toHaveBeenCalledOnce()
    expect([fake.made, fake.invoked.size, fake.order.includes('wait')]).toEqual([[], 0, false])
  })
})

describe('told to whoever started it', () => {
  const stage = (): string => readFileSync(join(folder, 'stage'), 'utf8')
  beforeEach(() => {
    process.env['STANDPOINT_START_STAGE'] = join(folder, 'stage')
  })
  afterEach(() => {
    delete process.env['STANDPOINT_START_STAGE']
  })

  test('is that there is a window, and when it shows', async () => {
    const { window } = await started()
    expect(stage()).toBe('window')
    window.window.emit('show')
    expect(stage()).toBe('shown')
  })

  test('is that another instance has come to the front', async () => {
    await load(false)
    expect(stage()).toBe('handed-over')
  })
})

test('a data folder that cannot be used is told in words, and nothing is begun', async () => {
  writeFileSync(join(folder, 'taken'), '')
  process.env['STANDPOINT_DATA'] = join(folder, 'taken')
  const fake = await load()
  expect(fake.errors).toEqual(['Standpoint could not start'])
  expect(fake.app.exit.mock.calls).toEqual([[1]])
  expect(fake.order).not.toContain('lock')
})

test('an addon that is not the one packed is told, and nothing is opened', async () => {
  given.sound = failed('not-as-packed', 'Install the program again.')
  const fake = await load()
  fake.becomeReady()
  await eventually(() => expect(fake.app.exit).toHaveBeenCalledWith(1))
  delete given.sound
  expect([fake.errors, fake.made, fake.invoked.size]).toEqual([['Standpoint could not start'], [], 0])
})

test('packed data is looked at while the window opens; where it is not what was packed, that is told and the program ends', async () => {
  const check = Promise.withResolvers<Result<null>>()
  given.data = check.promise
  const fake = await load()
  fake.becomeReady()
  await eventually(() => expect(fake.made).toHaveLength(1))
  expect([fake.errors, fake.app.exit.mock.calls]).toEqual([[], []])
  const read = given.dataSound?.()
  check.resolve(failed('not-as-packed', 'Install the program again.'))
  delete given.data
  // Whoever was to read of it hears of it when the end is settled.
  expect((await read)?.ok).toBe(false)
  expect(fake.errors).toEqual(['Standpoint has to end'])
  // As at any other end: the page saves what it shows, then the library is closed.
  await eventually(() => expect(fake.order).toContain('ended'))
  expect([closed, fake.app.exit.mock.calls]).toEqual([1, []])
})

describe('the page', () => {
  test('is shut off from the machine', async () => {
    const { window, sessions } = await running()
    const preferences = window.options['webPreferences'] as Record<string, unknown>
    expect(preferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
    })
    expect(preferences['session']).toBe(sessions.get('persist:page'))
    expect(preferences).not.toHaveProperty('enableBlinkFeatures')
    expect(preferences).not.toHaveProperty('additionalArguments')
    expect(window.window.loaded).toEqual(['app://standpoint/index.html'])
  })

  test.each([
    'https://evil.example/',
    'http://www.openstreetmap.org/copyright',
    'https://www.openstreetmap.org.evil.example/',
    'https://www.openstreetmap.org@evil.example/',
    'https://user@www.openstreetmap.org/',
    'https://www.openstreetmap.org:8443/',
    'file:///etc/passwd',
    'javascript:alert(1)',
    'app://standpoint/index.html',
    'smb://host/share',
    'mailto:a@example.org',
    'not an address',
    '',
  ])('opens no window and no browser for %j', async (url) => {
    const { window, outside } = await running()
    expect(window.window.webContents.openHandler?.({ url })).toEqual({ action: 'deny' })
    expect(outside).toEqual([])
  })

  test('hands a credited site to the browser, once, and opens no window', async () => {
    const { window, outside } = await running()
    const url = 'https://www.openstreetmap.org/copyright'
    expect(window.window.webContents.openHandler?.({ url })).toEqual({ action: 'deny' })
    expect(outside).toEqual([url])
  })

  test.each(['will-navigate', 'will-redirect', 'will-frame-navigate'])('%s stays on the page', async (name) => {
    const { window } = await running()
    const stopped = (url: string): boolean => {
      const preventDefault = vi.fn()
      window.window.webContents.emit(name, { url, preventDefault })
      return preventDefault.mock.calls.length > 0
    }
    expect(stopped('app://standpoint/sheet.html?spot=1')).toBe(false)
    for (const url of [
      'app://standpoint.evil/',
      'app://standpoint:1/',
      'app://evil/standpoint',
      'app://standpoint@evil/',
      'app:standpoint',
      'https://standpoint/',
      'file:///index.html',
      'data:text/html,x',
      'about:blank',
      'junk',
    ])
      expect(stopped(url), url).toBe(true)
  })

  test('attaches no webview, in whatever window', async () => {
    const { app } = await running()
    const later = new FakeContents()
    app.emit('web-contents-created', {}, later)
    const preventDefault = vi.fn()
    later.emit('will-attach-webview', { preventDefault })
    expect(preventDefault).toHaveBeenCalledOnce()
    expect(later.openHandler?.({ url: 'https://evil.example/' })).toEqual({ action: 'deny' })
  })

  test('is granted nothing, in any session', async () => {
    const { sessions } = await running()
    expect([...sessions.keys()].toSorted()).toEqual(['default', 'persist:net', 'persist:page'])
    for (const session of sessions.values()) {
      const answer = vi.fn()
      session.permissionRequest?.(...([null, 'geolocation', answer] as never[]))
      expect(answer.mock.calls).toEqual([[false]])
      expect(session.permissionCheck?.()).toBe(false)
      expect(session.devicePermission?.()).toBe(false)
    }
  })

  test('reaches no network; the tiles have a session of their own', async () => {
    const { sessions } = await running()
    const allowed = (url: string): boolean => {
      let cancelled: boolean | undefined
      sessions.get('persist:page')?.beforeRequest?.({ url }, (verdict) => (cancelled = verdict.cancel))
      return cancelled === false
    }
    expect(['app://standpoint/index.html', 'blob:app://standpoint/1', 'data:image/png;base64,'].map(allowed)).toEqual([
      true,
      true,
      true,
    ])
    for (const url of [
      'https://tile.openstreetmap.org/0/0/0.png',
      'app://standpoint.evil/',
      'blob:https://evil.example/1',
      'http://127.0.0.1/',
      'ws://127.0.0.1/',
      'file:///etc/passwd',
      'devtools://devtools/x',
    ])
      expect(allowed(url), url).toBe(false)
    await given.fetch?.('https://tile.example/0/0/0', new Headers({ a: 'b' }), new AbortController().signal)
    expect(sessions.get('persist:net')?.fetched).toMatchObject([
      ['https://tile.example/0/0/0', { redirect: 'manual', credentials: 'omit' }],
    ])
    expect(sessions.get('persist:page')?.fetched).toEqual([])
  })
})

describe('the protocol', () => {
  test.each([
    ['app://standpoint/index.html', 200],
    ['app://standpoint/nothing', 404],
    ['app://standpoint/../../etc/passwd', 404],
    ['app://standpoint/%2e%2e%2fmain/electron.js', 404],
    ['app://standpoint.evil/index.html', 404],
    ['app://evil/index.html', 404],
  ])('%s is answered %i with all headers', async (address, status) => {
    const { sessions } = await running()
    const answer = await sessions.get('persist:page')?.handlers.get('app')?.(new Request(address))
    expect(answer?.status).toBe(status)
    for (const [name, value] of Object.entries(HEADERS)) expect(answer?.headers.get(name)).toBe(value)
  })

  test('is there before the first window asks for its page', async () => {
    const fake = await load()
    let thereWhenMade = false
    fake.app.on('web-contents-created', () => {
      thereWhenMade = fake.sessions.get('persist:page')?.handlers.has('app') === true && fake.invoked.size === 1
    })
    fake.becomeReady()
    await eventually(() => expect(fake.made).toHaveLength(1))
    expect(thereWhenMade).toBe(true)
  })
})

describe('calls', () => {
  const own = { url: 'app://standpoint/index.html', parent: null }

  test('from the top frame of the page are answered', async () => {
    const { invoked } = await running()
    expect(await invoked.get(CHANNELS.call)?.({ senderFrame: own }, 'library.shoots', {})).toEqual({
      ok: true,
      value: { shoots: [] },
    })
  })

  test.each([
    ['a frame that is gone', null],
    ['no frame', undefined],
    ['a frame within the page', { ...own, parent: own }],
    ['another site', { url: 'https://evil.example/', parent: null }],
    ['a look-alike', { url: 'app://standpoint.evil/index.html', parent: null }],
    ['a file', { url: 'file:///index.html', parent: null }],
    ['an empty page', { url: 'about:blank', parent: null }],
    ['nothing', { url: '', parent: null }],
  ])('from %s are refused', async (_name, senderFrame) => {
    const { invoked } = await running()
    expect(await invoked.get(CHANNELS.call)?.({ senderFrame }, 'library.shoots', {})).toMatchObject({
      ok: false,
      fault: { reason: 'refused' },
    })
  })

  test('have one channel', async () => {
    const { invoked } = await running()
    expect([...invoked.keys()]).toEqual([CHANNELS.call])
  })
})

describe('files and instances', () => {
  const shootFile = (): string => {
    const path = join(folder, 'trip 1.standpoint')
    writeFileSync(path, '{"format":"standpoint-shoot"}')
    return path
  }
  const told = (window: Fake['made'][number]): unknown[] =>
    window.window.webContents.sent.filter(([channel]) => channel === CHANNELS.file).map(([, file]) => file)
  const file = { name: 'trip 1.standpoint', text: '{"format":"standpoint-shoot"}' }

  test('a second start brings the window to the front and hands over its file', async () => {
    const { app, window } = await started()
    window.window.minimized = true
    window.window.webContents.emit('did-finish-load')
    app.emit('second-instance', {}, ['standpoint', '--flag=x.standpoint', 'other.txt'], folder)
    expect(window.window.calls).toEqual(['restore', 'show', 'focus'])
    shootFile()
    app.emit('second-instance', {}, ['standpoint', 'trip 1.standpoint'], folder)
    await eventually(() => expect(told(window)).toEqual([file]))
  })

  test('a file of the first command line waits for the page', async () => {
    process.argv = ['electron', '.', shootFile()]
    const { window } = await started()
    expect(told(window)).toEqual([])
    window.window.webContents.emit('did-finish-load')
    await eventually(() => expect(told(window)).toEqual([file]))
  })

  test("a file by the system's event waits for the page", async () => {
    const fake = await load()
    const preventDefault = vi.fn()
    fake.app.emit('open-file', { preventDefault }, shootFile())
    expect(preventDefault).toHaveBeenCalledOnce()
    fake.becomeReady()
    await eventually(() => expect(fake.made).toHaveLength(1))
    fake.made[0]?.window.webContents.emit('did-finish-load')
    await eventually(() => expect(fake.made[0] && told(fake.made[0])).toEqual([file]))
  })

  test('a file that is not there is said', async () => {
    const { app, window, errors } = await started()
    window.window.webContents.emit('did-finish-load')
    app.emit('second-instance', {}, ['standpoint', 'gone.standpoint'], folder)
    await eventually(() => expect(errors).toEqual(['The file was not opened']))
  })
})

test('a page that crashed is offered again', async () => {
  const { window, dialog } = await started()
  window.window.webContents.emit('render-process-gone', {}, { reason: 'crashed', exitCode: 1 })
  await eventually(() => expect(window.window.calls).toEqual(['reload']))
  expect(dialog.showMessageBox).toHaveBeenCalledOnce()
})

describe('the end', () => {
  /** The page is asked to save, and answers when the test says so. */
  async function asked() {
    const fake = await started()
    const page = Promise.withResolvers<boolean>()
    const contents = fake.window.window.webContents
    contents.scriptAnswer = page.promise
    return { ...fake, contents, page, calls: fake.window.window.calls }
  }
  const settled = () => new Promise(setImmediate)

  test('of a window waits until the page has saved; then it closes, the services close, and only then the program ends', async () => {
    const { app, order, window, contents, page, calls } = await asked()
    window.window.close()
    window.window.close()
    await settled()
    expect([calls, contents.scripts.length]).toEqual([[], 1])
    expect(contents.scripts[0]).toContain('standpointLeave')
    page.resolve(true)
    await eventually(() => expect(calls).toEqual(['closed']))
    let release = (): void => {}
    closing = new Promise((resolve) => {
      release = resolve
    })
    app.emit('window-all-closed')
    await settled()
    expect([closed, order.includes('ended')]).toEqual([1, false])
    release()
    await eventually(() => expect(order).toContain('ended'))
    expect(closed).toBe(1)
  })

  test('of the program by its menu or a signal does the same', async () => {
    const { app, order, page, calls } = await asked()
    app.quit()
    await settled()
    expect([calls, order.includes('ended'), closed]).toEqual([[], false, 0])
    page.resolve(true)
    await eventually(() => expect(order).toContain('ended'))
    expect([calls, closed]).toEqual([['closed'], 1])
  })

  test.each(['query-session-end', 'shutdown'])('%s is held up until all is saved', async (name) => {
    const { mod, order, window, page } = await asked()
    const preventDefault = vi.fn()
    const from = name === 'shutdown' ? mod.powerMonitor : window.window
    from.emit(name, { preventDefault })
    expect(preventDefault).toHaveBeenCalledOnce()
    await settled()
    expect(order).not.toContain('ended')
    page.resolve(true)
    await eventually(() => expect(order).toContain('ended'))
  })

  test('is put to the user when something could not be saved: kept open, the next try asks again', async () => {
    const { app, order, dialog, page, contents, calls } = await asked()
    page.resolve(false)
    app.quit()
    await eventually(() => expect(dialog.showMessageBox).toHaveBeenCalledOnce())
    await settled()
    expect([calls, order.includes('ended')]).toEqual([[], false])
    contents.scriptAnswer = true
    app.quit()
    await eventually(() => expect(order).toContain('ended'))
  })

  test('goes on without what could not be saved when the user says so', async () => {
    const { app, order, dialog, page } = await asked()
    dialog.showMessageBox.mockImplementation(async () => ({ response: 1 }))
    page.resolve(false)
    app.quit()
    await eventually(() => expect(order).toContain('ended'))
  })

  test('a window kept open after "Quit" closes alone the next time', async () => {
    const { app, order, dialog, page, contents, calls, window } = await asked()
    page.resolve(false)
    app.quit()
    await eventually(() => expect(dialog.showMessageBox).toHaveBeenCalledOnce())
    await settled()
    contents.scriptAnswer = true
    window.window.close()
    await eventually(() => expect(calls).toEqual(['closed']))
    expect(order).not.toContain('ended')
  })

  test('does not wait for a page that has crashed, and asks about one that fails to answer', async () => {
    const { window, contents, dialog, page, calls } = await asked()
    page.reject(new Error('the page is gone'))
    window.window.close()
    await eventually(() => expect(dialog.showMessageBox).toHaveBeenCalledOnce())
    await settled()
    expect(calls).toEqual([])
    contents.crashed = true
    window.window.close()
    expect(calls).toEqual(['closed'])
  })

  test('comes also when the services cannot be closed', async () => {
    const { app, order, page } = await asked()
    closing = Promise.reject(new Error('the disk is gone'))
    page.resolve(true)
    app.quit()
    await eventually(() => expect(order).toContain('ended'))
  })
})

test('every command of the table is in the menu and reaches the page', async () => {
  const { mod, window } = await started()
  const { COMMANDS } = await import('#app/commands.ts')
  type Item = { id?: string; accelerator?: string; role?: string; click?: () => void; submenu?: Item[] }
  const template = mod.Menu.buildFromTemplate.mock.calls[0]?.[0] as Item[]
  const items = template.flatMap((menu) => menu.submenu ?? []).filter((item) => item.id !== undefined)
  expect(items.map((item) => [item.id, item.accelerator])).toEqual(COMMANDS.map((one) => [one.id, one.accelerator]))
  for (const item of items) item.click?.()
  expect(window.window.webContents.sent).toEqual(COMMANDS.map((one) => [CHANNELS.command, one.id]))
  expect(JSON.stringify(template)).not.toMatch(/toggleDevTools|forceReload/)
})
