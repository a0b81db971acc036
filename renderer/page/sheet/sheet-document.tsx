/** The location sheet itself: one page for the day, the same on screen, on paper and in a saved file. */
import { sheetDirections } from '#core/sheet/content.ts'
import { formatDay } from '#core/time/civil.ts'
import { metres } from '#renderer/text/figure.ts'
import { landmarkName, shootName, spotName } from '#renderer/text/names.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { spotWords } from '#renderer/words/en-spot.ts'
import { elevationCredits } from '#renderer/view/sketch/painted-credits.ts'
import { stillCredits } from '#renderer/view/still-map/still-credits.ts'
import { MAP_SIZE } from './picture-sizes.ts'
import { SheetAccess } from './sheet-access.tsx'
import { SheetCautions } from './sheet-cautions.tsx'
import { DeclinationNote, SheetDirectionsTable } from './sheet-directions.tsx'
import { SheetFrame } from './sheet-frame.tsx'
import { SheetGround, SheetProfile } from './sheet-ground.tsx'
import { SheetLight } from './sheet-light.tsx'
import { SheetClosePlan, SheetMap } from './sheet-maps.tsx'
import { SheetPart } from './sheet-part.tsx'
import { SheetPlaces } from './sheet-places.tsx'
import { type SheetProps } from './sheet-props.ts'
import { SheetSettings } from './sheet-settings.tsx'
import { TolerancesPart } from './sheet-tolerances.tsx'

function Head({ plan, day }: SheetProps) {
  return (
    <header class="sheet-head">
      <div>
        <h1>{spotName(plan.spot)}</h1>
        <p>{shootName(plan.shoot)}</p>
      </div>
      <p class="sheet-day">
        {spotWords.statuses[plan.spot.status]} · {sheetWords.planned(day)}
      </p>
    </header>
  )
}

function Where(props: SheetProps & { readonly upright: boolean }) {
  const { plan, assessment, units, daylight, upright } = props
  const directions = sheetDirections(plan, assessment, plan.spot.when)
  return (
    <SheetPart title={sheetWords.where} name="where">
      <div class="sheet-row sheet-plans">
        <SheetMap {...props} />
        {upright ? null : <SheetClosePlan {...props} />}
        <div class="sheet-directions">
          <SheetDirectionsTable
            directions={directions}
            units={units}
            heading={plan.spot.stop.heading}
            landmark={landmarkName(plan.landmark)}
          />
          <dl class="sheet-rows">
            <div>
              <dt>{sheetWords.lensHeight}</dt>
              <dd>{sheetWords.aboveGround(metres(plan.spot.standpoint.lensHeight, units))}</dd>
            </div>
          </dl>
          <SheetProfile {...props} />
        </div>
      </div>
      <SheetPlaces plan={plan} units={units} />
      <DeclinationNote declination={directions.declination} day={formatDay(daylight.day.date)} />
    </SheetPart>
  )
}

export function SheetDocument(props: SheetProps) {
  const { plan, assessment, units, crop } = props
  const { orientation } = plan.spot.shot
  const upright = orientation === 'upright'
  const { width, height } = MAP_SIZE[orientation]
  const credits = [...stillCredits(props.base.source, plan, width, height), ...elevationCredits(props.elevations)]
  return (
    <article class={upright ? 'sheet sheet-upright' : 'sheet'} lang="en">
      <div class="sheet-fit">
        <Head {...props} />
        <div class="sheet-row sheet-first">
          <SheetPart title={sheetWords.settings} name="settings">
            <SheetSettings plan={plan} assessment={assessment} units={units} crop={crop} />
          </SheetPart>
          <SheetFrame {...props} />
          {upright ? <SheetClosePlan {...props} /> : null}
        </div>
        <Where {...props} upright={upright} />
        <SheetLight plan={plan} assessment={assessment} daylight={props.daylight} units={units}>
          <SheetGround {...props} />
        </SheetLight>
        <TolerancesPart {...props} />
        <div class="sheet-row sheet-last">
          <SheetAccess plan={plan} />
          <SheetCautions plan={plan} assessment={assessment} />
        </div>
        <footer class="sheet-foot">{[sheetWords.madeWith, ...new Set(credits)].join(' · ')}</footer>
      </div>
    </article>
  )
}
