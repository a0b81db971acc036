/** Distances and bearings, true and magnetic, as a table of the sheet, and what turns the one into the other. */
import { type Declination, DECLINATION_YEARS } from '#core/geo/declination.ts'
import type { SheetDirections, SheetRole } from '#core/sheet/content.ts'
import { magneticBearing } from '#core/sheet/content.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { bearing, degreesText, metres } from '#renderer/text/figure.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'

interface DirectionsProps {
  readonly directions: SheetDirections
  readonly units: UnitSystem
  /** The subject's, true. */
  readonly heading: number
  readonly landmark: string
}

function bearingText(value: number | null): string {
  return value === null ? sheetWords.unknown : bearing(value)
}

export function SheetDirectionsTable({ directions, units, heading, landmark }: DirectionsProps) {
  const { declination, rows } = directions
  const name = (role: SheetRole): string => (role === 'landmark' ? landmark : sheetWords.roles[role])
  return (
    <table class="sheet-directions-table">
      <thead>
        <tr>
          <th scope="col">{sheetWords.fromTo}</th>
          <th scope="col">{sheetWords.distance}</th>
          <th scope="col">{sheetWords.trueBearing}</th>
          <th scope="col">{sheetWords.magnetic}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={`${row.from} ${row.to}`}>
            <td>{sheetWords.way(name(row.from), name(row.to))}</td>
            <td class="figure">{metres(row.distance, units)}</td>
            <td class="figure">{bearingText(row.bearing)}</td>
            <td class="figure">{bearingText(row.magnetic)}</td>
          </tr>
        ))}
        <tr>
          <td colSpan={2}>{sheetWords.heading}</td>
          <td class="figure">{bearingText(heading)}</td>
          <td class="figure">{bearingText(magneticBearing(heading, declination))}</td>
        </tr>
      </tbody>
    </table>
  )
}

export function DeclinationNote({
  declination,
  day,
}: {
  readonly declination: Declination | null
  readonly day: string
}) {
  if (declination === null)
    return (
      <p class="sheet-small">{sheetWords.declinationUnknown(day, DECLINATION_YEARS.first, DECLINATION_YEARS.last)}</p>
    )
  const { degrees, model, compass } = declination
  const side = degrees < 0 ? sheetWords.west : sheetWords.east
  return (
    <p class="sheet-small">
      {sheetWords.declination(degreesText(Math.abs(degrees)), side, model, day)}
      {compass === 'good' ? '' : ` ${sheetWords.compassCaution}`}
    </p>
  )
}
