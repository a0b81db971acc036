/** Words of the sources of elevations in the settings. */
import type { GroundSourceBrief } from '#app/contract/ground.ts'

export const groundSourceWords = {
  question: 'Where does the ground come from?',
  order: 'The first source that knows a piece of ground is believed; the next ones fill its gaps.',
  datum:
    'Heights are above the sea: above the geoid EGM96 where they come from SRTM. A GPS may show heights above the ellipsoid, which differ by up to 100 m: do not mix the two.',
  list: 'Sources of elevations, first one first',
  loading: 'Looking at the files …',
  earlier: (name: string) => `Ask ${name} earlier`,
  later: (name: string) => `Ask ${name} later`,
  remove: (name: string) => `Remove ${name}`,
  removed: (name: string) => `Deleted the elevation file “${name}”.`,
  add: 'Add elevation files',
  addHint: (limit: string, folder: string) =>
    `.hgt squares of SRTM, also in .zip files, or GeoTIFFs, up to ${limit} each. Larger ones can be put into ${folder} by hand.`,
  adding: (name: string) => `Taking in ${name} …`,
  added: (names: readonly string[]) =>
    names.length === 1
      ? `Added ${names[0]}.`
      : `Added ${names.length} files: ${names.slice(0, 5).join(', ')}${names.length > 5 ? ' …' : '.'}`,
  tooLarge: (name: string, limit: string) => `${name} is larger than ${limit}, the most that is taken in here.`,
  here: {
    covers: (resolution: string | null) =>
      resolution === null ? 'Covers this place.' : `Covers this place at ${resolution}.`,
    gap: 'Has a gap at this place.',
    outside: 'Does not reach this place.',
    asked: 'Asked when ground is needed and no source before it knows it.',
    off: 'Off: nothing is asked for.',
  },
  between: (resolution: string) => `${resolution} between samples`,
  noGaps: 'no gaps',
  gaps: (share: string) => `${share} of it gaps`,
  heights: (what: string) => `Heights ${what}.`,
  /** Beside its name: what that tells already is not said again. */
  kinds: {
    demo: 'comes with Standpoint',
    hgt: 'square of one degree',
    geotiff: 'GeoTIFF',
    tiles: 'in Terrarium encoding',
  } satisfies Record<GroundSourceBrief['kind'], string>,
  megabytes: (count: string) => `${count} MB`,
  gigabytes: (count: string) => `${count} GB`,
  bounds: (south: string, north: string, west: string, east: string) => `${south} to ${north}, ${west} to ${east}`,
  tilesOn: 'Fetch elevations from the web',
  tilesHint:
    'The tiles around the place at work are asked for by the rules of the map’s: kept, few at a time, by no name but Standpoint’s. Far off they are coarse, each height a mean: crests there may stand some hundredths of a degree higher than is reckoned. The demo island needs none.',
  tilesAddress: 'Another service',
  address: 'Address of a tile',
  addressHint: 'https address with {z}, {x} and {y}. Leave empty for the usual one.',
  maxZoom: 'Deepest zoom',
  badZoom: (deepest: number) => `The deepest zoom is a whole number from 0 to ${deepest}.`,
  attribution: 'Who is to be named',
  attributionHint: 'Leave empty for the usual words.',
} as const
