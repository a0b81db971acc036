/** The light of a spot's day: what sun and moon do from the first to the last minute by the place's clock, and the light windows. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type MoonDay, type SunDay, moonDay, sunDay } from '#core/light/day-events.ts'
import type { Span } from '#core/light/crossing.ts'
import { LEVEL_HORIZON, type LightScene, type LightSkyline, type PlanSkylines } from '#core/light/light-scene.ts'
import { type DayWindows, dayWindows } from '#core/light/light-window.ts'
import type { LightWishes } from '#core/light/light-wish.ts'
import { directLight } from '#core/light/over-skyline.ts'
import { type SunLooker, rememberingSun } from '#core/light/wish-margin.ts'
import { type CivilDay, type Zone, civilDayOf } from '#core/time/civil.ts'
import type { Assessment } from './assess.ts'
import { lightScene } from './seen-sides.ts'
import type { Plan } from './plan.ts'
import { skylinesOf } from './plan-skylines.ts'

/** When the sun's disc shows over the ground; null where there are no elevations. */
export interface DirectLight {
  readonly subject: readonly Span[] | null
  readonly landmark: readonly Span[] | null
  readonly lens: readonly Span[] | null
}

export interface DayLight {
  readonly day: CivilDay
  readonly zone: Zone
  readonly sun: SunDay
  readonly moon: MoonDay
  readonly windows: DayWindows
  readonly direct: DirectLight
}

/** The scene of a plan as assessed; skylines already at hand spare their working out. */
export function lightSceneOf(
  plan: Plan,
  found: Pick<Assessment, 'view' | 'levels' | 'toSubject'>,
  skylines: PlanSkylines | null = skylinesOf(plan),
): LightScene {
  const { view, levels, toSubject } = found
  return lightScene(plan, { view, levels, toSubject: toSubject.bearing }, skylines ?? LEVEL_HORIZON)
}

/** What sun and moon do over a day at a place, whatever is photographed there; what was asked of it once it knows. */
export interface SkyDay extends Pick<DayLight, 'sun' | 'moon'> {
  readonly look: SunLooker
  readonly directOver: (skyline: LightSkyline) => readonly Span[]
}

export function skyOfDay(at: LatLon, day: CivilDay): SkyDay {
  const look = rememberingSun(at)
  const known = new WeakMap<LightSkyline, readonly Span[]>()
  const directOver = (skyline: LightSkyline): readonly Span[] => {
    const before = known.get(skyline)
    if (before !== undefined) return before
    const spans = directLight(look, skyline, day)
    known.set(skyline, spans)
    return spans
  }
  return { sun: sunDay(at, day.start, day.end), moon: moonDay(at, day.start, day.end), look, directOver }
}

/** `sky` of the scene's place and this day may be at hand already: a camera that moves changes none of it. */
export function lightOfDay(
  scene: LightScene,
  wishes: LightWishes,
  day: CivilDay,
  zone: Zone,
  sky: SkyDay = skyOfDay(scene.at, day),
): DayLight {
  const direct = (skyline: LightSkyline | null): readonly Span[] | null =>
    skyline === null ? null : sky.directOver(skyline)
  const { subject, landmark, lens } = scene.skylines
  return {
    day,
    zone,
    sun: sky.sun,
    moon: sky.moon,
    windows: dayWindows(scene, wishes, day, zone, sky.look),
    direct: { subject: direct(subject), landmark: direct(landmark), lens: direct(lens) },
  }
}

/** The light of the civil day that holds the spot's instant. */
export function dayLight(plan: Plan, found: Assessment, zone: Zone): DayLight {
  return lightOfDay(lightSceneOf(plan, found), plan.shoot.light, civilDayOf(plan.spot.when, zone), zone)
}
