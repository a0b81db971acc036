/** Calls on the map tiles: which sources there are, where the page fetches them, how fetching fares. */
import { z } from 'zod'
import { call } from './call.ts'

export const tileSourceShape = z.object({
  id: z.string(),
  name: z.string(),
  maxNativeZoom: z.number().int(),
  attribution: z.string(),
  attributionLink: z.string(),
  terms: z.string(),
  needsKey: z.boolean(),
  own: z.boolean(),
})
export type TileSourceBrief = z.infer<typeof tileSourceShape>

export const tileCalls = {
  'tiles.sources': call(
    z.object({}),
    z.object({
      sources: z.array(tileSourceShape),
      /** Path prefix: <prefix>/<source>/<z>/<x>/<y>. */ prefix: z.string(),
    }),
  ),
  /** Since the start: how the sources answer. `offline` when the last fetches all failed for want of a network. */
  'tiles.health': call(
    z.object({}),
    z.object({ offline: z.boolean(), failed: z.number(), served: z.number(), message: z.string() }),
  ),
  /** The user wants what is missing now: pauses that servers were given end. */
  'tiles.again': call(z.object({}), z.object({})),
  'tiles.clear': call(z.object({}), z.object({ freedBytes: z.number() })),
} as const
