/** Where the map comes from: the sketch map, the known sources with their terms, and the user's own. */
import { SKETCH_MAP, chooseMap, tilesOnOffer } from '#renderer/state/session/map-source.ts'
import { useEffect, useState } from 'preact/hooks'
import type { TileSourceBrief } from '#app/contract/tiles.ts'
import { done, failed } from '#core/result.ts'
import { ask } from '#renderer/host/host.ts'
import { escapeEmpties, escapeStays, useDraft } from '#renderer/part/draft.ts'
import { Field } from '#renderer/part/field.tsx'
import { Fold, Question } from '#renderer/part/question.tsx'
import { GROUND_MAP } from '#renderer/state/session/ground-overlay.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { changeSettings, settings } from '#renderer/state/library/settings.ts'
import { readTileSources } from '#renderer/state/session/tile-sources.ts'
import { groundMapWords } from '#renderer/words/en-ground-map.ts'
import { words } from '#renderer/words/en.ts'
import { Credit } from '#renderer/part/credit.tsx'
import { isTemplate } from './own-source.ts'
import { OwnSources } from './own-sources.tsx'

export function MapSources() {
  const say = words.board.settingsPage
  const { mapSource } = settings.value
  useEffect(() => void readTileSources(true), [])
  return (
    <Question title={say.mapSource}>
      <fieldset class="sources">
        <legend class="unseen">{say.mapSource}</legend>
        <div class="source">
          <label>
            <input
              type="radio"
              name="map-source"
              checked={mapSource === SKETCH_MAP}
              onChange={() => chooseMap(SKETCH_MAP)}
            />
            <strong>{say.sketch}</strong>
          </label>
          <p class="hint">{say.sketchHint}</p>
        </div>
        <div class="source">
          <label>
            <input
              type="radio"
              name="map-source"
              checked={mapSource === GROUND_MAP}
              onChange={() => chooseMap(GROUND_MAP)}
            />
            <strong>{groundMapWords.source}</strong>
          </label>
          <p class="hint">{groundMapWords.sourceHint}</p>
        </div>
        {tilesOnOffer.value.map((source) => (
          <Source key={source.id} source={source} on={mapSource === source.id} onChoose={() => chooseMap(source.id)} />
        ))}
      </fieldset>
      <OwnSources onChanged={() => void readTileSources(true)} />
    </Question>
  )
}

function Source({ source, on, onChoose }: { source: TileSourceBrief; on: boolean; onChoose: () => void }) {
  const say = words.board.settingsPage
  return (
    <div class="source">
      <label>
        <input type="radio" name="map-source" checked={on} onChange={onChoose} />
        <strong>{source.name}</strong>
      </label>
      <Credit source={source} />
      {source.terms === '' ? null : <p class="hint">{source.terms}</p>}
      {source.needsKey ? <KeyForm source={source} /> : null}
      {source.own ? null : (
        <Fold title={say.address}>
          <AddressField sourceId={source.id} />
        </Fold>
      )}
    </div>
  )
}

/** Another address for a known source, since addresses change and mirrors exist. */
function AddressField({ sourceId }: { sourceId: string }) {
  const say = words.board.settingsPage
  const { templates } = settings.value
  const draft = useDraft(templates[sourceId] ?? '', (text) => {
    const template = text.trim()
    if (template !== '' && !isTemplate(template)) return failed('bad-template', say.badTemplate)
    const others = Object.fromEntries(Object.entries(templates).filter(([id]) => id !== sourceId))
    void changeSettings({ templates: template === '' ? others : { ...others, [sourceId]: template } })
    return done(template)
  })
  return <Field label={say.address} draft={draft} width="wide" hint={say.addressHint} />
}

function KeyForm({ source }: { source: TileSourceBrief }) {
  const say = words.board.settingsPage
  const [typed, setTyped] = useState('')
  const keep = async (key: string | null): Promise<void> => {
    const answer = await ask('settings.key', { sourceId: source.id, key })
    if (!answer.ok) return tell('fault', answer.fault.message)
    setTyped('')
    tell('done', say.keyKept[answer.value.kept])
  }
  return (
    <div class="key-form" onKeyDown={escapeStays(typed !== '')}>
      <p class="hint">
        {say.needsKey} {say.keyHint}
      </p>
      <label>
        {say.key}{' '}
        <input
          type="password"
          autocomplete="off"
          maxLength={500}
          value={typed}
          onInput={(event) => setTyped(event.currentTarget.value)}
          onKeyDown={escapeEmpties(typed, setTyped)}
        />
      </label>
      <span class="buttons">
        <button
          type="button"
          class="button button-small"
          disabled={typed.trim() === ''}
          onClick={() => void keep(typed.trim())}
        >
          {say.keySave}
        </button>
        <button type="button" class="button button-small" onClick={() => void keep(null)}>
          {say.keyForget}
        </button>
      </span>
    </div>
  )
}
