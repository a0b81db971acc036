/** Owns the list of tile sources as data: the built-in ones, the user's own, and what the page is told of them. */
import type { Settings } from '#app/contract/settings.ts'
import type { TileSourceBrief } from '#app/contract/tiles.ts'

export interface TileSource {
  readonly id: string
  readonly name: string
  /** URL with {z} {x} {y}; {s} stands for one of the hosts a, b, c; {key} for the user's key. */
  readonly template: string
  /** Beyond this the page enlarges what it has; nothing deeper is asked for. */
  readonly maxNativeZoom: number
  /** Plain text, shown wherever the tiles are. */
  readonly attribution: string
  readonly attributionLink: string
  readonly terms: string
  /** Made by the user in the settings. */
  readonly own: boolean
  /** The template is not the one this program came with, so its address has to be looked at before each use. */
  readonly changed: boolean
}

type BuiltIn = Omit<TileSource, 'own' | 'changed'>

/** Addresses, zooms and terms are from memory, not read off the services: `settings.templates` replaces any address. */
const BUILT_IN: readonly BuiltIn[] = [
  {
    id: 'openstreetmap',
    name: 'OpenStreetMap',
    template: 'https://tile.openstreetmap.org/{z}/{x}/{y}.png',
    maxNativeZoom: 19,
    attribution: '© OpenStreetMap contributors',
    attributionLink: 'https://www.openstreetmap.org/copyright',
    terms: 'Data under ODbL. A donated service: for looking at, not for downloading areas ahead of time.',
  },
  {
    id: 'opentopomap',
    name: 'OpenTopoMap',
    template: 'https://{s}.tile.opentopomap.org/{z}/{x}/{y}.png',
    maxNativeZoom: 17,
    attribution: 'Map data © OpenStreetMap contributors, SRTM; map style © OpenTopoMap (CC-BY-SA)',
    attributionLink: 'https://opentopomap.org/about',
    terms:
      'Map style under CC-BY-SA 3.0. A volunteer service: for looking at, not for downloading areas ahead of time.',
  },
  {
    // The 2016 mosaic is the one under CC-BY; later years are for non-commercial use only.
    id: 'sentinel-2-cloudless',
    name: 'Sentinel-2 cloudless 2016',
    template: 'https://tiles.maps.eox.at/wmts/1.0.0/s2cloudless_3857/default/g/{z}/{y}/{x}.jpg',
    maxNativeZoom: 14,
    attribution:
      'Sentinel-2 cloudless by EOX IT Services GmbH (contains modified Copernicus Sentinel data 2016 & 2017), CC BY 4.0',
    attributionLink: 'https://s2maps.eu',
    terms: 'Imagery of about 10 m a pixel under CC BY 4.0: name the source wherever it is shown or printed.',
  },
  {
    id: 'usgs-imagery',
    name: 'USGS imagery (USA)',
    template: 'https://basemap.nationalmap.gov/arcgis/rest/services/USGSImageryOnly/MapServer/tile/{z}/{y}/{x}',
    maxNativeZoom: 16,
    attribution: 'Imagery: U.S. Geological Survey, The National Map',
    attributionLink: 'https://www.usgs.gov/programs/national-geospatial-program/national-map',
    terms: 'Public domain. Detailed for the United States; coarse or empty elsewhere.',
  },
]

/** Every source by the settings: built-in ones first, and no own one may take a built-in's id. */
export function tileSourcesOf(settings: Pick<Settings, 'ownSources' | 'templates'>): readonly TileSource[] {
  const builtIn = BUILT_IN.map((source) => {
    const template = settings.templates[source.id]?.trim() || source.template
    return { ...source, template, own: false, changed: template !== source.template }
  })
  const taken = new Set(builtIn.map((source) => source.id))
  const own = settings.ownSources
    .filter((source) => !taken.has(source.id))
    .map((source) => ({
      ...source,
      terms: 'Your own source: its terms of use are yours to keep.',
      own: true,
      changed: true,
    }))
  return [...builtIn, ...own]
}

/** What the page may know of a source: never its address, which can hold a key. */
export function briefOf(source: TileSource): TileSourceBrief {
  return {
    id: source.id,
    name: source.name,
    maxNativeZoom: source.maxNativeZoom,
    attribution: source.attribution,
    attributionLink: webLink(source.attributionLink),
    terms: source.terms,
    needsKey: needsKey(source),
    own: source.own,
  }
}

export function needsKey(source: Pick<TileSource, 'template'>): boolean {
  return source.template.includes('{key}')
}

/** A link the user typed goes into the page, so a script address must not get there. */
function webLink(text: string): string {
  return /^https?:\/\//i.test(text) && URL.canParse(text) ? text : ''
}
