/** Calls on the library of shoots and spots: read, save a batch of changes whole, find, recover. */
import { z } from 'zod'
import { call } from './call.ts'
import { mendedShape } from './mended.ts'
import { shootShape, spotShape } from './records.ts'

/**
 * One change of one record. `before` is the revision the change started from (null for a new record); `record` is the
 * new state, or null to delete. The saved record's revision is before + 1 (1 for a new one), whatever it carries.
 * A delete followed by its undo re-makes the record with `before: null`.
 */
export const changeShape = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('shoot'),
    id: z.string().min(1).max(64),
    before: z.number().int().min(0).nullable(),
    record: shootShape.nullable(),
  }),
  z.object({
    kind: z.literal('spot'),
    id: z.string().min(1).max(64),
    before: z.number().int().min(0).nullable(),
    record: spotShape.nullable(),
  }),
])
export type Change = z.infer<typeof changeShape>

/** As many changes as one batch may hold. */
const MOST_CHANGES = 20_000

/** One edit of the page's. Its id is new for every edit, so that one sent twice is known again. */
const editShape = z.object({
  id: z.string().min(1).max(64),
  changes: z.array(changeShape).min(1).max(MOST_CHANGES),
})
export type SentEdit = z.infer<typeof editShape>

const savedShape = z.object({ version: z.number(), revisions: z.array(z.number()) })
export type SavedEdit = z.infer<typeof savedShape>

const boundsShape = z.object({
  south: z.number().min(-90).max(90),
  north: z.number().min(-90).max(90),
  /** West may be greater than east: the box then crosses the antimeridian. */
  west: z.number().min(-180).max(180),
  east: z.number().min(-180).max(180),
})

/** The short form of a spot that lists show. */
export const spotBriefShape = z.object({
  id: z.string(),
  shootId: z.string(),
  shootName: z.string(),
  name: z.string(),
  status: spotShape.shape.status,
  stars: z.number(),
  lat: z.number(),
  lon: z.number(),
})

export const libraryCalls = {
  /** How the library opened: well, made new, brought back from a backup, or not at all. */
  'library.state': call(
    z.object({}),
    z.object({
      state: z.enum(['open', 'read-only', 'damaged', 'newer', 'unavailable']),
      message: z.string(),
      /** Good backups, newest first; those dated in the future last, as `ahead`. */
      backups: z.array(z.object({ name: z.string(), savedAt: z.number(), spots: z.number(), ahead: z.boolean() })),
      /** Reason word why the backup that is due was not made; null when nothing is amiss. */
      backupFault: z.string().nullable(),
      /** Grows with every committed change from any window. */
      version: z.number(),
      shootCount: z.number(),
      spotCount: z.number(),
    }),
  ),
  /** Puts the named backup in the library's place; the damaged file is kept beside it under another name. */
  'library.restore': call(z.object({ backup: z.string().max(200) }), z.object({ keptAs: z.string() })),
  'library.shoots': call(
    z.object({}),
    z.object({
      shoots: z.array(z.object({ id: z.string(), name: z.string(), madeAt: z.number(), spots: z.number() })),
    }),
  ),
  /**
   * One shoot with its spots in shelf order. Fault `gone` when there is none, `damaged` when its own record is broken. `mended` tells
   * which figures were beyond what can be and stand at the nearest that can; they are stored so with the next change of their record.
   */
  'library.open': call(
    z.object({ shootId: z.string().max(64) }),
    z.object({
      shoot: shootShape,
      spots: z.array(spotShape),
      /** Names of the shoot's spots whose records are broken and left out; none as a rule. */
      broken: z.array(z.string()).optional(),
      version: z.number(),
      mended: z.array(mendedShape).optional(),
    }),
  ),
  /**
   * Saves all the changes or none, durable when answered. Fault `changed-elsewhere` when a revision is not the stored
   * one, `read-only`, `disk-full`, `damaged`. Deleting a shoot deletes its spots: list them in the same batch for undo.
   */
  'library.apply': call(z.object({ changes: z.array(changeShape).min(1).max(MOST_CHANGES) }), savedShape),
  /**
   * Saves edits one after the other, each as `library.apply` would its changes, and answers each for itself. One that was
   * saved before under its id is answered alike and not done again: a page that is left sends once more whatever it has
   * no answer for. Fault `rests` for an edit of a record whose edit before it in the same call was refused.
   */
  'library.save': call(
    z.object({ edits: z.array(editShape).min(1).max(MOST_CHANGES) }),
    z.object({
      answers: z.array(
        z.discriminatedUnion('ok', [
          z.object({ ok: z.literal(true), value: savedShape }),
          z.object({ ok: z.literal(false), fault: z.object({ reason: z.string(), message: z.string() }) }),
        ]),
      ),
    }),
  ),
  /** Spots of all shoots by word, by box, or both; `total` counts all hits up to 10,000. */
  'library.find': call(
    z.object({ words: z.string().max(1_000), within: boundsShape.nullable(), limit: z.number().int().min(1).max(500) }),
    z.object({ spots: z.array(spotBriefShape), total: z.number(), more: z.boolean() }),
  ),
} as const
