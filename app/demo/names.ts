/** Names on the demo island, all invented, with where they are written and how much they matter. */
import type { Ground } from './ground.ts'
import { BEACHES } from './ground.ts'
import { type IslandPoint, step } from './island-frame.ts'
import { HILLS, LAKE_PLAN } from './island-places.ts'
import { summitOf, VILLAGES } from './network.ts'
import { soundMiddle } from './terrain.ts'

export const NAME_CLASSES = ['island', 'village', 'summit', 'head', 'feature', 'landmark', 'water', 'sea'] as const

export interface PlaceName {
  readonly name: string
  readonly class: (typeof NAME_CLASSES)[number]
  /** 1 is written first and at the smallest zooms. */
  readonly importance: number
  /** One point, or the line along which the name runs. */
  readonly at: readonly IslandPoint[]
  /** Metres above the sea, for summits. */
  readonly elevation?: number
}

const SPOTS: readonly (readonly [string, PlaceName['class'], number, number, number])[] = [
  ['Orlavay', 'island', 1, -1350, 560],
  ['Orvane Head', 'head', 3, 1360, -2560],
  ['Ulvet Ness', 'head', 3, -3580, 1830],
  ['Tarrow Point', 'head', 4, 3960, 1240],
  ['Pell Ness', 'head', 4, -1420, -2640],
  ['Nevick Horn', 'head', 4, -3890, 120],
  ['Corran Neb', 'head', 4, -120, 2800],
  ['The Three Aunts', 'feature', 5, 860, -3190],
  ['Dunnel Wood', 'feature', 5, 1660, -90],
  ['Hallow Farm', 'feature', 6, -560, -60],
  ['Kesper Farm', 'feature', 6, -2000, -560],
  ['Rushet', 'feature', 6, -1750, 1880],
  ['Marl End', 'feature', 6, 950, 900],
  ['Ellen Garth', 'feature', 6, 3420, 620],
  ['Sallow Garth', 'feature', 6, 1620, 2100],
  ['Quennick Harbour', 'feature', 6, -215, -690],
]

/** Water names written along a line, by its points. */
const LINES: readonly (readonly [string, PlaceName['class'], number, readonly (readonly [number, number])[]])[] = [
  [
    'Ossel Bay',
    'sea',
    3,
    [
      [-2620, -2260],
      [-1960, -2260],
    ],
  ],
  [
    'Whitten Bay',
    'sea',
    4,
    [
      [3120, -1120],
      [3660, -1120],
    ],
  ],
  [
    'North Roads',
    'sea',
    4,
    [
      [420, 3260],
      [1100, 3260],
    ],
  ],
]

export function islandNames(ground: Ground): PlaceName[] {
  const names: PlaceName[] = SPOTS.map(([name, kind, importance, east, north]) => ({
    name,
    class: kind,
    importance,
    at: [{ east, north }],
  }))
  for (const village of VILLAGES) {
    const importance = village.houses > 50 ? 1 : 2
    names.push({ name: village.name, class: 'village', importance, at: [village.at] })
  }
  for (const hill of HILLS) {
    if (hill.name === null) continue
    const at = summitOf(ground, hill.at, 420)
    const elevation = Math.round(ground.heightAt(at))
    names.push({ name: hill.name, class: 'summit', importance: elevation > 150 ? 2 : 3, at: [at], elevation })
  }
  for (const beach of BEACHES) names.push({ name: beach.name, class: 'feature', importance: 4, at: [beach.at] })
  for (const [name, kind, importance, line] of LINES) {
    names.push({ name, class: kind, importance, at: line.map(([east, north]) => ({ east, north })) })
  }
  names.push(...waters())
  return names
}

/** Bridge and lighthouse bear no name on the sketch: they are the demo's landmarks, which the plan names itself. */
function waters(): PlaceName[] {
  const sound = [-380, -640, -900, -1160, -1420, -1680].map((north) => ({
    east: soundMiddle(north) + 30 + (north + 380) * -0.06,
    north,
  }))
  const lake = LAKE_PLAN.middle
  return [
    { name: 'Sound of Merrin', class: 'sea', importance: 1, at: sound },
    { name: 'Kesper Water', class: 'water', importance: 3, at: [step(lake, 195, 170), step(lake, 15, 170)] },
  ]
}
