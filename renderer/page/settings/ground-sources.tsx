/** Where the ground comes from: the sources by precedence, what each has here, files coming and going. */
import { signal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import {
  ELEVATION_ENDINGS,
  ELEVATION_FILE_LIMIT,
  type FileAdded,
  type GroundSourceBrief,
} from '#app/contract/ground.ts'
import type { Output } from '#app/contract/index.ts'
import type { Answer } from '#app/contract/call.ts'
import { groundChanged, groundRoute } from '#renderer/host/ground-windows.ts'
import { ask, sendBytes } from '#renderer/host/host.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { metres } from '#renderer/text/figure.ts'
import { Question } from '#renderer/part/question.tsx'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { changeSettings, settings } from '#renderer/state/library/settings.ts'
import { groundSourceWords as say } from '#renderer/words/en-ground-sources.ts'
import { ElevationTiles } from './elevation-tiles.tsx'
import { sourceFacts } from './ground-facts.ts'

const listed = signal<Output<'ground.sources'> | null>(null)
/** Name of the file that is coming in; null when none is. */
const adding = signal<string | null>(null)

async function load(): Promise<void> {
  const at = plan.value?.spot.standpoint.at ?? null
  const answer = await ask('ground.sources', { at })
  if (answer.ok) listed.value = answer.value
  else tell('fault', answer.fault.message)
}

async function changed(): Promise<void> {
  groundChanged()
  await load()
}

export function GroundSources() {
  useEffect(() => void load(), [])
  const found = listed.value
  return (
    <Question title={say.question}>
      <p class="hint">{say.order}</p>
      {found === null ? <p class="hint">{say.loading}</p> : <SourceList sources={found.sources} />}
      <AddFiles folder={found?.folder ?? ''} />
      <p class="hint">{say.datum}</p>
    </Question>
  )
}

function SourceList({ sources }: { sources: readonly GroundSourceBrief[] }) {
  const move = (from: number, by: number): void => {
    const ids = sources.map(({ id }) => id)
    const [moved = ''] = ids.splice(from, 1)
    ids.splice(from + by, 0, moved)
    void changeSettings({ groundOrder: ids }).then(changed)
  }
  return (
    <ol class="sources" aria-label={say.list}>
      {sources.map((source, at) => (
        <li class="source ground-source" key={source.id}>
          <p class="own-source">
            <span>
              <strong>{source.name}</strong> <small>{say.kinds[source.kind]}</small>
            </span>
            <span class="buttons">
              <Press icon="up" label={say.earlier(source.name)} off={at === 0} act={() => move(at, -1)} />
              <Press
                icon="down"
                label={say.later(source.name)}
                off={at === sources.length - 1}
                act={() => move(at, 1)}
              />
              {source.removable ? (
                <Press icon="remove" label={say.remove(source.name)} off={false} act={() => void remove(source)} />
              ) : null}
            </span>
          </p>
          <Facts source={source} />
          {source.kind === 'tiles' ? <ElevationTiles source={source} onChanged={() => void changed()} /> : null}
        </li>
      ))}
    </ol>
  )
}

interface PressProps {
  readonly icon: 'up' | 'down' | 'remove'
  readonly label: string
  readonly off: boolean
  readonly act: () => void
}

function Press({ icon, label, off, act }: PressProps) {
  return (
    <button type="button" class="icon-button" aria-label={label} title={label} disabled={off} onClick={act}>
      <Icon name={icon} />
    </button>
  )
}

function Facts({ source }: { source: GroundSourceBrief }) {
  const units = settings.value.units
  if (source.trouble !== null) return <p class="refusal">{source.trouble}</p>
  return (
    <>
      <p class="hint ground-here">{hereText(source, units)}</p>
      <p class="hint">{sourceFacts(source, units)}</p>
      <p class="hint">{say.heights(source.heights)}</p>
    </>
  )
}

function hereText(source: GroundSourceBrief, units: 'metric' | 'imperial'): string {
  if (!source.on) return say.here.off
  if (source.here === null) return ''
  if (source.here !== 'covers') return say.here[source.here]
  return say.here.covers(source.resolution === null ? null : metres(source.resolution, units))
}

async function remove(source: GroundSourceBrief): Promise<void> {
  const answer = await ask('ground.remove', { id: source.id })
  if (answer.ok) tell('done', say.removed(answer.value.name))
  else tell('fault', answer.fault.message)
  await changed()
}

const LIMIT = say.gigabytes((ELEVATION_FILE_LIMIT / 1e9).toFixed(0))

function AddFiles({ folder }: { folder: string }) {
  const busy = adding.value
  const choose = (event: Event & { readonly currentTarget: HTMLInputElement }): void => {
    const input = event.currentTarget
    const files = [...(input.files ?? [])]
    // The same file chosen again has to be a change again.
    input.value = ''
    void addFiles(files)
  }
  return (
    <div class="ground-add">
      <label class="button" data-busy={busy === null ? undefined : ''}>
        <Icon name="add" /> {busy === null ? say.add : say.adding(busy)}
        <input
          type="file"
          class="unseen"
          multiple
          accept={ELEVATION_ENDINGS.join(',')}
          disabled={busy !== null}
          onChange={choose}
        />
      </label>
      <p class="hint" aria-live="polite">
        {say.addHint(LIMIT, folder)}
      </p>
    </div>
  )
}

async function addFiles(files: readonly File[]): Promise<void> {
  for (const file of files) {
    if (file.size > ELEVATION_FILE_LIMIT) {
      tell('fault', say.tooLarge(file.name, LIMIT))
      continue
    }
    adding.value = file.name
    // oxlint-disable-next-line no-await-in-loop -- one after the other: each may be a gigabyte
    await addFile(file)
  }
  adding.value = null
  if (files.length > 0) await changed()
}

async function addFile(file: File): Promise<void> {
  const path = await groundRoute('file', { name: file.name })
  const answer = (await sendBytes(path ?? '/ground', file, new AbortController().signal)) as Answer<FileAdded>
  if (!answer.ok) return tell('fault', answer.fault.message)
  tell('done', say.added(answer.value.added))
  for (const note of answer.value.notes.slice(0, 3)) tell('fault', note)
}
