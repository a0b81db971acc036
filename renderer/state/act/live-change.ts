/** A change by hand while it lasts: on the board at once, kept as one edit, put back, or settled before anything else acts. One at a time. */
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import type { RecordEdit } from '#renderer/state/library/edit.ts'
import { commit } from '#renderer/state/library/history.ts'
import { savedSpot, shoot, spots, endLive, showLive } from '#renderer/state/library/library.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { beginUnfinished, settleUnfinished } from '#renderer/state/library/unfinished.ts'

/** What a hand may change. */
export interface Arrangement {
  readonly shoot: Shoot
  readonly spot: Spot
}

/** Why what the hand has left can't be kept, as a sentence; null when it can. */
export type Refuse = (before: Arrangement, after: Arrangement) => string | null

export interface LiveChange {
  /** The records as saved when the hand took hold. */
  readonly start: Arrangement
  /** False once it is kept, given up or settled, and when a change from elsewhere has put its own state on the board. */
  readonly lasts: () => boolean
  /** Shows everywhere how things are now. */
  readonly show: (moved: Arrangement) => void
  /** Saves what is shown as one edit; resolves when saved or refused. What can't be kept is put back, and told. */
  readonly keep: () => Promise<void>
  /** Puts back what was there. */
  readonly giveUp: () => void
}

interface Options {
  readonly refuse?: Refuse
  /** Told when it has ended in whatever way: the hand lets go. `kept` is false for one that was given up. */
  readonly onEnd?: (kept: boolean) => void
}

interface Now {
  readonly label: string
  readonly change: LiveChange
  /** Milliseconds without a further step after which it is kept; null for what is held until it is let go. */
  readonly rest: number | null
  timer: ReturnType<typeof setTimeout> | null
}

let now: Now | null = null

/** Milliseconds without a further step after which steps by keys are saved. */
const PAUSE = 600

/** Takes hold of what is on the board; null when nothing is. Whatever another hand or a field was at is settled before. */
export function begin(label: string, options: Options = {}): LiveChange | null {
  return takeUp(label, options, null)
}

/** Goes on with the steps under way when they are of the same label, else begins new ones. They are kept when no further one comes. */
export function beginSteps(label: string, refuse?: Refuse): LiveChange | null {
  if (now !== null && now.rest !== null && now.label === label && now.change.lasts()) return now.change
  return takeUp(label, refuse === undefined ? {} : { refuse }, PAUSE)
}

/** Keeps what the hand has shown so far. */
export function settle(): void {
  if (now !== null) void now.change.keep()
}

/** The same for steps by keys alone: what a pointer holds goes on. */
export function settleSteps(): void {
  if (now !== null && now.rest !== null) settle()
}

function takeUp(label: string, { refuse, onEnd }: Options, rest: number | null): LiveChange | null {
  // A field's text too: it is saved by its blur a moment later, and the change would begin at records that are no longer.
  settleUnfinished()
  const spot = savedSpot.peek()
  const open = shoot.peek()
  if (spot === null || open === null) return null
  const start = { spot, shoot: open }
  let moved: Arrangement = start
  let ended = false
  const forget = beginUnfinished(settle)

  function end(kept: boolean): void {
    ended = true
    forget()
    if (own.timer !== null) clearTimeout(own.timer)
    if (now === own) now = null
    onEnd?.(kept)
  }
  const change: LiveChange = {
    start,
    lasts: () => !ended && savedSpot.peek() === spot && shoot.peek() === open,
    show: (next) => {
      if (!change.lasts()) return
      moved = next
      showLive(next.spot, next.shoot)
      if (rest === null) return
      if (own.timer !== null) clearTimeout(own.timer)
      own.timer = setTimeout(() => void change.keep(), rest)
    },
    keep: async () => {
      if (ended) return
      end(true)
      // Another spot may have come on the board meanwhile; the change is of these records as they were.
      if (shoot.peek() !== open || (savedSpot.peek() !== spot && !spots.peek().includes(spot))) return
      const refusal = refuse?.(start, moved) ?? null
      const records: RecordEdit[] = []
      if (moved.shoot !== open) records.push({ kind: 'shoot', before: open, after: moved.shoot })
      if (moved.spot !== spot) records.push({ kind: 'spot', before: spot, after: moved.spot })
      if (refusal !== null || records.length === 0) endLive()
      else await commit({ label, records })
      if (refusal !== null) tell('fault', refusal)
    },
    giveUp: () => {
      if (ended) return
      const shown = moved !== start && change.lasts()
      end(false)
      if (shown) endLive()
    },
  }
  const own: Now = { label, change, rest, timer: null }
  now = own
  return change
}

/** Steps must not be overtaken by Undo or by a press elsewhere. */
export function followHands(): () => void {
  const onKey = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.key === 'Tab' || event.key === 'Escape') settleSteps()
  }
  addEventListener('keydown', onKey, true)
  addEventListener('pointerdown', settleSteps, true)
  return () => {
    removeEventListener('keydown', onKey, true)
    removeEventListener('pointerdown', settleSteps, true)
  }
}
