/** Said once where the built-in map has nothing and no other is chosen: what is missing, and where it is to be had. */
import { computed, signal } from '@preact/signals'
import { Icon } from '#renderer/part/icon.tsx'
import { openSettings } from '#renderer/state/act/open-settings.ts'
import { hasBoardSpot } from '#renderer/state/library/library.ts'
import { boardGround } from '#renderer/state/plan/terrain.ts'
import { shownSource } from '#renderer/state/session/map-source.ts'
import { placing } from '#renderer/state/session/navigation.ts'
import { tileSources } from '#renderer/state/session/tile-sources.ts'
import { mapLook } from '#renderer/view/drawing/map-look.ts'
import { firstStepsWords as say } from '#renderer/words/en-first-steps.ts'
import { groundSeen, islandSeen } from './base-shown.ts'

/** From farther away the coasts are map enough. */
const NEAR_ZOOM = 10

type Missing = 'map' | 'map-and-ground'

/** Null while something is shown, or may still come. */
const missing = computed<Missing | null>(() => {
  const look = mapLook.value
  if (look === null || look.zoom < NEAR_ZOOM || tileSources.value === null) return null
  if (shownSource.value !== null || islandSeen.value || groundSeen.value) return null
  if (!hasBoardSpot.value) return 'map'
  const { settled, grid } = boardGround.value
  if (!settled) return null
  return grid === null ? 'map-and-ground' : 'map'
})

/** For this sitting: whoever has read it knows. */
const read = signal(false)

function readIt(): void {
  read.value = true
}

export function NoMapNote() {
  const what = missing.value
  if (what === null || read.value || placing.value !== null) return null
  const lead = (place: 'map' | 'ground'): void => {
    readIt()
    openSettings(place)
  }
  return (
    <div class="map-over map-note no-map-note" role="status">
      <span>{what === 'map' ? say.noMap : say.noMapNorGround}</span>
      <button type="button" class="note-close" aria-label={say.dismiss} title={say.dismiss} onClick={readIt}>
        <Icon name="close" />
      </button>
      <button type="button" onClick={() => lead('map')}>
        {say.chooseMap}
      </button>
      <button type="button" onClick={() => lead('ground')}>
        {say.addElevation}
      </button>
    </div>
  )
}
