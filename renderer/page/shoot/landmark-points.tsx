/** The places of a landmark by coordinates: one for a tower or summit, two or more for a span, three or more for a building. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type Landmark, landmarkPoints, withLandmarkPoints } from '#core/scene/landmark.ts'
import { CoordinateField } from '#renderer/part/coordinate-field.tsx'
import { Icon } from '#renderer/part/icon.tsx'
import { words } from '#renderer/words/en.ts'
import { pointBetween } from './typed-changes.ts'

const FEWEST = { upright: 1, summit: 1, span: 2, building: 3 } as const
const MOST = { upright: 1, summit: 1, span: 200, building: 500 } as const

export function LandmarkPoints({ landmark, onChange }: { landmark: Landmark; onChange: (next: Landmark) => void }) {
  const say = words.shoot
  const points = landmarkPoints(landmark)
  const put = (next: readonly LatLon[]): void => onChange(withLandmarkPoints(landmark, next))
  const many = MOST[landmark.kind] > 1
  const added = pointBetween(points)
  return (
    <fieldset class="sub-list">
      <legend class={many ? '' : 'unseen'}>
        {landmark.kind === 'building' ? say.corners : many ? say.points : say.place}
      </legend>
      {points.map((at, index) => (
        // Points have no identity of their own but their order.
        // oxlint-disable-next-line react/no-array-index-key
        <div class="point-row" key={index}>
          <CoordinateField
            label={many ? say.point(index + 1) : say.place}
            value={at}
            near={points[0] ?? null}
            onTake={(place) => put(points.map((other, where) => (where === index ? place : other)))}
          />
          {points.length > FEWEST[landmark.kind] ? (
            <button
              type="button"
              class="icon-button"
              aria-label={say.removePoint(index + 1)}
              onClick={() => put(points.filter((_, where) => where !== index))}
            >
              <Icon name="remove" />
            </button>
          ) : null}
        </div>
      ))}
      {many && points.length < MOST[landmark.kind] && added !== null ? (
        <button
          type="button"
          class="button button-small"
          onClick={() => put([...points.slice(0, -1), added, ...points.slice(-1)])}
        >
          <Icon name="add" /> {say.addPoint}
        </button>
      ) : null}
    </fieldset>
  )
}
