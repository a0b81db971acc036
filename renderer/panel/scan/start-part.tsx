/** Before a scan: what it costs, how finely it looks, what stands in the way, and the button that begins it. */
import { landmarkOf } from '#core/plan/plan.ts'
import { daySamples, looksAtLight, wishedDays } from '#core/scan/scan-samples.ts'
import { LengthField } from '#renderer/part/figure-field.tsx'
import { metres } from '#renderer/text/figure.ts'
import { Fold } from '#renderer/part/question.tsx'
import { Segment } from '#renderer/part/segment.tsx'
import { Warnings } from '#renderer/part/warning.tsx'
import { settings } from '#renderer/state/library/settings.ts'
import { scanRunWords as say } from '#renderer/words/en-scan-run.ts'
import { costText, measuredRate, placesText, takesText } from './cost-text.ts'
import { demandNames } from './demand-names.ts'
import { FINENESSES, chooseFineness, chooseSteps, coarserStep, fineness, roundStep, stepsNow } from './fineness.ts'
import { scanGround } from './scan-ground.ts'
import { costNow, scanAgain, scanChanges, scanNow, troublesNow } from './scan-now.ts'
import { showStoppingGround } from './show-stopping-ground.ts'
import { useTakenFocus } from '#renderer/part/take-focus.ts'
import { troubleText } from './trouble-text.ts'
import { foldWishes } from './wishes-fold.ts'

/** Metres between places. */
const PLACE_STEPS = { least: 0.5, most: 10_000 } as const
/** Metres between cells from which the elevations are coarse for a landmark behind a bank. */
const COARSE_CELL = 20

/** After a scan the cost and the fineness are folded away: what was found comes first. */
export function StartPart({ after }: { readonly after: boolean }) {
  const button = useTakenFocus(after)
  const request = scanNow.value
  const cost = costNow.value
  if (request === null || cost === null) return <p class="hint">{say.noSpot}</p>
  if (request.shoot.stoppingGround.length === 0) return <p class="hint">{say.noGround}</p>
  const troubles = troublesNow.value
  const { settled, trouble, grid } = scanGround.value
  const refused = troubles.some(({ refuses }) => refuses)
  const { units } = settings.value
  const [tried, days] = [daySamples(request).length, wishedDays(request)]
  const landmark = landmarkOf(request.shoot, request.spot)
  const context = { shoot: request.shoot, landmark, names: demandNames(request), units }
  const choices = (
    <>
      <p class="scan-cost">
        <strong>{costText(cost)}</strong> {refused ? null : <small>{takesText(cost, measuredRate.value)}</small>}
      </p>
      {looksAtLight(request) && tried < days ? <p class="hint">{say.daysTried(tried, days)}</p> : null}
      <div class="scan-fineness">
        <Segment
          label={say.look}
          showLabel
          value={fineness.value}
          options={FINENESSES.map((one) => [one, say.fineness[one]] as const)}
          onChoose={chooseFineness}
        />
        <LengthField
          label={say.placeStep}
          value={stepsNow().place}
          limits={PLACE_STEPS}
          onTake={(place) => chooseSteps({ place })}
        />
      </div>
    </>
  )
  return (
    <div class={after ? 'scan-start scan-after' : 'scan-start'}>
      {after ? <Fold title={say.again}>{choices}</Fold> : choices}
      <Warnings sentences={troubles.map((one) => troubleText(one, context))} />
      <CoarserOffer />
      {settled ? null : <p class="hint">{say.reading}</p>}
      {trouble === null ? null : <Warnings sentences={[trouble]} />}
      {grid !== null && grid.cell > COARSE_CELL ? <p class="hint">{say.groundCell(metres(grid.cell, units))}</p> : null}
      <button
        ref={button}
        type="button"
        class={`button scan-button${after && scanChanges.value.length === 0 ? '' : ' button-main'}`}
        disabled={refused || !settled}
        onClick={begin}
      >
        {after ? say.startAgain : say.start}
      </button>
    </div>
  )
}

/** Begins, with the panel's last question at its top: what is found comes under it. */
function begin(event: Event): void {
  const { currentTarget } = event
  const question = currentTarget instanceof Element ? currentTarget.closest('section') : null
  foldWishes()
  showStoppingGround()
  scanAgain()
  // Once the wishes are folded away.
  requestAnimationFrame(() => question?.scrollIntoView({ block: 'start' }))
}

/** A ground with more places than are worth the wait, or than can be waited for: the steps that make fewer of them. */
function CoarserOffer() {
  const cost = costNow.value
  if (cost === null) return null
  const { place } = stepsNow()
  const { units } = settings.value
  const inAreas = cost.area / place ** 2
  const areaShare = inAreas / Math.max(1e-9, inAreas + cost.length / place)
  const refusal = troublesNow.value.find((trouble) => trouble.reason === 'too-many')
  const round = coarserStep(place, cost.places, areaShare)
  const rounded = round === null ? null : { place: round }
  const coarser = refusal === undefined ? rounded : { ...refusal.steps, place: roundStep(refusal.steps.place) }
  if (coarser === null) return null
  return (
    <div class="scan-offer">
      <p class="hint">
        {refusal === undefined
          ? say.tooMany(metres(place, units), placesText(cost.places), takesText(cost, measuredRate.value))
          : null}
      </p>
      <button type="button" class="button button-small" onClick={() => chooseSteps(coarser)}>
        {say.takeCoarser(metres(coarser.place, units))}
      </button>
    </div>
  )
}
