/** The fixed places of the demo island, each written once: bridge, lighthouse, harbour, hills, and the demo shoot's spots. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { bearingBetween, type IslandPoint, step, toLatLon } from './island-frame.ts'

/** The suspension bridge over the Sound of Merrin: measures in metres. */
const BRIDGE_MIDDLE: IslandPoint = { east: 420, north: 330 }
export const BRIDGE_BEARING = 100
const MAIN_SPAN = 224
const SIDE_SPAN = 84

const westTower = step(BRIDGE_MIDDLE, BRIDGE_BEARING, -MAIN_SPAN / 2)
const eastTower = step(BRIDGE_MIDDLE, BRIDGE_BEARING, MAIN_SPAN / 2)
export const BRIDGE_PLAN: readonly IslandPoint[] = [
  step(westTower, BRIDGE_BEARING, -SIDE_SPAN),
  westTower,
  eastTower,
  step(eastTower, BRIDGE_BEARING, SIDE_SPAN),
]

export const BRIDGE = {
  name: 'Merrin Bridge',
  /** Abutment, tower, tower, abutment, from west to east. */
  line: BRIDGE_PLAN.map(toLatLon) as readonly LatLon[],
  middle: toLatLon(BRIDGE_MIDDLE),
  bearing: BRIDGE_BEARING,
  mainSpan: MAIN_SPAN,
  /** Metres of the tower tops above the sea, which is also their foot. */
  towerHeight: 60,
  /** Metres of the deck above the sea. */
  deckHeight: 24,
  width: 13,
  baseElevation: 0,
} as const

export const LIGHTHOUSE_PLAN: IslandPoint = { east: 1130, north: -2890 }
export const LIGHTHOUSE = {
  name: 'Orvane Light',
  at: toLatLon(LIGHTHOUSE_PLAN),
  height: 30,
  /** Metres across at the foot. */
  width: 8,
  /** Metres above the sea of the rock on which it stands. */
  baseElevation: 18,
} as const

/** Quennick harbour: the bay's middle, and the quay's level above the sea, metres. */
export const HARBOUR_PLAN: IslandPoint = { east: -225, north: -690 }
export const QUAY_LEVEL = 2.6

/** Summits by which the land is shaped: metres above the sea, and metres of reach. */
export interface Hill {
  readonly name: string | null
  readonly at: IslandPoint
  readonly height: number
  readonly reach: number
}
export const HILLS: readonly Hill[] = [
  { name: 'Hallow Brae', at: { east: -760, north: 330 }, height: 200, reach: 520 },
  { name: 'Braddle Law', at: { east: -1950, north: 900 }, height: 300, reach: 800 },
  { name: 'Great Nevick', at: { east: -2850, north: -350 }, height: 190, reach: 700 },
  { name: null, at: { east: -900, north: 1650 }, height: 170, reach: 650 },
  { name: 'Orvane Fell', at: { east: 1950, north: 950 }, height: 255, reach: 760 },
  { name: null, at: { east: 2900, north: 150 }, height: 170, reach: 620 },
  { name: null, at: { east: 1350, north: 1800 }, height: 150, reach: 560 },
  { name: 'Dunnel Rigg', at: { east: 2150, north: -1050 }, height: 150, reach: 560 },
  { name: null, at: { east: -1500, north: -1650 }, height: 110, reach: 600 },
]

export const LAKE_PLAN = {
  middle: { east: -1530, north: -1160 } as IslandPoint,
  long: 240,
  short: 120,
  bearing: 15,
} as const

/** The plane points by which tracks and roads must pass, since the spots lie on them. */
export const TRACK_STOP: IslandPoint = { east: -30, north: 110 }
export const LAY_BY_STOP: IslandPoint = { east: 1730, north: -1880 }

/** One arrangement of the demo shoot. */
export interface DemoPlace {
  readonly name: string
  readonly stop: LatLon
  /** Metres above the sea, as the island's elevation grid has it. */
  readonly stopElevation: number
  readonly heading: number
  readonly standpoint: LatLon
  readonly standpointElevation: number
  readonly parking: LatLon
  readonly landmark: 'bridge' | 'lighthouse'
}

interface Sketch {
  readonly name: string
  readonly stop: IslandPoint
  readonly heading: number
  /** Metres from the stop to the standpoint, straight away from the landmark. */
  readonly away: number
  readonly parking: IslandPoint
  readonly landmark: DemoPlace['landmark']
  /** Metres above the sea at stop and standpoint; a test holds them against the elevation grid. */
  readonly elevations: readonly [number, number]
}

/** The three spots of the demo shoot: the track below Hallow Brae, the mole of Quennick harbour, the lay-by above Orvane Head. */
const SKETCHES: readonly Sketch[] = [
  {
    name: 'Track below Hallow Brae',
    stop: { east: -34, north: 122.4 },
    heading: 122,
    away: 9,
    parking: { east: 139, north: 180 },
    landmark: 'bridge',
    elevations: [55.2, 55.9],
  },
  {
    name: 'Quennick harbour wall',
    stop: { east: -206.9, north: -751.9 },
    heading: 336,
    away: 11,
    parking: { east: -341.5, north: -756.7 },
    landmark: 'bridge',
    elevations: [QUAY_LEVEL, QUAY_LEVEL],
  },
  {
    name: 'Orvane lay-by',
    stop: { east: 1599.8, north: -1858.4 },
    heading: 115,
    away: 14,
    parking: { east: 1621, north: -1868 },
    landmark: 'lighthouse',
    elevations: [73.4, 74.8],
  },
]

export const DEMO_PLACES: readonly DemoPlace[] = SKETCHES.map((sketch) => {
  const landmark = sketch.landmark === 'bridge' ? BRIDGE_MIDDLE : LIGHTHOUSE_PLAN
  const standpoint = step(sketch.stop, bearingBetween(landmark, sketch.stop), sketch.away)
  return {
    name: sketch.name,
    stop: toLatLon(sketch.stop),
    stopElevation: sketch.elevations[0],
    heading: sketch.heading,
    standpoint: toLatLon(standpoint),
    standpointElevation: sketch.elevations[1],
    parking: toLatLon(sketch.parking),
    landmark: sketch.landmark,
  }
})
