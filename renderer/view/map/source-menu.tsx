/** The choice of the map on the map itself: what the settings offer, each with whom it is to be credited to. */
import { useEffect } from 'preact/hooks'
import { Credit } from '#renderer/part/credit.tsx'
import { openSettings } from '#renderer/state/act/open-settings.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { GROUND_MAP } from '#renderer/state/session/ground-overlay.ts'
import { SKETCH_MAP, chooseMap, tilesOnOffer } from '#renderer/state/session/map-source.ts'
import { readTileSources } from '#renderer/state/session/tile-sources.ts'
import { firstStepsWords as say } from '#renderer/words/en-first-steps.ts'
import { groundMapWords } from '#renderer/words/en-ground-map.ts'
import { words } from '#renderer/words/en.ts'
import { MapPopover } from './map-popover.tsx'

function MapChoice({ id, name }: { readonly id: string; readonly name: string }) {
  return (
    <label>
      <input
        type="radio"
        name="map-on-board"
        checked={settings.value.mapSource === id}
        onChange={() => chooseMap(id)}
      />
      {name}
    </label>
  )
}

function Sources() {
  useEffect(() => void readTileSources(), [])
  return (
    <>
      <fieldset>
        <legend>{say.map}</legend>
        <MapChoice id={SKETCH_MAP} name={words.board.settingsPage.sketch} />
        <MapChoice id={GROUND_MAP} name={groundMapWords.source} />
        {tilesOnOffer.value.map((source) => (
          <div key={source.id}>
            <MapChoice id={source.id} name={source.name} />
            <Credit source={source} />
            {source.needsKey ? <p class="hint">{say.mapNeedsKey}</p> : null}
          </div>
        ))}
      </fieldset>
      <button type="button" onClick={() => openSettings('map')}>
        {say.mapSettings}
      </button>
    </>
  )
}

export function SourceMenu() {
  return (
    <MapPopover
      label={say.map}
      path="M8 2 14 5.2 8 8.4 2 5.2zM2 8l6 3.2L14 8M2 10.8 8 14l6-3.2"
      on={false}
      place="source-menu"
      Panel={Sources}
    />
  )
}
