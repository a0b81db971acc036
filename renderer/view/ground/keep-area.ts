/** Keeps what is shown of an area in step with what is wanted: the exact one when things stand still, previews while they move. */
import type { Hearer } from '#renderer/job/ask-jobs.ts'
import type { AreaJob, AreaUpdate } from './ground-job.ts'
import type { Masks } from './masks.ts'

/** What the map should tell, as the job that finds it; a preview of it is the same question asked otherwise. */
export type WantedArea = Exclude<AreaJob, { readonly kind: 'preview' }>

export interface ShownArea {
  readonly of: WantedArea
  readonly masks: Masks
  readonly preview: boolean
}

export interface AreaState {
  readonly shown: ShownArea | null
  /** Of the exact answer at work, 0..1; null while none is. */
  readonly share: number | null
  readonly fault: string | null
}

export const NO_AREA: AreaState = { shown: null, share: null, fault: null }

interface Outside {
  /** Returns a function that stops it. */
  readonly ask: (job: AreaJob, hearer: Hearer<AreaUpdate>) => () => void
  readonly show: (state: AreaState) => void
}

interface AtWork {
  readonly key: string
  readonly stop: () => void
}

export interface AreaKeeper {
  /** Tells what is wanted now, and whether a hand is moving something. */
  readonly want: (wanted: WantedArea | null, moving: boolean) => void
}

export function keepArea({ ask, show }: Outside): AreaKeeper {
  let wanted: WantedArea | null = null
  let moving = false
  let state = NO_AREA
  let exact: AtWork | null = null
  let preview: AtWork | null = null

  function change(part: Partial<AreaState>): void {
    state = { ...state, ...part }
    show(state)
  }

  function halt(work: AtWork | null): null {
    work?.stop()
    return null
  }

  function isShown(key: string, asPreview: boolean): boolean {
    return state.shown !== null && state.shown.preview === asPreview && keyOf(state.shown.of) === key
  }

  function begin(job: WantedArea, key: string): void {
    exact = halt(exact)
    preview = halt(preview)
    // A preview may stay until the exact one is there, and the shadow of a minute ago; what was exact for another question may not.
    const before = state.shown
    const stays = before !== null && before.of.kind === job.kind && (before.preview || job.kind === 'shade')
    const shown = stays ? before : null
    change({ shown, share: 0, fault: null })
    exact = {
      key,
      stop: ask(job, {
        found: ({ masks }, share) => {
          if (masks === null) change({ share })
          else {
            exact = null
            change({ shown: { of: job, masks, preview: false }, share: null })
            goOn()
          }
        },
        failed: (message) => {
          exact = null
          change({ share: null, fault: message })
        },
      }),
    }
  }

  /** One at a time: under a hand that moves without rest each would otherwise be dropped before it is done. */
  function beginPreview(job: WantedArea & { readonly kind: 'exact' }, key: string): void {
    preview = {
      key,
      stop: ask(
        { ...job, kind: 'preview' },
        {
          found: ({ masks }) => {
            preview = null
            if (masks !== null) change({ shown: { of: job, masks, preview: true } })
            goOn()
          },
          failed: (message) => {
            preview = null
            change({ fault: message })
          },
        },
      ),
    }
  }

  function goOn(): void {
    if (wanted === null) return
    const key = keyOf(wanted)
    if (isShown(key, false) || exact?.key === key) return
    // Shadows take no longer than a preview would.
    if (wanted.kind === 'shade') {
      if (exact === null || !moving) begin(wanted, key)
    } else if (!moving) begin(wanted, key)
    else {
      exact = halt(exact)
      // Until the first preview is there, what was exact a moment ago is no more than one.
      const shown = state.shown === null ? null : { ...state.shown, preview: true }
      if (state.share !== null || state.shown?.preview === false) change({ share: null, shown })
      if (preview === null && !isShown(key, true)) beginPreview(wanted, key)
    }
  }

  return {
    want(job, inHand) {
      wanted = job
      moving = inHand
      if (job !== null) return goOn()
      exact = halt(exact)
      preview = halt(preview)
      if (state !== NO_AREA) change(NO_AREA)
    },
  }
}

export function keyOf(job: WantedArea): string {
  return JSON.stringify(job)
}
