/** Writes down what goes wrong in any process of the shell; nothing leaves the machine. */
import type { App } from 'electron'
import type { Log } from './log.ts'

export function logProcessFaults(app: App, log: Log): void {
  app.on('render-process-gone', (_event, _contents, details) =>
    log.error('render-process-gone', { reason: details.reason, code: details.exitCode }),
  )
  app.on('child-process-gone', (_event, details) =>
    log.error('child-process-gone', { type: details.type, reason: details.reason, code: details.exitCode }),
  )
  app.on('web-contents-created', (_event, contents) => {
    contents.on('unresponsive', () => log.error('unresponsive'))
  })
  process.on('uncaughtException', (error) => log.error('uncaught-exception', { error }))
  process.on('unhandledRejection', (error) => log.error('unhandled-rejection', { error }))
}
