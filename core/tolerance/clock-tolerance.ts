/** How far the clock may be off: to the ends of the windows in which the light that holds now goes on holding, to the second. */
import { type Span, spansAbove } from '#core/light/crossing.ts'
import type { LightScene } from '#core/light/light-scene.ts'
import { LOOK_EVERY, dayWindows } from '#core/light/light-window.ts'
import { type LightWishes, NO_WISHES } from '#core/light/light-wish.ts'
import { LOOK_OVER_GROUND_EVERY } from '#core/light/over-skyline.ts'
import { lookAtSun } from '#core/light/wish-margin.ts'
import type { CivilDay, Zone } from '#core/time/civil.ts'
import type { Failing } from './condition.ts'
import { type LightAsked, lightHow, heldMargin } from './light-condition.ts'
import { type ClockMove, LONGEST_OFF } from './moves.ts'
import type { Tolerance } from './tolerance.ts'

export interface ClockRequest {
  /** The scene with its whole skylines, as the windows of the day have it. */
  readonly scene: LightScene
  /** What holds at the instant. */
  readonly held: readonly LightAsked[]
  /** The wishes whose hours hold at the instant; null where none are wished or they don't. */
  readonly hours: LightWishes['hours']
  readonly instant: number
  readonly day: CivilDay
  readonly zone: Zone
}

interface Window {
  readonly spans: readonly Span[]
  readonly fails: (instant: number) => Failing
}

/** Where the sun is merely to stay on a thing, which is no wish that the day's windows know. */
function sunSpans(asked: LightAsked, { scene, day }: ClockRequest): readonly Span[] {
  const over = (instant: number): number => heldMargin(asked, scene, instant, lookAtSun(scene.at, instant))
  const { subject, landmark } = scene.skylines
  return spansAbove(
    over,
    day.start,
    day.end,
    subject === null && landmark === null ? LOOK_EVERY : LOOK_OVER_GROUND_EVERY,
  )
}

/** The windows of what holds, over the whole day: those of the day strip where it is a wish. */
function windowsOf(request: ClockRequest): Window[] {
  const { scene, day, zone, hours, held } = request
  const heldWishes = held.reduce<LightWishes>(
    (wishes, { wish }) => (wish === null ? wishes : { ...wishes, [wish.kind]: wish.wishes[wish.kind] }),
    { ...NO_WISHES, hours },
  )
  const ofWishes = new Map(dayWindows(scene, heldWishes, day, zone).wishes.map(({ kind, spans }) => [kind, spans]))
  const windows = held.map((asked): Window => ({
    spans: asked.wish === null ? sunSpans(asked, request) : (ofWishes.get(asked.wish.kind) ?? []),
    fails: (instant) => ({ kind: asked.kind, how: lightHow(asked, scene, lookAtSun(scene.at, instant)) }),
  }))
  const ofHours = ofWishes.get('hours')
  if (ofHours !== undefined) windows.push({ spans: ofHours, fails: () => ({ kind: 'hours', how: 'outside-hours' }) })
  return windows
}

/** Milliseconds beyond a window's end at which it is asked how the condition fails there: the end itself still holds. */
const BEYOND = 1000

/**
 * Earlier and later within the civil day. An instant that holds by the moment, but lies outside the windows, which know the skyline
 * only in steps of azimuth, has no room at all.
 */
export function clockTolerances(request: ClockRequest): Readonly<Record<ClockMove, Tolerance>> {
  const { instant, day } = request
  const windows = windowsOf(request)
  const toward = (move: ClockMove): Tolerance => {
    const sign = move === 'later' ? 1 : -1
    const edge = move === 'later' ? day.end : day.start
    const limit = Math.min(LONGEST_OFF * 1000, sign * (edge - instant))
    let nearest: { readonly room: number; readonly fails: Failing } | null = null
    for (const { spans, fails } of windows) {
      const span = spans.find(({ from, until }) => from <= instant && instant <= until)
      const end = span === undefined ? instant : move === 'later' ? span.until : span.from
      const room = sign * (end - instant)
      if (room < limit && (nearest === null || room < nearest.room))
        nearest = { room, fails: fails(end + sign * BEYOND) }
    }
    return {
      offset: nearest === null ? null : Math.floor(nearest.room / 1000),
      limit: Math.floor(limit / 1000),
      fails: nearest?.fails ?? null,
    }
  }
  return { earlier: toward('earlier'), later: toward('later') }
}
