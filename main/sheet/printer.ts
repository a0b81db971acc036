/** What prints a sheet, as the services see it: the Electron shell has one, the loopback host has none. */
import type { Result } from '#core/result.ts'
import type { Input, Output } from '#app/contract/index.ts'

export interface Printer {
  readonly print: (wish: Input<'sheet.pdf'>) => Promise<Result<Output<'sheet.pdf'>>>
}
