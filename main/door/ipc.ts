/** The one file that names ipcMain: checks the sender, then hands the call to the door both hosts share. */
import { ipcMain } from 'electron'
import { CHANNELS } from '#app/bridge.ts'
import type { Log } from '#main/log.ts'
import { dispatch, type Handlers } from './handle.ts'
import { isTrustedSender } from './sender.ts'

export function openIpcDoor(handlers: Handlers, log: Log): void {
  ipcMain.handle(CHANNELS.call, async (event, name: unknown, input: unknown) => {
    if (!isTrustedSender(event.senderFrame)) {
      log.error('refused-sender')
      return { ok: false, fault: { reason: 'refused', message: 'This page may not use the library.' } }
    }
    return dispatch(handlers, name, input, log)
  })
}
