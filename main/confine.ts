/** Shuts off what a page could reach: navigation, new windows, webviews, permissions and the network. */
import { type App, type Session, shell, type WebContents } from 'electron'
import { isOwnPage, mayOpenOutside, mayRequest } from './navigation.ts'

/** Holds for every page there will ever be: the main window, the print window, developer tools. */
export function confineAllPages(app: App): void {
  app.on('web-contents-created', (_event, contents) => confinePage(contents))
}

function confinePage(contents: WebContents): void {
  const stay = (event: { readonly preventDefault: () => void; readonly url: string }): void => {
    if (!isOwnPage(event.url)) event.preventDefault()
  }
  contents.on('will-navigate', stay)
  contents.on('will-redirect', stay)
  contents.on('will-frame-navigate', stay)
  contents.on('will-attach-webview', (event) => event.preventDefault())
  contents.setWindowOpenHandler(({ url }) => {
    if (mayOpenOutside(url)) void shell.openExternal(url)
    return { action: 'deny' }
  })
}

/** Electron grants every permission unless told otherwise; this program needs none. */
export function refusePermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false))
  session.setPermissionCheckHandler(() => false)
  session.setDevicePermissionHandler(() => false)
}

/** The page's session has no network: the second net under the content policy. */
export function cutFromNetwork(session: Session, development: boolean): void {
  session.webRequest.onBeforeRequest((details, answer) => answer({ cancel: !mayRequest(details.url, development) }))
}
