/** The projected systems whose files can be read, by their EPSG numbers: those that agree with WGS84 within about a metre. */
import proj4, { type Converter } from 'proj4'
import { type LatLon, latLon } from './lat-lon.ts'

export interface ProjectedSystem {
  readonly name: string
  /** Metres; NaN where the projection means nothing. */
  readonly toPlane: (at: LatLon) => { readonly east: number; readonly north: number }
  /** Null where the projection means nothing. */
  readonly toPlace: (east: number, north: number) => LatLon | null
}

interface UtmFamily {
  readonly datum: string
  /** EPSG number of zone 0, so to speak. */
  readonly base: number
  readonly first: number
  readonly last: number
  readonly south: boolean
}

/** From the EPSG register, from memory; numbers and parameters are proved against GDAL's in the tests. */
const UTM_FAMILIES: readonly UtmFamily[] = [
  { datum: 'WGS 84', base: 32_600, first: 1, last: 60, south: false },
  { datum: 'WGS 84', base: 32_700, first: 1, last: 60, south: true },
  { datum: 'ETRS89', base: 25_800, first: 28, last: 38, south: false },
  { datum: 'NAD83', base: 26_900, first: 1, last: 23, south: false },
  { datum: 'GDA94', base: 28_300, first: 48, last: 58, south: true },
  { datum: 'GDA2020', base: 7_800, first: 46, last: 59, south: true },
  { datum: 'SIRGAS 2000', base: 31_954, first: 11, last: 22, south: false },
  { datum: 'SIRGAS 2000', base: 31_960, first: 17, last: 25, south: true },
]

const GRS80 = '+ellps=GRS80 +towgs84=0,0,0,0,0,0,0 +units=m +no_defs'

const OTHERS: Readonly<Record<number, readonly [name: string, definition: string]>> = {
  2056: [
    'Swiss LV95',
    '+proj=somerc +lat_0=46.9524055555556 +lon_0=7.43958333333333 +k_0=1 +x_0=2600000 +y_0=1200000 +ellps=bessel +towgs84=674.374,15.056,405.346,0,0,0,0 +units=m +no_defs',
  ],
  2154: ['Lambert-93', `+proj=lcc +lat_0=46.5 +lon_0=3 +lat_1=49 +lat_2=44 +x_0=700000 +y_0=6600000 ${GRS80}`],
  2180: ['Poland CS92', `+proj=tmerc +lat_0=0 +lon_0=19 +k=0.9993 +x_0=500000 +y_0=-5300000 ${GRS80}`],
  2193: ['NZTM 2000', `+proj=tmerc +lat_0=0 +lon_0=173 +k=0.9996 +x_0=1600000 +y_0=10000000 ${GRS80}`],
  3006: ['SWEREF99 TM', `+proj=utm +zone=33 ${GRS80}`],
  3035: ['ETRS89 LAEA Europe', `+proj=laea +lat_0=52 +lon_0=10 +x_0=4321000 +y_0=3210000 ${GRS80}`],
  3067: ['ETRS-TM35FIN', `+proj=utm +zone=35 ${GRS80}`],
  3857: [
    'Web Mercator',
    '+proj=merc +a=6378137 +b=6378137 +lat_ts=0 +lon_0=0 +x_0=0 +y_0=0 +k=1 +units=m +nadgrids=@null +no_defs',
  ],
}

/** Geographic systems that agree with WGS84 within about a metre: WGS 84, ETRS89, NAD83 and its successors, GDA, NZGD2000, RGF93. */
const ALIKE: Readonly<Record<number, string>> = {
  4326: 'WGS 84',
  4258: 'ETRS89',
  4269: 'NAD83',
  4283: 'GDA94',
  7844: 'GDA2020',
  4167: 'NZGD2000',
  4171: 'RGF93',
  4674: 'SIRGAS 2000',
  6318: 'NAD83(2011)',
  4617: 'NAD83(CSRS)',
  4619: 'SWEREF99',
}

/** Null for a geographic system that can't be taken for WGS84. */
export function geographicName(epsg: number): string | null {
  return ALIKE[epsg] ?? null
}

/** Null for a system that is not read. */
export function projectedSystem(epsg: number): ProjectedSystem | null {
  const known = definitionOf(epsg)
  if (known === null) return null
  const [name, definition] = known
  const converter: Converter = proj4(definition)
  return {
    name,
    toPlane: ({ lat, lon }) => {
      const [east = Number.NaN, north = Number.NaN] = converter.forward([lon, lat])
      return Number.isFinite(east + north) ? { east, north } : { east: Number.NaN, north: Number.NaN }
    },
    toPlace: (east, north) => {
      const [lon = Number.NaN, lat = Number.NaN] = converter.inverse([east, north])
      return Number.isFinite(lon) && Math.abs(lat) <= 90 ? latLon(lat, lon) : null
    },
  }
}

function definitionOf(epsg: number): readonly [name: string, definition: string] | null {
  const other = OTHERS[epsg]
  if (other !== undefined) return other
  const family = UTM_FAMILIES.find(({ base, first, last }) => epsg - base >= first && epsg - base <= last)
  if (family === undefined) return null
  const zone = epsg - family.base
  const south = family.south ? ' +south' : ''
  return [
    `${family.datum} UTM zone ${zone}${family.south ? 'S' : 'N'}`,
    `+proj=utm +zone=${zone}${south} ${family.datum === 'WGS 84' ? '+datum=WGS84 +units=m +no_defs' : GRS80}`,
  ]
}
