/** The light of a spot's day: what sun and moon do from the first to the last minute by the place's clock, and the light windows. */
import { type MoonDay, type SunDay, moonDay, sunDay } from '#core/light/day-events.ts'
import type { LightStage } from '#core/light/light-stage.ts'
import { type DayWindows, dayWindows } from '#core/light/light-window.ts'
import type { LightWishes } from '#core/light/light-wish.ts'
import { type CivilDay, type Zone, civilDayOf } from '#core/time/civil.ts'
import type { Assessment } from './assess.ts'
import { lightStage } from './light-reading.ts'
import type { Plan } from './plan.ts'

export interface DayLight {
  readonly day: CivilDay
  readonly zone: Zone
  readonly sun: SunDay
  readonly moon: MoonDay
  readonly windows: DayWindows
}

/** The stage of a plan as assessed. */
export function stageOf(plan: Plan, found: Assessment): LightStage {
  return lightStage(plan, { view: found.view, levels: found.levels, toSubject: found.toSubject.bearing })
}

export function lightOfDay(stage: LightStage, wishes: LightWishes, day: CivilDay, zone: Zone): DayLight {
  return {
    day,
    zone,
    sun: sunDay(stage.at, day.start, day.end),
    moon: moonDay(stage.at, day.start, day.end),
    windows: dayWindows(stage, wishes, day, zone),
  }
}

/** The light of the civil day that holds the spot's instant. */
export function dayLight(plan: Plan, found: Assessment, zone: Zone): DayLight {
  return lightOfDay(stageOf(plan, found), plan.shoot.light, civilDayOf(plan.spot.when, zone), zone)
}
