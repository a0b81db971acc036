/** The step in which a landmark is given its place: by coordinates, or on the map, a span by its two ends; then its height. */
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { RECORD_LIMITS } from '#core/record/record-limits.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { LANDMARK_KINDS, type Landmark, type LandmarkKind } from '#core/scene/landmark.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { CoordinateField } from '#renderer/part/coordinate-field.tsx'
import { LengthField } from '#renderer/part/figure-field.tsx'
import { Icon } from '#renderer/part/icon.tsx'
import { addLandmarkAt, changeLandmark, placeLandmark, placeNewLandmark } from '#renderer/state/act/landmark-acts.ts'
import { stepPassed } from '#renderer/state/session/first-steps.ts'
import { fitPlan, mapMiddle } from '#renderer/state/session/map-window.ts'
import { openPage } from '#renderer/state/session/navigation.ts'
import { firstStepsWords as say } from '#renderer/words/en-first-steps.ts'
import { words } from '#renderer/words/en.ts'

interface LandmarkStepProps {
  readonly home: Shoot
  readonly skip: ComponentChildren
}

export function LandmarkStep({ home, skip }: LandmarkStepProps) {
  const [landmark] = home.landmarks
  return landmark === undefined ? <NewLandmark home={home} skip={skip} /> : <Placed home={home} landmark={landmark} />
}

function NewLandmark({ home, skip }: LandmarkStepProps) {
  const [kind, setKind] = useState<LandmarkKind>('upright')
  return (
    <>
      <Choice
        label={say.kind}
        value={kind}
        options={LANDMARK_KINDS.map((option) => [option, words.shoot.landmarkKinds[option]] as const)}
        onChoose={setKind}
      />
      <Coordinates key={kind} home={home} kind={kind} />
      <div class="buttons">
        <button type="button" class="button button-small" onClick={() => placeNewLandmark(kind)}>
          <Icon name="map" /> {say.placeOnMap}
        </button>
        {skip}
      </div>
    </>
  )
}

/** Nothing is made before the place is known, of a span before both ends are. */
function Coordinates({ home, kind }: { readonly home: Shoot; readonly kind: LandmarkKind }) {
  const [end, setEnd] = useState<LatLon | null>(null)
  const near = mapMiddle()
  const take = (places: readonly LatLon[]): void => void addLandmarkAt(home, kind, places)
  if (kind !== 'span')
    return <CoordinateField label={say.coordinates} value={null} near={near} onTake={(at) => take([at])} />
  return (
    <>
      <CoordinateField label={say.oneEnd} value={end} near={near} onTake={setEnd} />
      {end === null ? null : (
        <CoordinateField label={say.otherEnd} value={null} near={end} onTake={(other) => take([end, other])} />
      )}
    </>
  )
}

/** The deck goes down with a lower top, so that it is never above it. */
function ofHeight(landmark: Landmark, height: number): Landmark {
  if (landmark.kind !== 'span') return { ...landmark, height }
  return { ...landmark, height, deckHeight: Math.min(landmark.deckHeight, height) }
}

function Placed({ home, landmark }: { readonly home: Shoot; readonly landmark: Landmark }) {
  return (
    <>
      <LengthField
        label={say.height}
        value={landmark.height}
        limits={RECORD_LIMITS.landmarkSize}
        onTake={(height) => changeLandmark(home, ofHeight(landmark, height))}
      />
      <div class="buttons">
        <button type="button" class="button button-small button-main" onClick={() => stepPassed('landmark')}>
          {say.next}
        </button>
        <button type="button" class="button button-small" title={say.showHint} onClick={fitPlan}>
          {say.show}
        </button>
        <button type="button" class="button button-small" onClick={() => placeLandmark(landmark)}>
          {say.placeAgain}
        </button>
        <button type="button" class="button button-small button-quiet" onClick={() => openPage('shoot')}>
          {say.more}
        </button>
      </div>
    </>
  )
}
