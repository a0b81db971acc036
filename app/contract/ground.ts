/** Calls and routes on the ground: where its elevations come from, and the windows of cells cut out of them. */
import { z } from 'zod'
import { call } from './call.ts'
import { latLonShape } from './records.ts'

/** Largest elevation file that is taken from the page. A larger one can be put into the data folder's `elevation` by hand. */
export const ELEVATION_FILE_LIMIT = 1_000_000_000

/** Endings of the files that are read. */
export const ELEVATION_ENDINGS = ['.hgt', '.zip', '.tif', '.tiff'] as const

/**
 * A window is cut by GET `<prefix>/window?lat=&lon=&cell=&half=`: (2 half + 1) squared cells of `cell` metres around the place,
 * float32 in little-endian order, row by row from the north-west, metres above the sea, NaN where unknown. What is told of it
 * comes as JSON in this header, by `groundWindowShape`, every character beyond ASCII written as an escape.
 */
export const GROUND_HEADER = 'x-ground'

/** Most cells along one side of a window. */
export const MOST_CELLS = 3_001
export const SMALLEST_CELL = 0.5
export const LARGEST_CELL = 500

export const groundPartShape = z.object({
  id: z.string(),
  name: z.string(),
  /** Metres between the source's own samples. */
  resolution: z.number(),
  /** Share of the window's cells that it answered, 0..1. */
  share: z.number(),
  attribution: z.string(),
})
export type DrawnPart = z.infer<typeof groundPartShape>

export const groundWindowShape = z.object({
  /** Those that answered any cell, by precedence. */
  sources: z.array(groundPartShape),
  /** Of the source that answered most cells; null when none did. */
  resolution: z.number().nullable(),
  /** Share of the cells that are known, or taken for the sea's surface, 0..1. */
  known: z.number(),
  /** Share of the cells off the coasts at which no source knows anything, or is below 0, and the sea's surface, 0, was taken, 0..1. */
  sea: z.number(),
  /** Whether no source knows any ground beyond it, as far as one may look: wider windows need not be asked for. */
  whole: z.boolean(),
  /** Whether it is the whole and all around it, as far as one may look, is open sea. */
  seaBeyond: z.boolean(),
  /** Why cells that might be had are missing, in one sentence; null when nothing went wrong. */
  trouble: z.string().nullable(),
})
export type GroundWindow = z.infer<typeof groundWindowShape>

export const groundSourceShape = z.object({
  id: z.string(),
  name: z.string(),
  kind: z.enum(['demo', 'hgt', 'geotiff', 'tiles']),
  on: z.boolean(),
  removable: z.boolean(),
  /** Null for tiles, which may be anywhere. */
  bounds: z.object({ south: z.number(), north: z.number(), west: z.number(), east: z.number() }).nullable(),
  /** Metres between samples, at the middle of the bounds or at the place asked about; null when unknown. */
  resolution: z.number().nullable(),
  /** Share of its samples that hold no height, 0..1; null when it can't be counted. */
  gaps: z.number().nullable(),
  bytes: z.number().nullable(),
  /** What it has at the place asked about; `asked` for tiles, which are fetched when ground is needed. */
  here: z.enum(['covers', 'gap', 'outside', 'asked']).nullable(),
  /** What its heights are above, and by which system its places are told, as far as the file says so. */
  heights: z.string(),
  attribution: z.string(),
  attributionLink: z.string(),
  /** Why it cannot be used, in a sentence; null when it can. */
  trouble: z.string().nullable(),
})
export type GroundSourceBrief = z.infer<typeof groundSourceShape>

/** What POST `<prefix>/file?name=` answers, with the file's bytes as the body. */
export const fileAddedShape = z.object({
  /** Names of the files that are read from now on. */
  added: z.array(z.string()),
  /** What of an archive was left out, and why. */
  notes: z.array(z.string()),
})
export type FileAdded = z.infer<typeof fileAddedShape>

export const groundCalls = {
  /** By precedence, first one first. */
  'ground.sources': call(
    z.object({ at: latLonShape.nullable() }),
    z.object({
      sources: z.array(groundSourceShape),
      /** Path prefix of the binary routes. */ prefix: z.string(),
      /** The data folder's own folder of elevation files. */ folder: z.string(),
    }),
  ),
  /** Deletes a local file. Fault `gone` when there is none. */
  'ground.remove': call(z.object({ id: z.string().max(300) }), z.object({ name: z.string() })),
  /** For pins: the first source by precedence that knows the ground there, null where none does. */
  'ground.heights': call(
    z.object({ places: z.array(latLonShape).max(200) }),
    z.object({
      heights: z.array(
        z
          .object({
            height: z.number(),
            source: z.string(),
            resolution: z.number(),
            /** Whether the sea's surface was taken. */ sea: z.boolean(),
          })
          .nullable(),
      ),
      trouble: z.string().nullable(),
    }),
  ),
} as const
