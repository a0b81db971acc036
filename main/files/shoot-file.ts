/** The shoot file: one shoot with its spots as JSON text, checked by its magic word and version before its body. */
import { z } from 'zod'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { done, failed, type Result } from '#core/result.ts'
import { SHOOT_FILE_ENDING, SHOOT_FILE_LIMIT } from '#app/contract/files.ts'
import type { Change } from '#app/contract/library.ts'
import { mendFigures, type Mended } from '#app/contract/mended.ts'
import { shootShape, spotShape } from '#app/contract/records.ts'
import { parsedJson } from '#core/parsed-json.ts'

export interface ShootFile {
  readonly shoot: Shoot
  readonly spots: readonly Spot[]
  /** Figures beyond what can be, which were brought to the nearest that can. */
  readonly mended?: readonly Mended[]
}

export type ShootFileReason = 'not-a-shoot-file' | 'newer' | 'broken' | 'too-large'

const FORMAT = 'standpoint-shoot'
const VERSION = 2
/** The head of every such file, also of one that was cut short. */
const HEAD = new RegExp(`^\\s*\\{\\s*"format"\\s*:\\s*"${FORMAT}"`)

const headShape = z.object({ format: z.literal(FORMAT), version: z.number().int().min(1) })
/** With its shoot, a file's spots fit into one batch of `library.apply`. */
const bodyShape = z.object({ shoot: shootShape, spots: z.array(spotShape).max(19_999) })

const firstShape = z.looseObject({ shoot: z.looseObject({ screens: z.unknown() }) })

export function shootFileText(file: ShootFile): string {
  return `${JSON.stringify({ format: FORMAT, version: VERSION, shoot: file.shoot, spots: file.spots }, null, 1)}\n`
}

export function readShootFile(text: string): Result<ShootFile, ShootFileReason> {
  if (text.length > SHOOT_FILE_LIMIT)
    return failed('too-large', `This file is larger than a shoot file may be (${SHOOT_FILE_LIMIT / 1e6} MB).`)
  const whole = text.startsWith('\uFEFF') ? text.slice(1) : text
  const parsed = parsedJson(whole)
  if (parsed === undefined) return HEAD.test(whole) ? cutShort() : notOurs()
  const head = headShape.safeParse(parsed)
  if (!head.success) return notOurs()
  if (head.data.version > VERSION)
    return failed(
      'newer',
      `This shoot file was written by a newer version of Standpoint (form ${head.data.version}; this one reads up to ${VERSION}). Update the program to open it.`,
    )
  const { value, mended } = mendFigures(bodyShape, head.data.version === 1 ? fromFirstVersion(parsed) : parsed)
  const body = bodyShape.safeParse(value)
  if (!body.success) return failed('broken', fieldSentence(body.error))
  return done(mended.length > 0 ? { ...body.data, mended } : body.data)
}

/** Files of version 1 call the obstructions `screens`. */
function fromFirstVersion(parsed: unknown): unknown {
  const body = firstShape.safeParse(parsed)
  if (!body.success) return parsed
  const { shoot, ...rest } = body.data
  const { screens, ...others } = shoot
  return { ...rest, shoot: screens === undefined ? others : { ...others, obstructions: screens } }
}

function cutShort(): Result<never, ShootFileReason> {
  return failed(
    'broken',
    'This shoot file is damaged or was cut short. Nothing was added; get it again from its sender.',
  )
}

function notOurs(): Result<never, ShootFileReason> {
  return failed('not-a-shoot-file', `This is not a shoot file of Standpoint (its name ends in ${SHOOT_FILE_ENDING}).`)
}

function fieldSentence(error: z.ZodError): string {
  const issue = error.issues[0]
  return `This shoot file does not fit at ${issue?.path.map(String).join('.') ?? 'its body'}: ${issue?.message ?? 'unknown form'}. Nothing was added.`
}

/** The changes that add a file's shoot as a new one: every id fresh, references kept true, the rest as it was. */
export function changesToAdd(file: ShootFile, makeId: () => string): readonly Change[] {
  const shootId = makeId()
  const landmarks = new Set(file.shoot.landmarks.map((landmark) => landmark.id))
  const lenses = new Set(file.shoot.bag.lenses.map((lens) => lens.id))
  const shoot = { ...file.shoot, id: shootId, revision: 0 }
  const spots = file.spots.map((spot) => ({
    ...spot,
    id: makeId(),
    shootId,
    revision: 0,
    landmarkId: keptIfKnown(spot.landmarkId, landmarks),
    shot: { ...spot.shot, lensId: keptIfKnown(spot.shot.lensId, lenses) },
  }))
  return [asChange('shoot', shoot), ...spots.map((spot) => asChange('spot', spot))]
}

function keptIfKnown(id: string | null, known: ReadonlySet<string>): string | null {
  return id !== null && known.has(id) ? id : null
}

function asChange(kind: 'shoot' | 'spot', record: Shoot | Spot): Change {
  // The records come from the contract's own shapes; only core's `readonly` stands between the two types.
  return { kind, id: record.id, before: null, record } as Change
}
