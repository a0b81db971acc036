/** The settings: units, light or dark, paper, where the map comes from. */
import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { Output } from '#app/contract/index.ts'
import { ask } from '#renderer/host/host.ts'
import { PageFrame } from '#renderer/part/page-frame.tsx'
import { Question } from '#renderer/part/question.tsx'
import { Segment } from '#renderer/part/segment.tsx'
import { tell } from '#renderer/state/library/notices.ts'
import { SETTINGS_PLACES } from '#renderer/state/act/open-settings.ts'
import { changeSettings, settings } from '#renderer/state/library/settings.ts'
import { words } from '#renderer/words/en.ts'
import { GroundSources } from './ground-sources.tsx'
import { MapSources } from './map-sources.tsx'

export function SettingsPage() {
  const say = words.board.settingsPage
  const about = useSignal<Output<'host.about'> | null>(null)
  useEffect(() => {
    void ask('host.about', {}).then((answer) => {
      if (answer.ok) about.value = answer.value
    })
  }, [about])
  const { units, theme, paper } = settings.value
  return (
    <PageFrame title={words.board.settings}>
      <div class="narrow">
        <Question title={say.units}>
          <Segment
            label={say.units}
            value={units}
            options={[
              ['metric', say.metric],
              ['imperial', say.imperial],
            ]}
            onChoose={(chosen) => void changeSettings({ units: chosen })}
          />
        </Question>
        <Question title={say.theme}>
          <Segment
            label={say.theme}
            value={theme}
            options={(['system', 'light', 'dark'] as const).map((option) => [option, say.themes[option]] as const)}
            onChoose={(chosen) => void changeSettings({ theme: chosen })}
          />
        </Question>
        <Question title={say.paper}>
          <Segment
            label={say.paper}
            value={paper}
            options={(['a4', 'letter'] as const).map((option) => [option, say.papers[option]] as const)}
            onChoose={(chosen) => void changeSettings({ paper: chosen })}
          />
        </Question>
        <div id={SETTINGS_PLACES.map}>
          <MapSources />
        </div>
        <div id={SETTINGS_PLACES.ground}>
          <GroundSources />
        </div>
        <Question title={say.tilesKept}>
          <button type="button" class="button" onClick={() => void clearTiles()}>
            {say.clearTiles}
          </button>
        </Question>
        {about.value === null ? null : <p class="hint">{say.version(about.value.version)}</p>}
      </div>
    </PageFrame>
  )
}

async function clearTiles(): Promise<void> {
  const answer = await ask('tiles.clear', {})
  if (!answer.ok) return tell('fault', answer.fault.message)
  tell('done', words.board.settingsPage.cleared((answer.value.freedBytes / 1e6).toFixed(1)))
}
