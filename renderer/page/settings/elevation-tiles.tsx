/** Elevations from the web: on or off, who is named for them, and another service in the usual one's place. */
import type { GroundSourceBrief } from '#app/contract/ground.ts'
import type { Settings } from '#app/contract/settings.ts'
import { done, failed } from '#core/result.ts'
import { useDraft } from '#renderer/part/draft.ts'
import { Field } from '#renderer/part/field.tsx'
import { Fold } from '#renderer/part/question.tsx'
import { changeSettings, settings } from '#renderer/state/library/settings.ts'
import { groundSourceWords as say } from '#renderer/words/en-ground-sources.ts'
import { words } from '#renderer/words/en.ts'
import { Credit } from '#renderer/part/credit.tsx'
import { isTemplate } from './own-source.ts'

type TileSettings = Settings['elevationTiles']

interface Props {
  readonly source: GroundSourceBrief
  readonly onChanged: () => void
}

export function ElevationTiles({ source, onChanged }: Props) {
  const tiles = settings.value.elevationTiles
  const change = (part: Partial<TileSettings>): void =>
    void changeSettings({ elevationTiles: { ...settings.value.elevationTiles, ...part } }).then(onChanged)
  return (
    <>
      <Credit source={source} />
      <p class="ground-on">
        <label>
          <input type="checkbox" checked={tiles.on} onChange={(event) => change({ on: event.currentTarget.checked })} />
          {say.tilesOn}
        </label>
      </p>
      <p class="hint">{say.tilesHint}</p>
      <Fold title={say.tilesAddress}>
        <Service tiles={tiles} change={change} />
      </Fold>
    </>
  )
}

interface ServiceProps {
  readonly tiles: TileSettings
  readonly change: (part: Partial<TileSettings>) => void
}

function Service({ tiles, change }: ServiceProps) {
  const page = words.board.settingsPage
  const address = useDraft(tiles.template, (text) => {
    const template = text.trim()
    if (template !== '' && !isTemplate(template)) return failed('bad-template', page.badTemplate)
    change({ template })
    return done(template)
  })
  const depth = useDraft(String(tiles.maxZoom), (text) => {
    const maxZoom = Number(text)
    if (!/^\d+$/.test(text.trim()) || maxZoom > DEEPEST) return failed('bad-zoom', say.badZoom(DEEPEST))
    change({ maxZoom })
    return done(maxZoom)
  })
  const attribution = useDraft(tiles.attribution, (text) => {
    const plain = text.trim().slice(0, 1_000)
    change({ attribution: plain })
    return done(plain)
  })
  return (
    <>
      <Field label={say.address} draft={address} width="wide" hint={say.addressHint} />
      <Field label={say.maxZoom} draft={depth} />
      <Field label={say.attribution} draft={attribution} width="wide" hint={say.attributionHint} />
    </>
  )
}

const DEEPEST = 18
