/** Why no day will do: on how many days each wish holds by itself, and which two never hold at one time. */
import type { CivilDay, Zone } from '#core/time/civil.ts'
import type { LightScene } from './light-scene.ts'
import { commonSpans, dayWindows } from './light-window.ts'
import type { LightWishes, WishKind } from './light-wish.ts'

export interface WishDays {
  /** Of the days looked at. */
  readonly looked: number
  /** Days on which each wish that is made holds at some time, in their order. */
  readonly alone: readonly { readonly kind: WishKind; readonly days: number }[]
  /** Days on which two hold at one time, for each pair. */
  readonly pairs: readonly { readonly kinds: readonly [WishKind, WishKind]; readonly days: number }[]
}

export const NO_DAYS: WishDays = { looked: 0, alone: [], pairs: [] }

export function wishDays(scene: LightScene, wishes: LightWishes, days: readonly CivilDay[], zone: Zone): WishDays {
  return days.reduce<WishDays>((sum, day) => addedUp(sum, wishesOf(scene, wishes, day, zone)), NO_DAYS)
}

function wishesOf(scene: LightScene, wishes: LightWishes, day: CivilDay, zone: Zone): WishDays {
  const windows = dayWindows(scene, wishes, day, zone).wishes
  return {
    looked: 1,
    alone: windows.map(({ kind, spans }) => ({ kind, days: spans.length > 0 ? 1 : 0 })),
    pairs: windows.flatMap((one, index) =>
      windows.slice(index + 1).map((other) => ({
        kinds: [one.kind, other.kind] as const,
        days: commonSpans(one.spans, other.spans).length > 0 ? 1 : 0,
      })),
    ),
  }
}

/** Counts of the same wishes over two stretches of days, together. */
export function addedUp(one: WishDays, other: WishDays): WishDays {
  if (one.looked === 0) return other
  return {
    looked: one.looked + other.looked,
    alone: one.alone.map((wish, index) => ({ ...wish, days: wish.days + (other.alone[index]?.days ?? 0) })),
    pairs: one.pairs.map((pair, index) => ({ ...pair, days: pair.days + (other.pairs[index]?.days ?? 0) })),
  }
}
