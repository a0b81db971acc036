/** The projected systems whose files can be read, by their EPSG numbers: those that agree with WGS84 within a metre, and national ones with their shift. */
import proj4, { type Converter } from 'proj4'
import { type LatLon, latLon } from './lat-lon.ts'

export interface ProjectedSystem {
  readonly name: string
  /** Metres that places may be off where the datum's shift is taken by seven parameters; null where it is a metre at most. */
  readonly accuracy: number | null
  /** Metres; NaN where the projection means nothing. */
  readonly toPlane: (at: LatLon) => { readonly east: number; readonly north: number }
  /** Null where the projection means nothing. */
  readonly toPlace: (east: number, north: number) => LatLon | null
}

interface Known {
  readonly name: string
  readonly definition: string
  readonly accuracy: number | null
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
  { datum: 'NAD83(2011)', base: 6_329, first: 1, last: 19, south: false },
  { datum: 'RDN2008', base: 6_675, first: 32, last: 34, south: false },
  { datum: 'RDN2008', base: 7_759, first: 32, last: 34, south: false },
]

/** NAD83(CSRS), whose zones have no order in the register. */
const CSRS_ZONES: Readonly<Record<number, number>> = {
  3154: 7,
  3155: 8,
  3156: 9,
  3157: 10,
  2955: 11,
  2956: 12,
  2957: 13,
  3158: 14,
  3159: 15,
  3160: 16,
  2958: 17,
  2959: 18,
  2960: 19,
  2961: 20,
  2962: 21,
  3761: 22,
  9709: 23,
  9713: 24,
}

const GRS80 = '+ellps=GRS80 +towgs84=0,0,0,0,0,0,0 +units=m +no_defs'

const OTHERS: Readonly<Record<number, readonly [name: string, definition: string]>> = {
  2056: [
    'Swiss LV95',
    '+proj=somerc +lat_0=46.9524055555556 +lon_0=7.43958333333333 +k_0=1 +x_0=2600000 +y_0=1200000 +ellps=bessel +towgs84=674.374,15.056,405.346,0,0,0,0 +units=m +no_defs',
  ],
  2154: ['Lambert-93', `+proj=lcc +lat_0=46.5 +lon_0=3 +lat_1=49 +lat_2=44 +x_0=700000 +y_0=6600000 ${GRS80}`],
  2157: ['Irish Transverse Mercator', `+proj=tmerc +lat_0=53.5 +lon_0=-8 +k=0.99982 +x_0=600000 +y_0=750000 ${GRS80}`],
  2180: ['Poland CS92', `+proj=tmerc +lat_0=0 +lon_0=19 +k=0.9993 +x_0=500000 +y_0=-5300000 ${GRS80}`],
  2193: ['NZTM 2000', `+proj=tmerc +lat_0=0 +lon_0=173 +k=0.9996 +x_0=1600000 +y_0=10000000 ${GRS80}`],
  3006: ['SWEREF99 TM', `+proj=utm +zone=33 ${GRS80}`],
  3035: ['ETRS89 LAEA Europe', `+proj=laea +lat_0=52 +lon_0=10 +x_0=4321000 +y_0=3210000 ${GRS80}`],
  3067: ['ETRS-TM35FIN', `+proj=utm +zone=35 ${GRS80}`],
  3416: [
    'ETRS89 Austria Lambert',
    `+proj=lcc +lat_0=47.5 +lon_0=13.3333333333333 +lat_1=49 +lat_2=46 +x_0=400000 +y_0=400000 ${GRS80}`,
  ],
  3812: [
    'Belgian Lambert 2008',
    `+proj=lcc +lat_0=50.797815 +lon_0=4.35921583333333 +lat_1=49.8333333333333 +lat_2=51.1666666666667 +x_0=649328 +y_0=665262 ${GRS80}`,
  ],
  3857: [
    'Web Mercator',
    '+proj=merc +a=6378137 +b=6378137 +lat_ts=0 +lon_0=0 +x_0=0 +y_0=0 +k=1 +units=m +nadgrids=@null +no_defs',
  ],
}

/** Seven parameters by the EPSG register (its transformations 1314, 1641, 9281, 15929, 1618, 5239, 4836), rotations in seconds of arc. */
const OSGB36 = '+ellps=airy +towgs84=446.448,-125.157,542.06,0.15,0.247,0.842,-20.489'
const IRISH = '+a=6377340.189 +rf=299.3249646 +towgs84=482.5,-130.6,564.6,-1.042,-0.214,-0.631,8.15'
const AMERSFOORT = '+ellps=bessel +towgs84=565.7381,50.4018,465.2904,-0.395026,0.330772,-1.876074,4.07244'
const BD72 = '+ellps=intl +towgs84=-106.8686,52.2978,-103.7239,0.3366,-0.457,1.8422,-1.2747'
const MGI = '+ellps=bessel +towgs84=577.326,90.129,463.919,5.137,1.474,5.297,2.4232'
const S_JTSK = '+ellps=bessel +towgs84=572.213,85.334,461.94,4.9732,1.529,5.2484,3.5378'
const JTSK03 = '+ellps=bessel +towgs84=485.021,169.465,483.839,7.786342,4.397554,4.102655,0'

const IRISH_GRID = `+proj=tmerc +lat_0=53.5 +lon_0=-8 +k=1.000035 +x_0=200000 +y_0=250000 ${IRISH} +units=m +no_defs`
const KROVAK = '+proj=krovak +lat_0=49.5 +lon_0=24.8333333333333 +alpha=30.2881397527778 +k=0.9999 +x_0=0 +y_0=0'

/** A strip of Gauss and Krüger. */
function austrianStrip(lon: string, east: number): string {
  return `+proj=tmerc +lat_0=0 +lon_0=${lon} +k=1 +x_0=${east} +y_0=-5000000 ${MGI} +units=m +no_defs`
}

/**
 * National systems on a datum of their own, whose grid of shifts is not at hand: by seven parameters for the whole country. The
 * last is how far off places then are, in metres: as the register says, and for Britain as its survey does (from memory).
 */
const SHIFTED: Readonly<Record<number, readonly [name: string, definition: string, accuracy: number]>> = {
  27_700: [
    'British National Grid',
    `+proj=tmerc +lat_0=49 +lon_0=-2 +k=0.9996012717 +x_0=400000 +y_0=-100000 ${OSGB36} +units=m +no_defs`,
    5,
  ],
  29_902: ['Irish Grid (TM65)', IRISH_GRID, 1],
  29_903: ['Irish Grid (TM75)', IRISH_GRID, 1],
  28_992: [
    'Dutch RD New',
    `+proj=sterea +lat_0=52.1561605555556 +lon_0=5.38763888888889 +k=0.9999079 +x_0=155000 +y_0=463000 ${AMERSFOORT} +units=m +no_defs`,
    1,
  ],
  31_370: [
    'Belgian Lambert 72',
    `+proj=lcc +lat_0=90 +lon_0=4.36748666666667 +lat_1=51.1666672333333 +lat_2=49.8333339 +x_0=150000.013 +y_0=5400088.438 ${BD72} +units=m +no_defs`,
    1,
  ],
  31_254: ['MGI Austria GK West', austrianStrip('10.3333333333333', 0), 2],
  31_255: ['MGI Austria GK Central', austrianStrip('13.3333333333333', 0), 2],
  31_256: ['MGI Austria GK East', austrianStrip('16.3333333333333', 0), 2],
  31_257: ['MGI Austria GK M28', austrianStrip('10.3333333333333', 150_000), 2],
  31_258: ['MGI Austria GK M31', austrianStrip('13.3333333333333', 450_000), 2],
  31_259: ['MGI Austria GK M34', austrianStrip('16.3333333333333', 750_000), 2],
  31_287: [
    'MGI Austria Lambert',
    `+proj=lcc +lat_0=47.5 +lon_0=13.3333333333333 +lat_1=49 +lat_2=46 +x_0=400000 +y_0=400000 ${MGI} +units=m +no_defs`,
    2,
  ],
  // Bohemia's parameters: in Slovakia, which has its own, places are 1.7 m off.
  5514: ['S-JTSK Krovak East North', `${KROVAK} ${S_JTSK} +units=m +no_defs`, 2],
  8353: ['S-JTSK (JTSK03) Krovak East North', `${KROVAK} ${JTSK03} +units=m +no_defs`, 1],
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
  4173: 'IRENET95',
  6706: 'RDN2008',
}

/** Null for a geographic system that can't be taken for WGS84. */
export function geographicName(epsg: number): string | null {
  return ALIKE[epsg] ?? null
}

/** Null for a system that is not read. */
export function projectedSystem(epsg: number): ProjectedSystem | null {
  const known = knownSystem(epsg)
  if (known === null) return null
  const { name, definition, accuracy } = known
  const converter: Converter = proj4(definition)
  return {
    name,
    accuracy,
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

function knownSystem(epsg: number): Known | null {
  const shifted = SHIFTED[epsg]
  if (shifted !== undefined) return { name: shifted[0], definition: shifted[1], accuracy: shifted[2] }
  const other = OTHERS[epsg]
  if (other !== undefined) return { name: other[0], definition: other[1], accuracy: null }
  const csrs = CSRS_ZONES[epsg]
  if (csrs !== undefined) return utm({ datum: 'NAD83(CSRS)', south: false }, csrs)
  const family = UTM_FAMILIES.find(({ base, first, last }) => epsg - base >= first && epsg - base <= last)
  return family === undefined ? null : utm(family, epsg - family.base)
}

function utm({ datum, south }: Pick<UtmFamily, 'datum' | 'south'>, zone: number): Known {
  const plane = datum === 'WGS 84' ? '+datum=WGS84 +units=m +no_defs' : GRS80
  return {
    name: `${datum} UTM zone ${zone}${south ? 'S' : 'N'}`,
    definition: `+proj=utm +zone=${zone}${south ? ' +south' : ''} ${plane}`,
    // The American frame has drifted from the world's: by the register's own parameters 1.0 to 1.3 m in Canada.
    accuracy: datum.startsWith('NAD83') ? 2 : null,
  }
}
