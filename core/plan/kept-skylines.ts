/** Skylines around a plan's things as they move: each is looked for anew only when its eye has moved far enough. */
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { Screen } from '#core/ground/screen.ts'
import { screenedSkyline } from '#core/ground/screened-skyline.ts'
import { type Raised, sameEye } from '#core/ground/sight.ts'
import { type Skyline, skyline } from '#core/ground/skyline.ts'
import type { SkyEyes, Skylines } from './sky-edges.ts'

export interface KeptSkylines {
  readonly grid: ElevationGrid
  readonly refraction: number
  readonly screens: readonly Screen[]
  /** Where the ground was looked for from, and where trees and walls were: those near by change with every step. */
  readonly eyes: SkyEyes
  readonly screenEyes: SkyEyes
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
  screens: readonly Screen[] = [],
): KeptSkylines {
  const known = before !== null && before.grid === grid && before.refraction === refraction ? before : null
  const kept = (thing: Thing): boolean => known !== null && standsFor(known.eyes[thing], eyes[thing], slack)
  // Trees and walls take no time to put on a skyline: they are always seen from where the eye is.
  const screened = (thing: Thing): boolean =>
    known !== null &&
    ((screens.length === 0 && known.screens.length === 0) ||
      (known.screens === screens && sameEye(known.screenEyes[thing], eyes[thing])))
  if (known !== null && THINGS.every((thing) => kept(thing) && screened(thing))) return known
  const ground = ofEach((thing) => {
    const eye = eyes[thing]
    if (known !== null && kept(thing)) return known.ground[thing]
    return eye === null ? null : skyline(grid, eye, refraction)
  })
  return {
    grid,
    refraction,
    screens,
    eyes: ofEach((thing) => (known !== null && kept(thing) ? known.eyes[thing] : eyes[thing])),
    screenEyes: eyes,
    ground,
    found: ofEach((thing) => {
      const [line, eye] = [ground[thing], eyes[thing]]
      if (known !== null && kept(thing) && screened(thing)) return known.found[thing]
      return withScreens(line, grid, eye, refraction, screens)
    }),
  }
}

function withScreens(
  line: Skyline | null,
  grid: ElevationGrid,
  eye: Raised | null,
  refraction: number,
  screens: readonly Screen[],
): Skyline | null {
  return line === null || eye === null ? null : screenedSkyline(line, grid, eye, refraction, screens)
}
