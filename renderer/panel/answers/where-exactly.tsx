/** Where exactly? The arrangement in figures: coordinates, heading, heights, distance, all to be typed. */
import { placeOnMap } from '#renderer/state/act/place-on-map.ts'
import { COORDINATE_FORMS } from '#core/geo/coordinate-text.ts'
import { destination } from '#core/geo/geodesic.ts'
import { spotFollowing, moveStandpoint, moveStop, setStandpoint, setStop, turnSubject } from '#core/plan/arrange.ts'
import type { Assessment } from '#core/plan/assess.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import type { Spot } from '#core/record/spot.ts'
import { bearingOfStandpoint } from '#core/plan/stand.ts'
import { wrapBearing } from '#core/units/angle.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { CoordinateField } from '#renderer/part/coordinate-field.tsx'
import { LengthField } from '#renderer/part/figure-field.tsx'
import { DegreesField } from '#renderer/part/degrees-field.tsx'
import { Warnings } from '#renderer/part/warning.tsx'
import { coordinateForm, writePlacesAs } from '#renderer/state/session/coordinate-form.ts'
import { changeSpot } from '#renderer/state/library/history.ts'
import { landmarkName } from '#renderer/text/names.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { words } from '#renderer/words/en.ts'
import { elevationHint } from '#renderer/text/ground-text.ts'
import { problemSentences } from '#renderer/text/problem-text.ts'
import { AimFields } from '#renderer/view/lens-view/aim-fields.tsx'
import { TiltFields } from '#renderer/part/tilt-fields.tsx'

const ELEVATIONS = { least: -500, most: 9_000 } as const
const HEIGHTS = { least: 0, most: 1_000 } as const
const DISTANCES = { least: 0, most: 50_000, moreThanLeast: true } as const
/** Any turn is understood: -90 and 450 are wrapped. */
const BEARINGS = { least: -3_600, most: 3_600 } as const

export function WhereExactly({ plan, found }: { plan: Plan; found: Assessment }) {
  return (
    <>
      <Warnings sentences={problemSentences(plan, found, settings.value.units, 'where')} />
      <Places plan={plan} />
      <Measures plan={plan} found={found} />
      <AimFields plan={plan} assessment={found} />
      <LandmarkChoice plan={plan} />
    </>
  )
}

function save(label: string, spot: Spot): void {
  void changeSpot(label, spot)
}

function Places({ plan }: { plan: Plan }) {
  const { where, edit } = words.answers
  const { standpoint, stop } = plan.spot
  return (
    <>
      <CoordinateField
        label={where.standpoint}
        value={standpoint.at}
        near={stop.at}
        onTake={(at) => save(edit.standpoint, moveStandpoint(plan, at))}
        onPlace={() => placeOnMap('standpoint')}
      />
      <CoordinateField
        label={where.subject}
        value={stop.at}
        near={standpoint.at}
        onTake={(at) => save(edit.subject, moveStop(plan, at))}
        onPlace={() => placeOnMap('subject')}
      />
      <Choice
        label={where.form}
        value={coordinateForm.value}
        options={COORDINATE_FORMS.map((form) => [form, where.forms[form]] as const)}
        onChoose={(form) => {
          writePlacesAs(form)
        }}
      />
    </>
  )
}

function Measures({ plan, found }: { plan: Plan; found: Assessment }) {
  const { where, edit } = words.answers
  const { standpoint, stop } = plan.spot
  const { units } = settings.value
  const away = bearingOfStandpoint(plan) ?? 180
  return (
    <div class="field-row">
      <DegreesField
        label={where.heading}
        value={stop.heading}
        limits={BEARINGS}
        hint={where.turnHint}
        onTake={(heading) => save(edit.heading, turnSubject(plan, wrapBearing(heading)))}
      />
      <LengthField
        label={where.distance}
        value={found.toSubject.distance}
        limits={DISTANCES}
        onTake={(distance) => save(edit.distance, moveStandpoint(plan, destination(stop.at, away, distance)))}
      />
      <LengthField
        label={where.lensHeight}
        value={standpoint.lensHeight}
        limits={HEIGHTS}
        onTake={(lensHeight) => save(edit.lensHeight, setStandpoint(plan, { lensHeight }))}
      />
      <LengthField
        label={where.standpointElevation}
        value={standpoint.elevation}
        limits={ELEVATIONS}
        hint={elevationHint(found.under.standpoint, units)}
        onTakeUnknown={(elevation) => save(edit.elevation, setStandpoint(plan, { elevation }))}
      />
      <TiltFields
        labels={where.standpointTilt}
        slope={standpoint.slope}
        aspect={standpoint.aspect}
        under={found.under.standpoint}
        onSlope={(slope) => save(edit.tilt, setStandpoint(plan, { slope }))}
        onAspect={(aspect) => save(edit.tilt, setStandpoint(plan, { aspect }))}
      />
      <LengthField
        label={where.subjectElevation}
        value={stop.elevation}
        limits={ELEVATIONS}
        hint={elevationHint(found.under.stop, units)}
        onTakeUnknown={(elevation) => save(edit.elevation, setStop(plan, { elevation }))}
      />
      <TiltFields
        labels={where.subjectTilt}
        slope={stop.slope}
        aspect={stop.aspect}
        under={found.under.stop}
        onSlope={(slope) => save(edit.tilt, setStop(plan, { slope }))}
        onAspect={(aspect) => save(edit.tilt, setStop(plan, { aspect }))}
      />
    </div>
  )
}

function LandmarkChoice({ plan }: { plan: Plan }) {
  const { where, edit } = words.answers
  const { landmarks } = plan.shoot
  const look = (landmarkId: string | null): void => {
    save(edit.landmark, spotFollowing(planOf(plan.shoot, { ...plan.spot, landmarkId }, plan.terrain, plan.pins)))
  }
  return (
    <Choice
      label={where.landmark}
      value={plan.landmark?.id ?? ''}
      options={[
        ['', where.noLandmark] as const,
        ...landmarks.map((landmark) => [landmark.id, landmarkName(landmark)] as const),
      ]}
      onChoose={(id) => look(id === '' ? null : id)}
    />
  )
}
