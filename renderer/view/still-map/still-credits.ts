/** Who is to be named beside a still map: the source of its tiles, or the makers of what the built-in map shows of the plan. */
import type { TileSourceBrief } from '#app/contract/tiles.ts'
import type { Plan } from '#core/plan/plan.ts'
import { showsIsland } from '#renderer/view/sketch/island-box.ts'
import { paintedCredits } from '#renderer/view/sketch/painted-credits.ts'
import { windowAround } from '#renderer/view/sketch/world.ts'
import { stillView } from './still-view.ts'

export function stillCredits(
  source: Pick<TileSourceBrief, 'attribution'> | null,
  plan: Plan,
  width: number,
  height: number,
): string[] {
  if (source !== null) return source.attribution === '' ? [] : [source.attribution]
  const still = stillView(plan, width, height)
  if (still === null) return []
  // The ground is not shaded on still maps, so that no elevations are shown.
  return paintedCredits({ island: showsIsland(windowAround(still.centre, still.zoom, width, height)), elevations: [] })
}
