/** Distances and bearings, true and magnetic, as a table of the sheet. */
import { DECLINATION_YEARS } from '#core/geo/declination.ts'
import type { SheetDirections, SheetRole } from '#core/sheet/content.ts'
import { magneticBearing } from '#core/sheet/content.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { bearing, degreesText, metres } from '#renderer/text/figure.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'

interface DirectionsProps {
  readonly directions: SheetDirections
  readonly units: UnitSystem
  readonly day: string
  /** The subject's, true. */
  readonly heading: number
  readonly landmark: string
}

export function SheetDirectionsTable({ directions, units, day, heading, landmark }: DirectionsProps) {
  const { declination, rows } = directions
  const name = (role: SheetRole): string => (role === 'landmark' ? landmark : sheetWords.roles[role])
  const turned = magneticBearing(heading, declination)
  return (
    <>
      <table class="sheet-directions-table">
        <thead>
          <tr>
            <th scope="col">{sheetWords.from}</th>
            <th scope="col">{sheetWords.to}</th>
            <th scope="col">{sheetWords.distance}</th>
            <th scope="col">{sheetWords.trueBearing}</th>
            <th scope="col">{sheetWords.magnetic}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={`${row.from} ${row.to}`}>
              <td>{name(row.from)}</td>
              <td>{name(row.to)}</td>
              <td class="figure">{metres(row.distance, units)}</td>
              <td class="figure">{row.bearing === null ? sheetWords.unknown : bearing(row.bearing)}</td>
              <td class="figure">{row.magnetic === null ? sheetWords.unknown : bearing(row.magnetic)}</td>
            </tr>
          ))}
          <tr>
            <td colSpan={3}>{sheetWords.heading}</td>
            <td class="figure">{bearing(heading)}</td>
            <td class="figure">{turned === null ? sheetWords.unknown : bearing(turned)}</td>
          </tr>
        </tbody>
      </table>
      <p class="sheet-small">
        {declination === null
          ? sheetWords.declinationUnknown(day, DECLINATION_YEARS.first, DECLINATION_YEARS.last)
          : sheetWords.declination(
              degreesText(Math.abs(declination.degrees)),
              declination.degrees < 0 ? sheetWords.west : sheetWords.east,
              declination.model,
              day,
            )}
        {declination !== null && declination.compass !== 'good' ? ` ${sheetWords.compassCaution}` : ''}
      </p>
    </>
  )
}
