/** A fake of what the shell uses of Electron: it records what it is told and simulates nothing but events. */
import { EventEmitter } from 'node:events'
import { vi } from 'vitest'

export interface Made {
  readonly options: Record<string, unknown>
  readonly window: FakeWindow
}

export class FakeContents extends EventEmitter {
  openHandler: ((details: { url: string }) => { action: string }) | null = null
  readonly sent: unknown[][] = []
  readonly scripts: string[] = []
  scriptAnswer: unknown = true
  readonly printed: unknown[] = []
  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.openHandler = handler
  }
  send(...words: unknown[]): void {
    this.sent.push(words)
  }
  crashed = false
  isCrashed = (): boolean => this.crashed
  async executeJavaScript(script: string): Promise<unknown> {
    this.scripts.push(script)
    return await this.scriptAnswer
  }
  async printToPDF(options: unknown): Promise<Buffer> {
    this.printed.push(options)
    return Buffer.from('%PDF-fake')
  }
}

export class FakeWindow extends EventEmitter {
  readonly webContents = new FakeContents()
  readonly loaded: string[] = []
  readonly calls: string[] = []
  minimized = false
  async loadURL(url: string): Promise<void> {
    this.loaded.push(url)
  }
  isMinimized(): boolean {
    return this.minimized
  }
  show = (): void => void this.calls.push('show')
  focus = (): void => void this.calls.push('focus')
  restore = (): void => void this.calls.push('restore')
  reload = (): void => void this.calls.push('reload')
  destroy = (): void => void this.calls.push('destroy')
  gone = false
  isDestroyed = (): boolean => this.gone
  /** As Electron closes a window: it may be prevented, else the page is gone. */
  close = (): void => {
    const preventDefault = vi.fn()
    this.emit('close', { preventDefault })
    if (preventDefault.mock.calls.length > 0) return
    this.gone = true
    this.calls.push('closed')
    this.emit('closed')
  }
}

export class FakeSession {
  readonly name: string
  permissionRequest: ((...words: never[]) => void) | null = null
  permissionCheck: (() => boolean) | null = null
  devicePermission: (() => boolean) | null = null
  beforeRequest: ((details: { url: string }, answer: (verdict: { cancel: boolean }) => void) => void) | null = null
  readonly handlers = new Map<string, (request: Request) => Promise<Response>>()
  readonly fetched: unknown[][] = []
  constructor(name: string) {
    this.name = name
  }
  setPermissionRequestHandler = (handler: (...words: never[]) => void): void => void (this.permissionRequest = handler)
  setPermissionCheckHandler = (handler: () => boolean): void => void (this.permissionCheck = handler)
  setDevicePermissionHandler = (handler: () => boolean): void => void (this.devicePermission = handler)
  webRequest = {
    onBeforeRequest: (handler: NonNullable<FakeSession['beforeRequest']>): void => void (this.beforeRequest = handler),
  }
  protocol = {
    handle: (scheme: string, handler: (request: Request) => Promise<Response>): void =>
      void this.handlers.set(scheme, handler),
  }
  fetch = async (...words: unknown[]): Promise<Response> => {
    this.fetched.push(words)
    return new Response('')
  }
}

/** One program start's worth of Electron. `order` lists what was done before anything else could be. */
export function fakeElectron(lock = true) {
  const order: string[] = []
  const made: Made[] = []
  const sessions = new Map<string, FakeSession>()
  const sessionOf = (name: string): FakeSession => {
    const known = sessions.get(name) ?? new FakeSession(name)
    sessions.set(name, known)
    return known
  }
  const ready = Promise.withResolvers<void>()
  const schemes: unknown[] = []
  const invoked = new Map<string, (event: unknown, ...words: unknown[]) => Promise<unknown>>()
  const outside: string[] = []
  const errors: string[] = []
  const app = Object.assign(new EventEmitter(), {
    isPackaged: true,
    paths: new Map<string, string>(),
    setPath: (name: string, path: string): void => void app.paths.set(name, path),
    setAppLogsPath: (): void => undefined,
    getPath: (name: string): string => `/${name}`,
    getVersion: (): string => '0.0.0',
    enableSandbox: (): void => void order.push('sandbox'),
    requestSingleInstanceLock: (): boolean => {
      order.push('lock')
      return lock
    },
    /** As Electron quits: windows are closed, any of them may prevent it, then the end itself may be prevented. */
    quit: vi.fn(() => {
      app.emit('before-quit', {})
      for (const { window } of made) if (!window.gone) window.close()
      if (made.some(({ window }) => !window.gone)) return
      const preventDefault = vi.fn()
      app.emit('will-quit', { preventDefault })
      if (preventDefault.mock.calls.length === 0) order.push('ended')
    }),
    exit: vi.fn(),
    whenReady: (): Promise<void> => {
      order.push('wait')
      return ready.promise
    },
  })
  class BrowserWindow extends FakeWindow {
    constructor(options: Record<string, unknown>) {
      super()
      order.push('window')
      made.push({ options, window: this })
      app.emit('web-contents-created', {}, this.webContents)
    }
  }
  const dialog = {
    showErrorBox: (title: string): void => void errors.push(title),
    showMessageBox: vi.fn(async () => ({ response: 0 })),
    showSaveDialog: vi.fn(async (..._words: unknown[]) => ({ canceled: false, filePath: '' })),
  }
  const mod = {
    app,
    BrowserWindow,
    Menu: {
      setApplicationMenu: vi.fn(),
      buildFromTemplate: vi.fn((template: unknown) => template),
    },
    crashReporter: { start: vi.fn((options: unknown) => options) },
    dialog,
    ipcMain: {
      handle: (channel: string, handler: (event: unknown, ...words: unknown[]) => Promise<unknown>): void =>
        void invoked.set(channel, handler),
    },
    protocol: {
      registerSchemesAsPrivileged: (list: unknown): void => {
        order.push('schemes')
        schemes.push(list)
      },
      handle: (): void => {
        throw new Error('the handler belongs to the page session, not to the global protocol')
      },
    },
    powerMonitor: new EventEmitter(),
    safeStorage: {
      isAsyncEncryptionAvailable: async () => false,
      getSelectedStorageBackend: () => 'basic_text',
    },
    session: { fromPartition: sessionOf, defaultSession: sessionOf('default') },
    shell: { openExternal: async (url: string): Promise<void> => void outside.push(url) },
  }
  return { mod, app, order, made, sessions, schemes, invoked, outside, errors, dialog, becomeReady: ready.resolve }
}
