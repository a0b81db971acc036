/** Roads, tracks and paths of the demo island, laid one after another so that each joins what is there. */
import type { Ground } from './ground.ts'
import { type IslandPoint, islandDistance, step } from './island-frame.ts'
import { BRIDGE_BEARING, BRIDGE_PLAN, HILLS, LAY_BY_STOP, TRACK_STOP } from './island-places.ts'
import type { Quays } from './harbour.ts'
import { evenlySpaced, relax } from './outline.ts'
import { RoutePlanner } from './routes.ts'

export const WAY_KINDS = ['road', 'minor', 'track', 'path'] as const
export interface Way {
  readonly kind: (typeof WAY_KINDS)[number]
  readonly line: readonly IslandPoint[]
}

/** Villages and hamlets: middle, and how many houses. */
export const VILLAGES = [
  { name: 'Quennick', at: { east: -430, north: -640 }, houses: 74, reach: 330 },
  { name: 'Tolvay', at: { east: -250, north: 900 }, houses: 26, reach: 240 },
  { name: 'Orvane', at: { east: 1120, north: -520 }, houses: 30, reach: 260 },
  { name: 'Correl', at: { east: -1700, north: -1900 }, houses: 24, reach: 240 },
  { name: 'Whitten', at: { east: 2700, north: -760 }, houses: 28, reach: 240 },
  { name: 'Ulvet', at: { east: -3050, north: 1350 }, houses: 18, reach: 220 },
  { name: 'Sturrow', at: { east: 2700, north: 1350 }, houses: 20, reach: 230 },
] as const

/** Farms, each at the end of its own lane. */
export const FARMS: readonly IslandPoint[] = [
  { east: -560, north: -60 },
  { east: -2500, north: -900 },
  { east: -3250, north: 420 },
  { east: -1750, north: 1880 },
  { east: 950, north: 900 },
  { east: 1560, north: -1000 },
  { east: 3420, north: 620 },
  { east: 1620, north: 2100 },
  { east: -1080, north: -1880 },
  { east: 2080, north: -1700 },
  { east: -2000, north: -560 },
]

/** Ends of the side lanes in the harbour village. */
const QUENNICK_LANES: readonly IslandPoint[] = [
  { east: -620, north: -560 },
  { east: -640, north: -800 },
  { east: -340, north: -480 },
  { east: -380, north: -940 },
]

/** Through which places each track comes from the roads, in the order in which they are laid. */
const TRACKS: readonly (readonly IslandPoint[])[] = [
  [{ east: -540, north: -60 }, TRACK_STOP],
  [{ east: -1180, north: 480 }],
  [
    { east: -1650, north: 200 },
    { east: -1300, north: -300 },
  ],
  [{ east: -3750, north: 1750 }],
  [
    { east: 1500, north: 1250 },
    { east: 1250, north: 1000 },
  ],
  [
    { east: 2350, north: 300 },
    { east: 2500, north: -200 },
  ],
  [{ east: -1500, north: -2500 }],
  [{ east: 3350, north: -420 }],
]

/** The same of the paths that lead to no summit. */
const PATHS: readonly (readonly IslandPoint[])[] = [
  [
    { east: 330, north: 2100 },
    { east: 200, north: 1300 },
  ],
  [
    { east: 760, north: 1900 },
    { east: 640, north: 1100 },
  ],
  [
    { east: -460, north: -2000 },
    { east: -420, north: -1300 },
  ],
  [{ east: -1620, north: -1500 }],
  [{ east: 3950, north: 1050 }],
]

const ROAD_COMFORT = 0.06
const LANE_COMFORT = 0.1
const TRACK_COMFORT = 0.16
const PATH_COMFORT = 0.3

/** The highest point near a hill's design place: where its summit came out after the weather. */
export function summitOf(ground: Ground, around: IslandPoint, reach: number): IslandPoint {
  let best = around
  let height = -1
  for (let east = -reach; east <= reach; east += 10) {
    for (let north = -reach; north <= reach; north += 10) {
      if (Math.hypot(east, north) > reach) continue
      const point = { east: around.east + east, north: around.north + north }
      const here = ground.heightAt(point)
      if (here > height) {
        height = here
        best = point
      }
    }
  }
  return best
}

function village(name: string): IslandPoint {
  const found = VILLAGES.find((place) => place.name === name)
  if (found === undefined) throw new Error(`no village ${name}`)
  return found.at
}

/** Points in line with the bridge from its end on, so that its roads begin straight. */
function approach(abutment: IslandPoint | undefined, bearing: number): IslandPoint[] {
  if (abutment === undefined) throw new Error('the bridge has four points')
  return [0, 12, 24, 36, 48, 60].map((away) => step(abutment, bearing, away))
}

/** Index of the line's point nearest to a place. */
function nearestPlace(line: readonly IslandPoint[], to: IslandPoint): number {
  const away = line.map((point) => islandDistance(point, to))
  return away.indexOf(Math.min(...away))
}

/** All ways of the island. */
export function layWays(ground: Ground, quays: Quays): Way[] {
  const planner = new RoutePlanner(ground)
  const ways: Way[] = []
  const add = (kind: Way['kind'], line: readonly IslandPoint[]): void => {
    ways.push({ kind, line })
  }
  const west = approach(BRIDGE_PLAN[0], BRIDGE_BEARING + 180)
  const east = approach(BRIDGE_PLAN[3], BRIDGE_BEARING)
  const farWest: IslandPoint = { east: -3050, north: -820 }
  const westward = [...west.slice(-1), village('Quennick'), village('Correl'), farWest, village('Ulvet')]
  // Laid as one line, so that it runs smoothly through Correl, where the main road becomes a lesser one.
  const western = planner.through(westward, ROAD_COMFORT, west.slice(0, -1))
  const atCorrel = nearestPlace(western, village('Correl'))
  add('road', western.slice(0, atCorrel + 1))
  add('minor', western.slice(atCorrel))
  const eastward = [...east.slice(-1), village('Orvane'), LAY_BY_STOP, village('Whitten')]
  add('road', planner.through(eastward, ROAD_COMFORT, east.slice(0, -1)))
  add('road', planner.join([village('Tolvay')], ROAD_COMFORT))
  add('minor', planner.through([village('Ulvet'), { east: -1250, north: 2050 }, village('Tolvay')], LANE_COMFORT))
  add('minor', planner.through([village('Whitten'), { east: 3300, north: 750 }, village('Sturrow')], LANE_COMFORT))
  add('minor', planner.join([village('Sturrow'), { east: 1400, north: 2050 }], LANE_COMFORT))
  add('minor', planner.join([{ east: 1160, north: -2845 }], LANE_COMFORT))
  add('minor', relax(evenlySpaced([...quays.lane.slice(0, -1), ...planner.join([quays.gate], LANE_COMFORT)], 5), 6))
  for (const end of QUENNICK_LANES) add('minor', planner.join([end], LANE_COMFORT))
  for (const farm of FARMS) add('minor', planner.join([farm], LANE_COMFORT))
  addTracks(planner, add)
  addPaths(ground, planner, add)
  return ways
}

function addTracks(planner: RoutePlanner, add: (kind: Way['kind'], line: readonly IslandPoint[]) => void): void {
  for (const through of TRACKS) add('track', planner.join(through, TRACK_COMFORT))
}

function addPaths(
  ground: Ground,
  planner: RoutePlanner,
  add: (kind: Way['kind'], line: readonly IslandPoint[]) => void,
): void {
  for (const hill of HILLS) {
    if (hill.name !== null) add('path', planner.join([summitOf(ground, hill.at, 420)], PATH_COMFORT))
  }
  for (const through of PATHS) add('path', planner.join(through, PATH_COMFORT))
}

/** Drops ways so short that they only mark where two others met. */
export function worthDrawing(way: Way): boolean {
  const first = way.line[0]
  const last = way.line.at(-1)
  return first !== undefined && last !== undefined && islandDistance(first, last) > 30
}
