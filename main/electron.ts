/** The Electron shell's entry: wires windows, menu and protocol to the services and keeps everything else shut. */
import { homedir } from 'node:os'
import { join } from 'node:path'
import { app, BrowserWindow, crashReporter, dialog, powerMonitor, protocol, session } from 'electron'
import { CHANNELS } from '#app/bridge.ts'
import { done } from '#core/result.ts'
import { tellStage } from '#app/start-stage.ts'
import { electronCipher } from './cipher.ts'
import { confineAllPages, cutFromNetwork, refusePermissions } from './confine.ts'
import { dataFolder, prepareDataFolder } from './data-folder.ts'
import { openIpcDoor } from '#main/door/ipc.ts'
import { readOpened, shootFilesAmong } from '#main/files/opened.ts'
import { leaveInOrder } from './leaving.ts'
import { type Log, openLog } from './log.ts'
import { showMenu } from './menu.ts'
import { APP_SCHEME, isOwnPage } from './navigation.ts'
import { makeServe, readPage } from './serve.ts'
import { openServices } from './services.ts'
import { makePrinter } from '#main/sheet/print.ts'
import { openMainWindow, windowFiles, type WindowParts } from './window.ts'
import { checkAddon, checkUnpackedData, type Soundness } from './unpacked-check.ts'
import { logProcessFaults } from './process-faults.ts'

const BUILT = join(import.meta.dirname, '..')
const ROOT = join(BUILT, '..')

let mainWindow: BrowserWindow | null = null
/** Files asked for before the page could hear of them. */
const waiting: string[] = []
let pageHears = false

protocol.registerSchemesAsPrivileged([
  { scheme: APP_SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
])
app.enableSandbox()
const folder = dataFolder(process.env, process.platform, homedir())
const prepared = prepareDataFolder(folder)
if (prepared.ok) {
  app.setPath('userData', folder)
  app.setPath('sessionData', join(folder, 'chromium'))
  app.setAppLogsPath(join(folder, 'logs'))
  crashReporter.start({ uploadToServer: false })
}

if (!prepared.ok) {
  dialog.showErrorBox('Standpoint could not start', prepared.fault.message)
  app.exit(1)
} else if (app.requestSingleInstanceLock()) {
  const log = openLog(join(folder, 'logs'))
  confineAllPages(app)
  logProcessFaults(app, log)
  app.on('second-instance', (_event, words, workingFolder) => {
    showFront()
    openFiles(shootFilesAmong(words.slice(1), workingFolder), log)
  })
  // macOS tells files by an event, also before the program is ready.
  app.on('open-file', (event, path) => {
    event.preventDefault()
    openFiles(shootFilesAmong([path], '/'), log)
  })
  openFiles(shootFilesAmong(process.argv.slice(1), process.cwd()), log)
  app.whenReady().then(
    () => start(log),
    (error: unknown) => giveUp(log, error),
  )
} else {
  tellStage('handed-over')
  app.quit()
}

async function start(log: Log): Promise<void> {
  try {
    const sound = app.isPackaged ? await checkAddon(ROOT, BUILT) : null
    if (sound?.ok === false) return refuse(log, sound.fault.message)
    await openShell(log)
  } catch (error) {
    giveUp(log, error)
  }
}

let dataCheck: Promise<Soundness> | null = null

/** Checks the data beside the archive, once: where it is another than was packed, nobody reads of it and the program ends. */
function dataSound(log: Log): Promise<Soundness> {
  dataCheck ??= (app.isPackaged ? checkUnpackedData(ROOT, BUILT) : Promise.resolve(done(null))).then((sound) => {
    if (sound.ok) return sound
    log.error('data-not-as-packed', { why: sound.fault.message })
    dialog.showErrorBox('Standpoint has to end', sound.fault.message)
    // In order, since a window is open: what was changed in it is saved first.
    app.quit()
    return sound
  })
  return dataCheck
}

function refuse(log: Log, why: string): void {
  log.error('start-refused', { why })
  dialog.showErrorBox('Standpoint could not start', why)
  app.exit(1)
}

function giveUp(log: Log, error: unknown): void {
  log.error('start-failed', { error })
  dialog.showErrorBox('Standpoint could not start', `The log in ${join(folder, 'logs')} tells why.`)
  app.exit(1)
}

async function openShell(log: Log): Promise<void> {
  const development = !app.isPackaged
  const pageSession = session.fromPartition('persist:page')
  const netSession = session.fromPartition('persist:net')
  for (const one of [pageSession, netSession, session.defaultSession]) refusePermissions(one)
  cutFromNetwork(pageSession, development)
  cutFromNetwork(session.defaultSession, development)
  const parts: WindowParts = { session: pageSession, ...windowFiles(import.meta.dirname) }
  const services = await openServices({
    folder,
    built: BUILT,
    log,
    host: 'electron',
    version: app.getVersion(),
    // Chromium's stack knows the system's proxy; caching is the tile service's own work.
    fetch: (url, headers, signal) =>
      netSession.fetch(url, { headers, signal, redirect: 'manual', cache: 'no-store', credentials: 'omit' }),
    cipher: await electronCipher(),
    printer: makePrinter(parts, () => mainWindow, app.getPath('documents')),
    dataSound: () => dataSound(log),
  })
  const serve = makeServe({
    files: await readPage(join(BUILT, 'page')),
    isOurs: (url) => isOwnPage(url.href),
    tilePrefix: services.tilePrefix,
    tiles: services.tiles,
    groundPrefix: services.groundPrefix,
    ground: services.ground,
  })
  pageSession.protocol.handle(APP_SCHEME, serve)
  openIpcDoor(services.handlers, log)
  showMenu({
    mac: process.platform === 'darwin',
    development,
    send: (id) => mainWindow?.webContents.send(CHANNELS.command, id),
  })
  const hold = leaveInOrder({ app, dialog, powerMonitor, log, closeServices: () => services.close() })
  const open = (): void => hold(openWindow(parts, log))
  app.on('activate', () => {
    if (mainWindow === null) open()
  })
  app.on('window-all-closed', () => {
    if (process.platform !== 'darwin') app.quit()
  })
  open()
  // Not before: it reads some 30 MB, and the window would wait for them.
  await dataSound(log)
}

function openWindow(parts: WindowParts, log: Log): BrowserWindow {
  const window = openMainWindow(parts)
  mainWindow = window
  tellStage('window')
  window.once('show', () => tellStage('shown'))
  window.webContents.on('did-start-loading', () => {
    pageHears = false
  })
  window.webContents.on('did-finish-load', () => {
    pageHears = true
    openFiles(waiting.splice(0), log)
  })
  window.webContents.on('render-process-gone', (_event, details) => {
    if (details.reason !== 'clean-exit') void offerReload(window)
  })
  window.on('closed', () => {
    mainWindow = null
    pageHears = false
  })
  return window
}

/** Every change was saved when it was made: after a crash of the page a reload brings all of it back. */
async function offerReload(window: BrowserWindow): Promise<void> {
  const answer = await dialog.showMessageBox(window, {
    type: 'warning',
    message: 'The page stopped working. Everything you changed is saved.',
    buttons: ['Reload', 'Quit'],
    defaultId: 0,
  })
  if (answer.response === 0) window.reload()
  else app.quit()
}

function showFront(): void {
  if (mainWindow === null) return
  if (mainWindow.isMinimized()) mainWindow.restore()
  mainWindow.show()
  mainWindow.focus()
}

function openFiles(paths: readonly string[], log: Log): void {
  for (const path of paths) {
    if (pageHears) void tellFile(path, log)
    else waiting.push(path)
  }
}

async function tellFile(path: string, log: Log): Promise<void> {
  const file = await readOpened(path)
  if (file.ok) mainWindow?.webContents.send(CHANNELS.file, file.value)
  else {
    log.error('file-not-opened', { reason: file.fault.reason })
    dialog.showErrorBox('The file was not opened', file.fault.message)
  }
}
