/** The landmark's sides as this page counts them: one for each direction, segments that look the same way taken together. */
import type { PlacedFaces, ThingFace } from '#core/scene/face.ts'
import { turnBetween } from '#core/units/angle.ts'
import { compassName } from '#core/units/compass.ts'
import { daysWords } from '#renderer/words/en-days.ts'

const { faceNames } = daysWords.sides

export interface LandmarkSide {
  /** From 1, as in the plan. */
  readonly number: number
  /** Of the first of its faces. */
  readonly id: string
  readonly bearing: number
  readonly faces: readonly ThingFace[]
  /** "north-west"; with the segments' numbers where a thing has several. */
  readonly name: string
}

/** Degrees within which two faces look the same way: the sun crosses that in four minutes. */
const SAME_WAY = 1

/** Round things are cut into sixteen; the eight points of the compass say enough. */
function isBetween(face: ThingFace): boolean {
  const round = /^(?:facet|flank)-(\d+)$/u.exec(face.id)
  return round !== null && Number(round[1]) % 2 === 1
}

function segmentOf(face: ThingFace): number | null {
  const found = /^segment-(\d+)-/u.exec(face.id)
  return found === null ? null : Number(found[1]) + 1
}

/** "segments 1–3", "segments 1–2, 5"; empty for what has none. */
function segmentsText(faces: readonly ThingFace[]): string {
  const numbers = faces.map(segmentOf).filter((number) => number !== null)
  const runs: [number, number][] = []
  for (const number of numbers) {
    const last = runs.at(-1)
    if (last !== undefined && number === last[1] + 1) last[1] = number
    else runs.push([number, number])
  }
  const [first] = runs
  if (first === undefined) return ''
  if (runs.length === 1) return faceNames.segment(first[0], first[1])
  return faceNames.segments(runs.map(([from, to]) => (from === to ? String(from) : `${from}–${to}`)).join(', '))
}

/** Upright sides in the order in which the landmark has them. */
export function landmarkSides(placed: PlacedFaces): LandmarkSide[] {
  const groups: { readonly bearing: number; readonly faces: ThingFace[] }[] = []
  for (const face of placed.faces) {
    const { bearing } = face
    if (!face.upright || bearing === null || isBetween(face)) continue
    const alike = groups.find((group) => Math.abs(turnBetween(group.bearing, bearing)) <= SAME_WAY)
    if (alike === undefined) groups.push({ bearing, faces: [face] })
    else alike.faces.push(face)
  }
  const segmented = groups.length > 2
  return groups.map(({ bearing, faces }, index) => {
    const segments = segmented ? segmentsText(faces) : ''
    const compass = compassName(bearing)
    return {
      number: index + 1,
      id: faces[0]?.id ?? '',
      bearing,
      faces,
      name: segments === '' ? compass : `${compass}, ${segments}`,
    }
  })
}
