/** The end of a window and of the program: the page saves what it shows before its window goes, the services close before the process ends. */
import type { App, BrowserWindow, Dialog, PowerMonitor } from 'electron'
import type { Log } from './log.ts'

export interface LeavingParts {
  readonly app: App
  readonly dialog: Dialog
  readonly powerMonitor: PowerMonitor
  readonly log: Log
  readonly closeServices: () => Promise<void>
}

/** Longest wait for the page, which may wait for another window's write, and for the services. */
const LONGEST_MS = 15_000

/**
 * Asked before the window closes: what a page sends while it is torn down may not arrive (Electron's issue 4366). Answers whether all is
 * saved; a page that was never brought up has nothing to save.
 */
const LEAVE = 'globalThis.standpointLeave === undefined ? true : globalThis.standpointLeave()'

const SAYS = {
  unsaved: {
    message: 'Some of what you changed is not saved.',
    detail: 'The window shows what, and why. If you close it now, those changes are lost.',
  },
  silent: {
    message: 'The page does not answer.',
    detail: 'Your last changes may not be saved yet. If you close the window now, they may be lost.',
  },
} as const

/** Once per program, when it is ready. Returns what holds a window until its page may go. */
export function leaveInOrder(parts: LeavingParts): (window: BrowserWindow) => void {
  const { app, dialog, powerMonitor, log, closeServices } = parts
  let quitting = false
  let closing: Promise<void> | null = null
  let closed = false

  app.on('before-quit', () => {
    quitting = true
  })
  app.on('will-quit', (event) => {
    if (closed) return
    event.preventDefault()
    closing ??= withinTime(closeServices())
      .then((how) => how === 'late' && log.error('services-not-closed'))
      .catch((error: unknown) => log.error('services-not-closed', { error }))
      .then(() => {
        closed = true
        app.quit()
      })
  })
  // A system that shuts down waits for a while when it is asked to.
  powerMonitor.on('shutdown', (event?: { preventDefault(): void }) => {
    event?.preventDefault()
    app.quit()
  })

  return (window) => {
    let free = false
    let asking = false

    async function leave(): Promise<void> {
      const how = await pageLeaves(window)
      if (how !== 'saved' && !window.isDestroyed()) {
        log.error('page-not-saved', { how })
        const { response } = await dialog.showMessageBox(window, {
          type: 'warning',
          ...SAYS[how],
          buttons: ['Keep it open', 'Close without saving'],
          defaultId: 0,
          cancelId: 0,
        })
        if (response === 0) {
          quitting = false
          return
        }
      }
      free = true
      if (quitting) app.quit()
      else if (!window.isDestroyed()) window.close()
    }

    window.on('close', (event) => {
      if (free || window.webContents.isCrashed()) return
      event.preventDefault()
      if (asking) return
      asking = true
      void leave().finally(() => {
        asking = false
      })
    })
    // Windows ends a session without `before-quit`; asked to wait, it does.
    window.on('query-session-end', (event) => {
      event.preventDefault()
      app.quit()
    })
    window.on('session-end', () => void closeServices())
  }
}

async function pageLeaves(window: BrowserWindow): Promise<'saved' | 'unsaved' | 'silent'> {
  try {
    const answer = await withinTime(window.webContents.executeJavaScript(LEAVE))
    if (answer === 'late') return 'silent'
    return answer === true ? 'saved' : 'unsaved'
  } catch {
    return 'silent'
  }
}

async function withinTime<Value>(work: Promise<Value>): Promise<Value | 'late'> {
  const late = Promise.withResolvers<'late'>()
  const timer = setTimeout(() => late.resolve('late'), LONGEST_MS)
  try {
    return await Promise.race([work, late.promise])
  } finally {
    clearTimeout(timer)
  }
}
