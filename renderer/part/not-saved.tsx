/** What could not be saved, with what happened and the two ways on: mine once more, or what the library holds. */
import type { Fault } from '#core/result.ts'
import { type Refusal, keepMine, letRefusalGo, refusals } from '#renderer/state/library/refusals.ts'
import { savingWords as say } from '#renderer/words/en-saving.ts'
import type { Draft } from './draft.ts'
import { Icon } from './icon.tsx'

/** True where somebody else's state stands against mine; else it is the way to the library that failed. */
function againstTheirs({ reason }: Fault): boolean {
  return reason === 'changed-elsewhere' || reason === 'gone'
}

interface WaysProps {
  readonly fault: Fault
  readonly what: string
  readonly onMine: () => void
  readonly onTheirs: () => void
}

function Ways({ fault, what, onMine, onTheirs }: WaysProps) {
  const [mine, theirs] = againstTheirs(fault) ? [say.keepMine, say.keepTheirs] : [say.tryAgain, say.discard]
  return (
    <span class="buttons">
      <button type="button" class="button button-small" aria-label={say.of(mine, what)} onClick={onMine}>
        {mine}
      </button>
      <button type="button" class="button button-small" aria-label={say.of(theirs, what)} onClick={onTheirs}>
        {theirs}
      </button>
    </span>
  )
}

/** Beneath a field whose text is not saved. */
export function NotSavedText({ id, label, draft }: { id: string; label: string; draft: Draft }) {
  const { unsaved, saved } = draft
  if (unsaved === null) return null
  const why = againstTheirs(unsaved.fault) ? `${say.elsewhere} ${say.theirs(saved)}` : unsaved.fault.message
  return (
    <div class="refusal not-saved" id={id}>
      <p>
        <Icon name="warning" /> {say.notSaved} {why}
      </p>
      <Ways fault={unsaved.fault} what={label} onMine={draft.saveAgain} onTheirs={draft.giveUp} />
    </div>
  )
}

/** As many are shown at once; the others come up as these are decided. */
const SHOWN = 3

function Line({ refusal }: { refusal: Refusal }) {
  const { what, fault } = refusal
  return (
    <div class="notice notice-fault" role="alert">
      <Icon name="warning" />
      <p>{say.held(what, fault.message)}</p>
      <Ways fault={fault} what={what} onMine={() => keepMine(refusal)} onTheirs={() => letRefusalGo(refusal)} />
    </div>
  )
}

/** Among the messages, until each is decided. */
export function NotSavedList() {
  const all = refusals.value
  return (
    <>
      {all.length > SHOWN ? <p class="notice">{say.more(all.length - SHOWN)}</p> : null}
      {all.slice(-SHOWN).map((refusal) => (
        <Line key={refusal.id} refusal={refusal} />
      ))}
    </>
  )
}
