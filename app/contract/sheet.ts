/** Calls on the location sheet: print it to PDF or keep it as a file, where the host has dialogs; else the page does it. */
import { z } from 'zod'
import { call } from './call.ts'

export const sheetCalls = {
  /** What this host can do: `dialogs` in the Electron shell, `page` on the loopback host. */
  'host.about': call(
    z.object({}),
    z.object({ host: z.enum(['electron', 'loopback']), version: z.string(), platform: z.string() }),
  ),
  /** Prints a spot's sheet to a PDF that the user names in a dialog. Fault `not-here` on the loopback host. */
  'sheet.pdf': call(
    z.object({
      shootId: z.string().max(64),
      spotId: z.string().max(64),
      paper: z.enum(['a4', 'letter']),
      title: z.string().max(200),
      /** The crop that the sheet names, proportions wide by high; null for the whole frame. */
      crop: z.object({ wide: z.number().positive(), high: z.number().positive() }).nullable(),
    }),
    z.object({ saved: z.boolean(), name: z.string() }),
  ),
} as const
