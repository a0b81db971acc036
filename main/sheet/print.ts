/** Prints a spot's location sheet to a PDF in the Electron shell: a hidden window, the sheet's own page, a save dialog. */
import { writeFile } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { BrowserWindow, dialog } from 'electron'
import type { Result } from '#core/result.ts'
import { done, failed } from '#core/result.ts'
import type { Input, Output } from '#app/contract/index.ts'
import { fileName } from '#main/files/file-name.ts'
import { APP_ORIGIN } from '#main/navigation.ts'
import type { Printer } from './printer.ts'
import { pagePreferences, type WindowParts } from '#main/window.ts'

type Wish = Input<'sheet.pdf'>
type Printed = Output<'sheet.pdf'>

/** Longest wait for the sheet's tiles and fonts. */
const READY_TIMEOUT_MS = 30_000

/** Resolves in the page to whether the sheet said it is ready; a page that never does must not hang the program. */
const WAIT_UNTIL_READY = `new Promise((answer) => {
  const until = Date.now() + ${READY_TIMEOUT_MS}
  const look = () => {
    if (document.documentElement.dataset.ready === 'yes') answer(true)
    else if (Date.now() > until) answer(false)
    else setTimeout(look, 50)
  }
  look()
})`

/** `documents` is where the first save dialog starts; later ones start where the last sheet went. */
export function makePrinter(parts: WindowParts, owner: () => BrowserWindow | null, documents: string): Printer {
  let folder = documents
  return {
    print: async (wish) => {
      const made = await printed(parts, wish)
      if (!made.ok) return made
      const path = await askWhere(owner(), join(folder, fileName(wish.title, 'Location sheet', '.pdf')))
      if (path === null) return done({ saved: false, name: '' })
      folder = dirname(path)
      return save(path, made.value)
    },
  }
}

async function printed(parts: WindowParts, wish: Wish): Promise<Result<Uint8Array>> {
  const window = new BrowserWindow({ show: false, webPreferences: pagePreferences(parts) })
  try {
    const query = new URLSearchParams({ shoot: wish.shootId, spot: wish.spotId, paper: wish.paper })
    if (wish.crop !== null) query.set('crop', `${wish.crop.wide}:${wish.crop.high}`)
    await window.loadURL(`${APP_ORIGIN}/sheet.html?${query.toString()}`)
    const ready: unknown = await window.webContents.executeJavaScript(WAIT_UNTIL_READY)
    if (ready !== true)
      return failed('not-ready', 'The sheet was not drawn in time. Try again, or print it from its page.')
    // The sheet's own @page rule sets size and margins; colours of boxes and maps are part of it.
    return done(
      await window.webContents.printToPDF({
        preferCSSPageSize: true,
        printBackground: true,
        generateTaggedPDF: true,
        pageSize: wish.paper === 'a4' ? 'A4' : 'Letter',
      }),
    )
  } finally {
    window.destroy()
  }
}

async function askWhere(owner: BrowserWindow | null, defaultPath: string): Promise<string | null> {
  const options = { defaultPath, filters: [{ name: 'PDF', extensions: ['pdf'] }] }
  const answer = await (owner ? dialog.showSaveDialog(owner, options) : dialog.showSaveDialog(options))
  return answer.canceled || answer.filePath === '' ? null : answer.filePath
}

async function save(path: string, pdf: Uint8Array): Promise<Result<Printed>> {
  try {
    await writeFile(path, pdf)
    return done({ saved: true, name: basename(path) })
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown'
    return failed(
      'not-saved',
      `${basename(path)} could not be written (${code}). Choose another folder or free some space.`,
    )
  }
}
