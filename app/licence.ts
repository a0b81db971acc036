/** The licences of what ships, as the build gathers them and the page shows them. */

export interface Licence {
  /** Of a package with its version, or of several under one text; of data with what it is for. */
  readonly name: string
  /** In short, as MIT. */
  readonly licence: string
  readonly text: string
}

export interface Licences {
  /** The project's own, in full. */
  readonly own: string
  readonly data: readonly Licence[]
  readonly software: readonly Licence[]
}

/** Its place among the page's files. */
export const LICENCES_FILE = 'licences.json'
