/** The windows: how a page of ours is shut off from the machine, and the main window itself. */
import { join } from 'node:path'
import { BrowserWindow, type BrowserWindowConstructorOptions, type Session } from 'electron'
import { APP_ORIGIN } from './navigation.ts'

export interface WindowParts {
  readonly session: Session
  readonly preload: string
  readonly icon: string
}

/** Every switch that matters is written out, also where it is Electron's default, so that a test can hold it. */
export function pagePreferences(parts: WindowParts): NonNullable<BrowserWindowConstructorOptions['webPreferences']> {
  return {
    session: parts.session,
    preload: parts.preload,
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
    // The spell checker would fetch its dictionaries from the network.
    spellcheck: false,
  }
}

/** Opens the main window; Electron keeps its place and size and brings it back onto a present screen. */
export function openMainWindow(parts: WindowParts): BrowserWindow {
  const window = new BrowserWindow({
    name: 'main',
    windowStatePersistence: true,
    title: 'Standpoint',
    icon: parts.icon,
    width: 1440,
    height: 900,
    minWidth: 900,
    minHeight: 600,
    backgroundColor: '#fffef9',
    show: false,
    webPreferences: pagePreferences(parts),
  })
  window.once('ready-to-show', () => window.show())
  void window.loadURL(`${APP_ORIGIN}/index.html`)
  return window
}

/** The preload and the icon beside the built main file. */
export function windowFiles(mainFolder: string): { readonly preload: string; readonly icon: string } {
  return { preload: join(mainFolder, '..', 'preload', 'preload.cjs'), icon: join(mainFolder, '..', 'icon.png') }
}
