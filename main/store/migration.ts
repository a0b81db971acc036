/** One step of the library file's form: pure SQL, run once in its place, never changed afterwards. */

export interface Migration {
  /** The form the file has afterwards: a multiple of ten, as the file's name says. */
  readonly form: number
  readonly script: string
}
