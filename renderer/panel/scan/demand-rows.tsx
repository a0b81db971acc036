/** The demands in their order, each with the controls of what it asks. */
import { FRAME_AXES } from '#core/frame/fill.ts'
import { wishesMade } from '#core/light/light-wish.ts'
import type { Plan } from '#core/plan/plan.ts'
import { LANDMARK_PLACES } from '#core/record/scan-wishes.ts'
import { LightWishesForm } from '#renderer/part/light-wishes.tsx'
import { Choice } from '#renderer/part/choice.tsx'
import { FigureField, LengthField } from '#renderer/part/figure-field.tsx'
import { wishName } from '#renderer/text/wish-names.ts'
import { scanWishWords as say } from '#renderer/words/en-scan-wishes.ts'
import { BandFields } from './band-fields.tsx'
import { DemandRow, type RowContext } from './demand-row.tsx'
import { VIEW_PRESETS, type ViewPreset, presetOf } from './demand-start.ts'

const PERCENT = { least: 0, most: 100 } as const
/** A thing may be larger than the frame: the record holds shares up to 20. */
const FILL_PERCENT = { least: 0, most: 2000 } as const
const DEGREES = { least: 0, most: 180 } as const
const WITHIN = { least: 0, most: 1_000_000 } as const
const PERCENT_SIGN = /%/u

export function FillRow({ kind, ...row }: RowContext & { readonly kind: 'subjectFill' | 'landmarkFill' }) {
  const name = row.names[kind]
  return (
    <DemandRow kind={kind} {...row}>
      {(demand, change) => (
        <BandFields name={name} band={demand} limits={FILL_PERCENT} unit="%" scale={100} onTake={change}>
          <Choice
            label={say.axis(name)}
            hideLabel
            value={demand.axis}
            options={FRAME_AXES.map((axis) => [axis, say.ofSide[axis]] as const)}
            onChoose={(axis) => change({ axis })}
          />
        </BandFields>
      )}
    </DemandRow>
  )
}

export function WholeRow(row: RowContext) {
  return (
    <DemandRow kind="landmarkWhole" {...row}>
      {(demand, change) => (
        <Choice
          label={say.whole.label(row.names.landmarkWhole)}
          hideLabel
          value={demand.crops ? 'crops' : 'frame'}
          options={[
            ['frame', say.whole.frame],
            ['crops', say.whole.crops],
          ]}
          onChoose={(chosen) => change({ crops: chosen === 'crops' })}
        />
      )}
    </DemandRow>
  )
}

export function PlaceRow(row: RowContext) {
  const name = row.names.landmarkPlace
  return (
    <DemandRow kind="landmarkPlace" {...row}>
      {(demand, change) => (
        <>
          <Choice
            label={say.place.label(name)}
            hideLabel
            value={demand.where}
            options={LANDMARK_PLACES.map((where) => [where, say.place.options[where]] as const)}
            onChoose={(where) => change({ where })}
          />
          {demand.where === 'behind' ? null : (
            <div class="one-field">
              <FigureField
                label={say.place.gap}
                unit={say.place.gapUnit}
                decimals={1}
                strip={PERCENT_SIGN}
                value={demand.gap * 100}
                limits={PERCENT}
                onTake={(percent) => change({ gap: percent / 100 })}
              />
            </div>
          )}
        </>
      )}
    </DemandRow>
  )
}

const VIEWS = [...(Object.keys(VIEW_PRESETS) as ViewPreset[]), 'own'] as const

export function ViewRow(row: RowContext) {
  const name = row.names.subjectView
  return (
    <DemandRow kind="subjectView" {...row}>
      {(demand, change) => (
        <>
          <Choice
            label={say.view.label(name)}
            hideLabel
            value={presetOf(demand) ?? 'own'}
            options={VIEWS.map((view) => [view, say.view.presets[view]] as const)}
            onChoose={(view) => {
              if (view !== 'own') change(VIEW_PRESETS[view])
            }}
          />
          <BandFields name={name} band={demand} limits={DEGREES} unit="°" onTake={change}>
            <span>{say.view.band}</span>
          </BandFields>
          <p class="hint">{say.view.hint}</p>
        </>
      )}
    </DemandRow>
  )
}

export function ShownRow(row: RowContext) {
  return (
    <DemandRow kind="landmarkShown" {...row}>
      {(demand, change) => (
        <div class="band-fields">
          <span aria-hidden="true">{say.atLeast}</span>
          <FigureField
            label={say.least(row.names.landmarkShown)}
            hideLabel
            unit="%"
            decimals={1}
            strip={PERCENT_SIGN}
            value={demand.least * 100}
            limits={PERCENT}
            onTake={(percent) => change({ least: percent / 100 })}
          />
          <span>{say.shownOf}</span>
        </div>
      )}
    </DemandRow>
  )
}

export function SoftnessRow(row: RowContext) {
  return (
    <DemandRow kind="softness" {...row}>
      {(demand, change) => (
        <>
          <BandFields name={row.names.softness} band={demand} limits={PERCENT} unit="%" scale={100} onTake={change}>
            <span>{say.softness}</span>
          </BandFields>
          <p class="hint">{say.softnessHint}</p>
        </>
      )}
    </DemandRow>
  )
}

/** The light wished is the shoot's own, the same as on the day strip; it is changed here too. */
export function LightRow({ plan, ...row }: RowContext & { readonly plan: Plan }) {
  const made = wishesMade(plan.shoot.light).map((kind) => wishName(kind, plan))
  return (
    <DemandRow kind="light" {...row}>
      {() => (
        <div class="demand-light">
          <p>{made.length === 0 ? say.light.none : say.light.all(made)}</p>
          <LightWishesForm plan={plan} />
        </div>
      )}
    </DemandRow>
  )
}

export function ParkingRow({ count, ...row }: RowContext & { readonly count: number }) {
  return (
    <DemandRow kind="parking" {...row}>
      {(demand, change) => (
        <>
          <div class="one-field">
            <LengthField
              label={say.parking.within}
              value={demand.within}
              limits={WITHIN}
              onTake={(within) => change({ within })}
            />
            <span>{say.parking.of}</span>
          </div>
          <p class="hint">{count === 0 ? say.parking.none : say.parking.known(count)}</p>
        </>
      )}
    </DemandRow>
  )
}
