/** The landmarks of a shoot that has no spot yet: seen on the map from the moment they have a place. */
import { computed } from '@preact/signals'
import { boardShoot, boardSpot } from '#renderer/state/library/library.ts'
import { landmarkName } from '#renderer/text/names.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { type LandmarkDrawing, drawLandmark } from '#renderer/view/drawing/plan-drawing.ts'
import { nameLine } from '#renderer/view/drawing/things-light.ts'
import { mapView } from '#renderer/view/drawing/map-look.ts'
import { LandmarkShape } from '#renderer/view/drawing/marks.tsx'
import { figure } from '#renderer/text/path-text.ts'

const lone = computed<readonly LandmarkDrawing[]>(() => {
  const view = mapView.value
  if (view === null || boardSpot.value !== null) return []
  return (boardShoot.value?.landmarks ?? []).flatMap((landmark) => drawLandmark(landmark, view) ?? [])
})

export function LoneLandmarks({ hatch }: { readonly hatch: string }) {
  return (
    <>
      {lone.value.map((landmark) => (
        <g key={landmark.id} class="lone-landmark" role="img" aria-label={mapWords.landmarkAlone(landmark.name)}>
          <LandmarkShape landmark={landmark} hatch={hatch} />
          <text class="landmark-name" x={figure(landmark.at.x)} y={figure(nameLine(landmark))}>
            {landmarkName(landmark)}
          </text>
        </g>
      ))}
    </>
  )
}
