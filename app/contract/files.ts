/** Calls on shoot files: a shoot with its spots as text, to hand to someone or keep beside the library. */
import { z } from 'zod'
import { call } from './call.ts'
import { mendedShape } from './mended.ts'

/** Longest text of a shoot file in characters; a longer one is refused before it is read. */
export const SHOOT_FILE_LIMIT = 32_000_000

/** Ending of a shoot file's name. */
export const SHOOT_FILE_ENDING = '.standpoint'

export const fileCalls = {
  /** The shoot with its spots as the text of a file, and a name for it. Fault `gone` when there is no such shoot. */
  'shoot.export': call(z.object({ shootId: z.string().max(64) }), z.object({ name: z.string(), text: z.string() })),
  /**
   * Adds the shoot of a file to the library under new ids, so that it never replaces one. Faults `not-a-shoot-file`,
   * `newer`, `broken`, `too-large`, and those of `library.apply`. `mended` as in `library.open`.
   */
  'shoot.import': call(
    z.object({ text: z.string().max(SHOOT_FILE_LIMIT) }),
    z.object({ shootId: z.string(), name: z.string(), spots: z.number(), mended: z.array(mendedShape).optional() }),
  ),
} as const
