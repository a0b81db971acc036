/** The close plan's head: its title with the metres across, and what folds it away or makes it large. */
import { closePlanState, openClosePlan } from '#renderer/state/session/close-plan-size.ts'
import { mapWords } from '#renderer/words/en-map.ts'

/** Pixels that the head takes of the plan. */
export const HEAD_HEIGHT = 32

const ENLARGE = 'M9.5 2.5h4v4M13.5 2.5 9 7M6.5 13.5h-4v-4M2.5 13.5 7 9'
const SHRINK = 'M13.5 6.5h-4v-4M9.5 6.5 13.5 2.5M2.5 9.5h4v4M6.5 9.5 2.5 13.5'
const FOLD = 'M3.5 6 8 10.5 12.5 6'
const UNFOLD = 'M3.5 10 8 5.5 12.5 10'

interface HeadButtonProps {
  readonly name: string
  readonly path: string
  readonly to: 'folded' | 'open' | 'large'
}

function HeadButton({ name, path, to }: HeadButtonProps) {
  return (
    <button
      type="button"
      aria-label={name}
      title={name}
      onClick={() => {
        openClosePlan(to)
      }}
    >
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        <path d={path} />
      </svg>
    </button>
  )
}

export function CloseHead({ title }: { readonly title: string }) {
  const state = closePlanState.value
  return (
    <header class="close-head">
      <h2>{title}</h2>
      {state === 'open' ? <HeadButton name={mapWords.enlarge} path={ENLARGE} to="large" /> : null}
      {state === 'large' ? <HeadButton name={mapWords.shrink} path={SHRINK} to="open" /> : null}
      {state === 'folded' ? (
        <HeadButton name={mapWords.unfold} path={UNFOLD} to="open" />
      ) : (
        <HeadButton name={mapWords.collapse} path={FOLD} to="folded" />
      )}
    </header>
  )
}
