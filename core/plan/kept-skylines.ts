/** Skylines around a plan's things as they move: each is looked for anew only when its eye has moved far enough. */
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { Raised } from '#core/ground/sight.ts'
import { type Skyline, skyline } from '#core/ground/skyline.ts'
import type { SkyEyes, Skylines } from './sky-edges.ts'

export interface KeptSkylines {
  readonly grid: ElevationGrid
  readonly refraction: number
  readonly eyes: SkyEyes
  readonly found: Skylines
}

/** Whether the skyline seen from one eye may stand for that of another. */
function standsFor(one: Raised | null, other: Raised | null, slack: number): boolean {
  if (one === null || other === null) return one === other
  if (slack === 0) return one.east === other.east && one.north === other.north && one.elevation === other.elevation
  return Math.hypot(one.east - other.east, one.north - other.north) <= slack
}

const THINGS = ['subject', 'landmark', 'lens'] as const

/** The skylines around eyes, those of before kept where an eye has moved by no more than so many metres. */
export function skylinesAround(
  grid: ElevationGrid,
  refraction: number,
  eyes: SkyEyes,
  before: KeptSkylines | null,
  slack: number,
): KeptSkylines {
  const known = before !== null && before.grid === grid && before.refraction === refraction ? before : null
  if (known !== null && THINGS.every((thing) => standsFor(known.eyes[thing], eyes[thing], slack))) return known
  const kept: Record<(typeof THINGS)[number], Skyline | null> = { subject: null, landmark: null, lens: null }
  const from: Record<(typeof THINGS)[number], Raised | null> = { subject: null, landmark: null, lens: null }
  for (const thing of THINGS) {
    const eye = eyes[thing]
    const same = known !== null && standsFor(known.eyes[thing], eye, slack)
    from[thing] = same ? known.eyes[thing] : eye
    kept[thing] = same ? known.found[thing] : eye === null ? null : skyline(grid, eye, refraction)
  }
  return { grid, refraction, eyes: from, found: kept }
}
