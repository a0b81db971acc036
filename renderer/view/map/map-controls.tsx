/** What lies over the map beside the plan: zoom, scale, credits, and notes on tiles, network and placing. */
import { Icon } from '#renderer/part/icon.tsx'
import { type Placing, placing, stopPlacing } from '#renderer/state/session/navigation.ts'
import { offline } from '#renderer/state/session/network.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { firstStepsWords } from '#renderer/words/en-first-steps.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { attribution } from './base-shown.ts'
import { shownSource } from '#renderer/state/session/map-source.ts'
import { DrawNote } from './draw-note.tsx'
import { GroundLegend } from './ground-legend.tsx'
import { GroundMenu } from './ground-menu.tsx'
import { MapGuarded } from '#renderer/part/map-guarded.tsx'
import { mapLook, mapView } from '#renderer/view/drawing/map-look.ts'
import { showTogether } from '#renderer/state/session/map-window.ts'
import { missingTiles } from './missing-tiles.ts'
import { NoMapNote } from './no-map-note.tsx'
import { PointerHeight } from './pointer-height.tsx'
import { ScaleBar } from './scale-bar.tsx'
import { SourceMenu } from './source-menu.tsx'
import { StandpointLineNote } from '#renderer/view/overlay/standpoint-line.tsx'
import { TryOutNote } from './try-out-note.tsx'

export interface MapControlsProps {
  readonly zoomBy: (steps: number) => void
  readonly placeInMiddle: () => void
  readonly retryTiles: () => void
}

const PLACING_WORDS = {
  subject: mapWords.pressForSubject,
  standpoint: mapWords.pressForStandpoint,
  landmark: mapWords.pressForLandmark,
  parking: mapWords.pressForParking,
} as const

function placingWords(wish: Placing): string {
  if (wish.what !== 'new-landmark') return PLACING_WORDS[wish.what]
  if (wish.kind !== 'span') return mapWords.pressForLandmark
  return wish.from === null ? firstStepsWords.pressForEnd : firstStepsWords.pressForOtherEnd
}

function PlacingNote({ placeInMiddle }: Pick<MapControlsProps, 'placeInMiddle'>) {
  const wish = placing.value
  if (wish === null) return null
  return (
    <div class="map-over map-note placing-note" role="status">
      <span>{placingWords(wish)}</span>
      <button type="button" onClick={placeInMiddle}>
        {mapWords.placeHere}
      </button>
      <button
        type="button"
        onClick={() => {
          stopPlacing()
        }}
      >
        {mapWords.leaveIt}
      </button>
    </div>
  )
}

function TilesNote({ retryTiles }: Pick<MapControlsProps, 'retryTiles'>) {
  if (shownSource.value === null) return null
  const missing = missingTiles.value
  if (missing === 0 && !offline.value) return null
  return (
    <div class="map-over map-note" role="status">
      <Icon name="warning" />
      {offline.value ? <span>{mapWords.offline}</span> : null}
      {missing === 0 ? null : <span>{mapWords.tilesMissing(missing)}</span>}
      {missing === 0 ? null : (
        <button type="button" onClick={retryTiles}>
          {mapWords.tryAgain}
        </button>
      )}
    </div>
  )
}

function Credits() {
  return (
    <p class="map-over map-credits">
      {attribution.value.map(({ text, link }, index) => (
        <span key={text}>
          {index === 0 ? '' : ' · '}
          {link === null ? (
            text
          ) : (
            <a href={link} target="_blank" rel="noreferrer">
              {text}
            </a>
          )}
        </span>
      ))}
    </p>
  )
}

function Scale() {
  const look = mapLook.value
  const view = mapView.value
  if (look === null || view === null) return null
  const middle = { x: (look.box.left + look.box.right) / 2, y: (look.box.top + look.box.bottom) / 2 }
  return (
    <div class="map-over map-scale">
      <ScaleBar pixelsPerMetre={view.pixelsPerMetre(view.toPlace(middle))} units={settings.value.units} />
    </div>
  )
}

export function MapControls({ zoomBy, placeInMiddle, retryTiles }: MapControlsProps) {
  return (
    <>
      <div class="map-over map-zoom">
        <button type="button" aria-label={mapWords.nearer} title={mapWords.nearer} onClick={() => zoomBy(1)}>
          <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
            <path d="M8 3v10M3 8h10" />
          </svg>
        </button>
        <button type="button" aria-label={mapWords.farther} title={mapWords.farther} onClick={() => zoomBy(-1)}>
          <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
            <path d="M3 8h10" />
          </svg>
        </button>
        <button type="button" aria-label={mapWords.fitPlan} title={mapWords.fitPlan} onClick={showTogether}>
          <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
            <path d="M2.5 6V2.5H6M10 2.5h3.5V6M13.5 10v3.5H10M6 13.5H2.5V10M5 11l6-6" />
          </svg>
        </button>
      </div>
      <MapGuarded>
        <GroundMenu />
      </MapGuarded>
      <MapGuarded>
        <SourceMenu />
      </MapGuarded>
      <div class="map-notes">
        <TryOutNote />
        <NoMapNote />
        <PlacingNote placeInMiddle={placeInMiddle} />
        <DrawNote />
        <MapGuarded>
          <StandpointLineNote />
        </MapGuarded>
        <TilesNote retryTiles={retryTiles} />
      </div>
      <div class="map-foot">
        <MapGuarded>
          <PointerHeight />
        </MapGuarded>
        <Scale />
        <MapGuarded>
          <GroundLegend />
        </MapGuarded>
        <MapGuarded>
          <Credits />
        </MapGuarded>
      </div>
    </>
  )
}
