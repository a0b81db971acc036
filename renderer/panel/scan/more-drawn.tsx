/** The ways to more drawn ground of a sort: drawn by hand, taken from the sketch map, brought in from a file. */
import type { DrawnSort } from '#core/record/drawn-ground.ts'
import { KEEP_OUT_KINDS, type KeepOutKind } from '#core/record/keep-out.ts'
import { DRAWN_FORMS } from '#core/record/stopping-ground.ts'
import { canTake } from '#renderer/view/hand/take-way.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { Icon } from '#renderer/part/icon.tsx'
import {
  drawing,
  nextKind,
  startDrawing,
  startTaking,
  stopDrawing,
  takingAs,
  chooseNextKind,
} from '#renderer/state/session/drawn-ground.ts'
import { stoppingWords as say } from '#renderer/words/en-stopping.ts'
import { bringInFile, readingFile } from '#renderer/state/act/geojson-file.ts'

export function MoreDrawn({ sort }: { readonly sort: DrawnSort }) {
  const now = drawing.value
  const taking = takingAs.value === sort
  return (
    <div class="drawn-more">
      {sort === 'keep-out' ? (
        <Choice
          label={say.nextKind}
          value={nextKind.value}
          options={KEEP_OUT_KINDS.map((kind) => [kind, say.kinds[kind]] as const)}
          onChoose={(kind: KeepOutKind) => {
            chooseNextKind(kind)
          }}
        />
      ) : null}
      {DRAWN_FORMS.map((form) => {
        const on = now?.sort === sort && now.form === form
        return (
          <button
            key={form}
            type="button"
            class={on ? 'button button-small on' : 'button button-small'}
            aria-pressed={on}
            onClick={() => (on ? stopDrawing() : startDrawing(sort, form))}
          >
            <Icon name="add" /> {say.draw[sort][form]}
          </button>
        )
      })}
      {canTake.value || taking ? (
        <button
          type="button"
          class={taking ? 'button button-small on' : 'button button-small'}
          aria-pressed={taking}
          aria-label={say.takeSpoken[sort]}
          onClick={() => (taking ? stopDrawing() : startTaking(sort))}
        >
          {say.take}
        </button>
      ) : null}
      <FileButton sort={sort} />
      <FileReading sort={sort} />
    </div>
  )
}

/** What is being read, with the way to stop it. */
function FileReading({ sort }: { readonly sort: DrawnSort }) {
  const reading = readingFile.value
  if (reading?.sort !== sort) return null
  return (
    <span class="drawn-reading">
      <span role="status">{say.reading(reading.name)}</span>
      <button
        type="button"
        class="button button-small"
        aria-label={say.stopReadingSpoken(reading.name)}
        onClick={reading.stop}
      >
        {say.stopReading}
      </button>
    </span>
  )
}

function FileButton({ sort }: { readonly sort: DrawnSort }) {
  const choose = (event: Event & { readonly currentTarget: HTMLInputElement }): void => {
    const input = event.currentTarget
    const [file] = input.files ?? []
    // The same file chosen again has to be a change again.
    input.value = ''
    if (file !== undefined) void bringInFile(sort, file)
  }
  return (
    <label class="button button-small drawn-file">
      {say.file}
      <input
        type="file"
        class="unseen"
        accept=".geojson,.json,application/geo+json"
        aria-label={say.fileSpoken[sort]}
        onChange={choose}
      />
    </label>
  )
}
