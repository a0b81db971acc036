/** Where the subject stops, the camera stands and one parks, in every spelling of a coordinate. */
import type { Plan } from '#core/plan/plan.ts'
import { sheetPlaces } from '#core/sheet/content.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { elevation } from '#renderer/text/figure.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { PhoneLink } from './link.tsx'

export function SheetPlaces({ plan, units }: { readonly plan: Plan; readonly units: UnitSystem }) {
  return (
    <div class="sheet-places">
      <table>
        <thead>
          <tr>
            <td />
            <th scope="col">{sheetWords.decimal}</th>
            <th scope="col">{sheetWords.dms}</th>
            <th scope="col">{sheetWords.utm}</th>
            <th scope="col">{sheetWords.mgrs}</th>
            <th scope="col">{sheetWords.elevation}</th>
          </tr>
        </thead>
        <tbody>
          {sheetPlaces(plan).map((place) => (
            <tr key={place.role}>
              <th scope="row">{sheetWords.roles[place.role]}</th>
              <td class="phone-links">
                <PhoneLink to={place.geoUri} text={sheetWords.phone.open} />
                <PhoneLink to={place.mapPage} text={sheetWords.phone.page} />
              </td>
              <td class="sheet-coordinate" data-name={sheetWords.decimal}>
                {place.decimal}
              </td>
              <td class="sheet-coordinate" data-name={sheetWords.dms}>
                {place.dms}
              </td>
              <td class="sheet-coordinate" data-name={sheetWords.utm}>
                {place.utm ?? sheetWords.noGrid}
              </td>
              <td class="sheet-coordinate" data-name={sheetWords.mgrs}>
                {place.mgrs ?? sheetWords.noGrid}
              </td>
              <td data-name={sheetWords.elevation}>
                {place.elevation === null ? sheetWords.unknown : elevation(place.elevation, units)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="phone-hint">{sheetWords.phone.select}</p>
    </div>
  )
}
