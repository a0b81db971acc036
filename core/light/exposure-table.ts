/** The published table of exposure values in daylight and at night (ANSI PH2.7-1973 and 1986), line by line, at ISO 100. */

interface TableLine {
  readonly id: string
  /** EV at ISO 100; the two differ where the table gives a range. */
  readonly low: number
  readonly high: number
}

/** Sun values hold from about two hours after sunrise to two hours before sunset, for light from the front. */
export const EXPOSURE_TABLE = [
  { id: 'sand-or-snow-in-sun', low: 16, high: 16 },
  { id: 'sun', low: 15, high: 15 },
  { id: 'hazy-sun', low: 14, high: 14 },
  { id: 'cloudy-bright', low: 13, high: 13 },
  { id: 'heavy-overcast', low: 12, high: 12 },
  { id: 'open-shade', low: 12, high: 12 },
  { id: 'rainbow-on-clear-sky', low: 15, high: 15 },
  { id: 'rainbow-on-cloudy-sky', low: 14, high: 14 },
  { id: 'sky-just-before-sunset', low: 12, high: 14 },
  { id: 'sky-at-sunset', low: 12, high: 12 },
  { id: 'sky-just-after-sunset', low: 9, high: 11 },
  { id: 'moon-full', low: 15, high: 15 },
  { id: 'moon-gibbous', low: 14, high: 14 },
  { id: 'moon-quarter', low: 13, high: 13 },
  { id: 'moon-crescent', low: 12, high: 12 },
  { id: 'moonlight-full', low: -3, high: -2 },
  { id: 'moonlight-gibbous', low: -4, high: -4 },
  { id: 'moonlight-quarter', low: -6, high: -6 },
  { id: 'neon', low: 9, high: 10 },
  { id: 'bright-streets', low: 8, high: 8 },
  { id: 'window-displays', low: 7, high: 8 },
  { id: 'vehicle-traffic', low: 5, high: 5 },
  { id: 'floodlit-buildings', low: 3, high: 5 },
  { id: 'distant-lit-buildings', low: 2, high: 2 },
  { id: 'aurora-bright', low: -4, high: -3 },
] as const satisfies readonly TableLine[]

export type TableLineId = (typeof EXPOSURE_TABLE)[number]['id']

const MIDDLES: ReadonlyMap<TableLineId, number> = new Map(
  EXPOSURE_TABLE.map((line) => [line.id, (line.low + line.high) / 2]),
)

/** The middle of a line's range. */
export function tableValue(id: TableLineId): number {
  const value = MIDDLES.get(id)
  if (value === undefined) throw new Error(`The exposure table has no line ${id}.`)
  return value
}
