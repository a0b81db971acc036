/** The location sheet itself: one page for the day, the same on screen, on paper and in a saved file. */
import { type SheetProps } from './sheet-props.ts'
import type { ComponentChildren } from 'preact'
import type { Plan } from '#core/plan/plan.ts'
import { qrPlace, sheetDirections, sheetPlaces } from '#core/sheet/content.ts'
import { formatDay } from '#core/time/civil.ts'
import { dateText } from '#core/time/date-text.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { lightCautions } from '#renderer/text/light-text.ts'
import { LensDrawing } from '#renderer/view/lens-picture/lens-drawing.tsx'
import { elevation } from '#renderer/text/figure.ts'
import { hazardSentences } from '#renderer/text/hazard-text.ts'
import { landmarkName, shootName, spotName } from '#renderer/text/names.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { spotWords } from '#renderer/words/en-spot.ts'
import { QrCode } from './qr-code.tsx'
import { TolerancesPart } from './sheet-tolerances.tsx'
import { SheetGround, SheetProfile } from './sheet-ground.tsx'
import { SheetLight } from './sheet-light.tsx'
import { SheetDirectionsTable } from './sheet-directions.tsx'
import { SheetSettings } from './sheet-settings.tsx'
import { elevationCredits } from '#renderer/view/sketch/painted-credits.ts'
import { stillCredits } from '#renderer/view/still-map/still-credits.ts'
import { SmallMap } from '#renderer/view/still-map/small-map.tsx'

function Part({
  title,
  children,
  name,
}: {
  readonly title: string
  readonly children: ComponentChildren
  readonly name: string
}) {
  return (
    <section class={`sheet-part sheet-${name}`}>
      <h2>{title}</h2>
      {children}
    </section>
  )
}

export function SheetDocument(props: SheetProps) {
  const { plan, assessment, units, day } = props
  const { spot, shoot } = plan
  const name = spotName(spot)
  const directions = sheetDirections(plan, assessment, spot.when)
  const upright = spot.shot.orientation === 'upright'
  const size = { width: upright ? 610 : 400, height: 262 }
  const credits = stillCredits(props.base.source, plan, size.width, size.height)
  return (
    <article class="sheet" lang="en">
      <div class="sheet-fit">
        <header class="sheet-head">
          <div>
            <h1>{name}</h1>
            <p>{shootName(shoot)}</p>
          </div>
          <p class="sheet-day">
            {spotWords.statuses[spot.status]} · {sheetWords.planned(day)}
          </p>
        </header>
        <div class="sheet-pictures">
          <figure class="sheet-map">
            <SmallMap
              plan={plan}
              assessment={assessment}
              {...size}
              base={props.base}
              units={units}
              label={sheetWords.mapLabel(name)}
              onPainted={props.onPainted}
            />
            <figcaption>
              <span class="sheet-map-credit">{credits.join(' · ')}</span>
              {props.missing > 0 ? ` ${sheetWords.missingTiles(props.missing)}` : ''}
            </figcaption>
          </figure>
          <figure class={upright ? 'sheet-frame sheet-frame-upright' : 'sheet-frame'}>
            {assessment.view === null ? (
              <p>{sheetWords.notFramed}</p>
            ) : (
              <LensDrawing plan={plan} assessment={assessment} width={upright ? 172 : 318} onPaper />
            )}
          </figure>
          <SheetProfile {...props} at="picture" />
        </div>
        <div class="sheet-columns">
          <Part title={sheetWords.settings} name="settings">
            <SheetSettings plan={plan} assessment={assessment} units={units} />
          </Part>
          <Part title={sheetWords.directions} name="directions">
            <SheetDirectionsTable
              directions={directions}
              units={units}
              day={formatDay(props.daylight.day.date)}
              heading={spot.stop.heading}
              landmark={landmarkName(plan.landmark)}
            />
          </Part>
        </div>
        <SheetLight plan={plan} assessment={assessment} daylight={props.daylight} units={units}>
          <SheetGround {...props} />
        </SheetLight>
        <TolerancesPart {...props} />
        <Places plan={plan} units={units} />
        <div class="sheet-columns sheet-columns-last">
          <Part title={sheetWords.access} name="access">
            <Goal plan={plan} />
            <p>{accessText(plan)}</p>
            <h2>{sheetWords.permission}</h2>
            <p>{permissionText(plan)}</p>
            {spot.notes === '' ? null : <h2>{sheetWords.notes}</h2>}
            {spot.notes === '' ? null : <p class="sheet-notes">{spot.notes}</p>}
          </Part>
          <Cautions plan={plan} assessment={assessment} />
        </div>
        <footer class="sheet-foot">
          {[sheetWords.madeWith, ...new Set([...credits, ...elevationCredits(props.elevations)])].join(' · ')}
        </footer>
      </div>
    </article>
  )
}

function accessText(plan: Plan): string {
  const { access } = plan.spot
  const parts = [access.walkMinutes === null ? '' : sheetWords.walk(String(access.walkMinutes)), access.surface].filter(
    (part) => part !== '',
  )
  return parts.length === 0 ? sheetWords.noAccess : `${parts.join(', ')}.`
}

function permissionText(plan: Plan): string {
  const { permission } = plan.spot
  return [
    spotWords.permissions[permission.state],
    permission.whom,
    permission.until === null ? '' : sheetWords.until(dateText(permission.until)),
  ]
    .filter((part) => part !== '')
    .join(' · ')
}

/** The place one goes to first, for a telephone to read. */
function Goal({ plan }: { readonly plan: Plan }) {
  const goal = qrPlace(plan)
  const role = sheetWords.roles[goal.role]
  return (
    <figure class="sheet-qr">
      <QrCode text={goal.geoUri} label={sheetWords.qrLabel(role)} />
      <figcaption>
        {sheetWords.qr(role)}
        <br />
        <code>{goal.geoUri}</code>
      </figcaption>
    </figure>
  )
}

function Places({ plan, units }: { readonly plan: Plan; readonly units: UnitSystem }) {
  return (
    <section class="sheet-part sheet-places">
      <h2>{sheetWords.where}</h2>
      <div class="sheet-places-body">
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
                <td data-name={sheetWords.decimal}>{place.decimal}</td>
                <td data-name={sheetWords.dms}>{place.dms}</td>
                <td data-name={sheetWords.utm}>{place.utm ?? sheetWords.noGrid}</td>
                <td data-name={sheetWords.mgrs}>{place.mgrs ?? sheetWords.noGrid}</td>
                <td data-name={sheetWords.elevation}>
                  {place.elevation === null ? sheetWords.unknown : elevation(place.elevation, units)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  )
}

function Cautions({ plan, assessment }: Pick<SheetProps, 'plan' | 'assessment'>) {
  const said = hazardSentences(plan.spot)
  return (
    <section class="sheet-part sheet-cautions">
      <h2>{sheetWords.hazards}</h2>
      {said.length === 0 ? <p>{sheetWords.noHazards}</p> : null}
      <ul>
        {lightCautions(assessment.light, assessment.focalLength).map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
        {said.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
        <li>{spotWords.cautions.ground}</li>
        <li>{spotWords.cautions.weather}</li>
        <li>{spotWords.cautions.sun}</li>
        <li>{spotWords.cautions.drones}</li>
      </ul>
      <p class="sheet-always">{spotWords.cautions.always}</p>
    </section>
  )
}
