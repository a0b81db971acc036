/** Skylines around a plan's things as they move: each is looked for again only when its eye has moved far enough. */
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { Obstruction } from '#core/ground/obstruction.ts'
import { obstructedSkyline } from '#core/ground/obstructed-skyline.ts'
import { type Raised, sameEye } from '#core/ground/sight.ts'
import { type Skyline, skyline } from '#core/ground/skyline.ts'
import type { SkyEyes, Skylines } from './plan-skylines.ts'

export interface KeptSkylines {
  readonly grid: ElevationGrid
  readonly refraction: number
  readonly obstructions: readonly Obstruction[]
  /** Where the ground was looked for from, and where trees and walls were: those near by change with every step. */
  readonly eyes: SkyEyes
  readonly obstructionEyes: SkyEyes
  /** The ground alone. */
  readonly ground: Skylines
  /** With trees and walls on it. */
  readonly found: Skylines
}

/** Whether the skyline seen from one eye may stand for that of another. */
function standsFor(one: Raised | null, other: Raised | null, slack: number): boolean {
  if (slack === 0 || one === null || other === null) return sameEye(one, other)
  return Math.hypot(one.east - other.east, one.north - other.north) <= slack
}

const THINGS = ['subject', 'landmark', 'lens'] as const
type Thing = (typeof THINGS)[number]

function ofEach<Value>(make: (thing: Thing) => Value): Readonly<Record<Thing, Value>> {
  return { subject: make('subject'), landmark: make('landmark'), lens: make('lens') }
}

/** The skylines around eyes, those of the ground before kept where an eye has moved by no more than so many metres. */
export function skylinesAround(
  grid: ElevationGrid,
  refraction: number,
  eyes: SkyEyes,
  before: KeptSkylines | null,
  slack: number,
  obstructions: readonly Obstruction[] = [],
): KeptSkylines {
  const known = before !== null && before.grid === grid && before.refraction === refraction ? before : null
  const kept = (thing: Thing): boolean => known !== null && standsFor(known.eyes[thing], eyes[thing], slack)
  // Trees and walls take no time to put on a skyline: they are always seen from where the eye is.
  const obstructed = (thing: Thing): boolean =>
    known !== null &&
    ((obstructions.length === 0 && known.obstructions.length === 0) ||
      (known.obstructions === obstructions && sameEye(known.obstructionEyes[thing], eyes[thing])))
  if (known !== null && THINGS.every((thing) => kept(thing) && obstructed(thing))) return known
  const ground = ofEach((thing) => {
    const eye = eyes[thing]
    if (known !== null && kept(thing)) return known.ground[thing]
    return eye === null ? null : skyline(grid, eye, refraction)
  })
  return {
    grid,
    refraction,
    obstructions,
    eyes: ofEach((thing) => (known !== null && kept(thing) ? known.eyes[thing] : eyes[thing])),
    obstructionEyes: eyes,
    ground,
    found: ofEach((thing) => {
      const [line, eye] = [ground[thing], eyes[thing]]
      if (known !== null && kept(thing) && obstructed(thing)) return known.found[thing]
      return withObstructions(line, grid, eye, refraction, obstructions)
    }),
  }
}

function withObstructions(
  line: Skyline | null,
  grid: ElevationGrid,
  eye: Raised | null,
  refraction: number,
  obstructions: readonly Obstruction[],
): Skyline | null {
  return line === null || eye === null ? null : obstructedSkyline(line, grid, eye, refraction, obstructions)
}
