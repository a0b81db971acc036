/** What ships that is no package of its own: data and programs within, with the licence each is under. */

export interface DataCredit {
  readonly name: string
  /** As it is called by its makers. */
  readonly licence: string
  /** Its name in the SPDX list, by which the full text is found; null where there is no licence to quote. */
  readonly spdx: string | null
  readonly note: string
}

export const DATA_CREDITS: readonly DataCredit[] = [
  {
    name: 'GeoNames: names and places of towns',
    licence: 'CC BY 4.0',
    spdx: 'CC-BY-4.0',
    note: 'From geonames.org, shortened to towns and brought into a form of our own.',
  },
  {
    name: 'Time zone boundaries',
    licence: 'ODbL 1.0',
    spdx: 'ODbL-1.0',
    note: 'timezone-boundary-builder, made from OpenStreetMap. © OpenStreetMap contributors.',
  },
  {
    name: 'Natural Earth: coasts and borders',
    licence: 'public domain',
    spdx: null,
    note: 'Natural Earth gives its map data into the public domain; nobody needs to be asked or named. Made with Natural Earth.',
  },
  {
    name: 'World Magnetic Model: magnetic declination',
    licence: 'public domain',
    spdx: null,
    note: 'By the U.S. National Centers for Environmental Information and the British Geological Survey; not subject to copyright.',
  },
  { name: 'SQLite: the library’s files', licence: 'public domain, with a blessing', spdx: 'blessing', note: '' },
  {
    name: 'Electron, Chromium and Node.js: the desktop program’s shell',
    licence: 'MIT and many others',
    spdx: null,
    note: 'Their texts are long and lie as files of their own beside the installed program: LICENSE.electron.txt and LICENSES.chromium.html.',
  },
]

/** Packages that name their licence but bring no text of it: the file of theirs whose head says whose they are. */
export const HOLDER_IN: Readonly<Record<string, string>> = {
  'qrcode-generator': 'dist/qrcode.js',
  lerc: 'LercDecode.js',
}

/** Packages that bring the text of their licence without naming it: its name in the SPDX list, by the text. */
export const LICENCE_OF: Readonly<Record<string, string>> = { suncalc: 'BSD-2-Clause' }
