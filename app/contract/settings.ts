/** Calls on the settings: one small object, saved when changed. */
import { z } from 'zod'
import { call } from './call.ts'

export const settingsShape = z.object({
  units: z.enum(['metric', 'imperial']),
  theme: z.enum(['system', 'light', 'dark']),
  paper: z.enum(['a4', 'letter']),
  /** Id of the tile source shown, `sketch` for the built-in map, `ground` for the one drawn from elevations. */
  mapSource: z.string().max(100),
  /** The user's own tile sources. */
  ownSources: z
    .array(
      z.object({
        id: z.string().min(1).max(64),
        name: z.string().min(1).max(200),
        /** https template with {z} {x} {y}, optionally {key}. */
        template: z.string().max(2_000),
        maxNativeZoom: z.number().int().min(0).max(24),
        attribution: z.string().max(1_000),
        attributionLink: z.string().max(2_000),
      }),
    )
    .max(50),
  /** Templates that replace a built-in source's, by its id. */
  templates: z
    .record(z.string().max(100), z.string().max(2_000))
    .refine((templates) => Object.keys(templates).length <= 100, 'no more than 100 templates'),
  /** Ids of elevation sources by precedence; those not named follow in their usual order. */
  groundOrder: z.array(z.string().max(300)).max(2_000),
  /** Elevation from the web, in Terrarium encoding. An empty template or attribution stands for the usual one. */
  elevationTiles: z.object({
    on: z.boolean(),
    template: z.string().max(2_000),
    maxZoom: z.number().int().min(0).max(18),
    attribution: z.string().max(1_000),
  }),
  /** Whether the shelf is folded away; null goes by the window's width. */
  shelfFolded: z.boolean().nullable(),
  /** The answers that stand open on the board, the one opened last at the end. */
  openAnswers: z.array(z.string().max(40)).max(40),
  lastShootId: z.string().max(64).nullable(),
  lastSpotId: z.string().max(64).nullable(),
})
export type Settings = z.infer<typeof settingsShape>

export const settingsCalls = {
  'settings.get': call(z.object({}), settingsShape),
  /** Changes the named fields, leaves the others. */
  'settings.set': call(settingsShape.partial(), settingsShape),
  /** A source's key, kept out of the settings and of the page: null forgets it. */
  'settings.key': call(
    z.object({ sourceId: z.string().max(64), key: z.string().max(500).nullable() }),
    z.object({ kept: z.enum(['stored', 'session', 'none']) }),
  ),
} as const
