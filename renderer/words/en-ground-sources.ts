/** Words of the sources of elevation data in the settings. */
import type { GroundSourceBrief } from '#app/contract/ground.ts'

export const groundSourceWords = {
  question: 'Where does elevation data come from?',
  order: 'Sources are used in this order; each fills the gaps of those above it.',
  datum:
    'Heights are above sea level: above the geoid EGM96 where they come from SRTM. A GPS receiver may show heights above the ellipsoid, up to 100 m off: don’t mix the two.',
  list: 'Sources of elevation data, in order',
  loading: 'Checking the files…',
  earlier: (name: string) => `Move ${name} up`,
  later: (name: string) => `Move ${name} down`,
  remove: (name: string) => `Delete ${name}`,
  removed: (name: string) => `Deleted the elevation file “${name}”.`,
  add: 'Add elevation files',
  addHint: (limit: string, folder: string) =>
    `.hgt squares of SRTM, also in .zip files, or GeoTIFFs, up to ${limit} each. Larger ones can be put into ${folder} by hand.`,
  adding: (name: string) => `Adding ${name}…`,
  added: (names: readonly string[]) =>
    names.length === 1
      ? `Added ${names[0]}.`
      : `Added ${names.length} files: ${names.slice(0, 5).join(', ')}${names.length > 5 ? ' …' : '.'}`,
  tooLarge: (name: string, limit: string) => `${name} is larger than ${limit}, the most that can be added here.`,
  here: {
    covers: (resolution: string | null) =>
      resolution === null ? 'Covers this place.' : `Covers this place at ${resolution}.`,
    gap: 'Has a gap at this place.',
    outside: 'Does not cover this place.',
    asked: 'Used only where the sources above have no data.',
    off: 'Off: nothing is downloaded.',
  },
  between: (resolution: string) => `${resolution} between samples`,
  noGaps: 'no gaps',
  gaps: (share: string) => `${share} missing`,
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
  tilesOn: 'Download elevation data from the web',
  tilesHint:
    'Only tiles around your spot are downloaded, a few at a time, and stored for reuse. Far away they are coarse: crests there may be a few hundredths of a degree higher than shown. The demo island needs none.',
  tilesAddress: 'Another service',
  address: 'Address of a tile',
  addressHint: 'https address with {z}, {x} and {y}. Leave empty for the usual one.',
  maxZoom: 'Highest zoom level',
  badZoom: (deepest: number) => `The highest zoom level is a whole number from 0 to ${deepest}.`,
  attribution: 'Credit line',
  attributionHint: 'Leave empty for the usual line.',
} as const
