/** What the veil on the map says, in words: what is clear, what is veiled, how finely and how surely it was found. */
import type { Plan } from '#core/plan/plan.ts'
import { formatClock } from '#core/time/civil.ts'
import type { AreaRequest, NoArea } from '#renderer/view/ground/area-request.ts'
import { shownArea, wantedArea } from '#renderer/view/ground/shown-area.ts'
import { metres } from '#renderer/text/figure.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { type GroundOverlay, groundOverlay, seenAt, wantedShare } from '#renderer/state/session/ground-overlay.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { terrainSource, terrainTrouble } from '#renderer/state/plan/terrain.ts'
import { zone } from '#renderer/state/plan/zone.ts'
import { type LegendWords, groundMapWords as say } from '#renderer/words/en-ground-map.ts'
import { landmarkWords, shareWords, stateWords } from './legend-words.ts'

function wordsFor(shown: Exclude<GroundOverlay, 'none'>, now: Plan): LegendWords {
  if (shown === 'landmark')
    return now.landmark?.kind === 'summit'
      ? say.summit(landmarkWords(now))
      : say.landmark(shareWords(wantedShare.value), landmarkWords(now))
  if (shown === 'shade') return say.shade(formatClock(now.spot.when, zone.value))
  return seenAt.value === 'ground'
    ? say.standpoint
    : say.standpointFor(metres(now.shoot.subject.height, settings.value.units))
}

function wayWords(shown: GroundOverlay, now: Plan, { grid }: AreaRequest): string {
  const { units } = settings.value
  const cells = say.cells(metres(grid.cell, units))
  return shown === 'shade' ? cells : `${cells}, ${say.lensUp(metres(now.spot.standpoint.lensHeight, units))}`
}

function missing(why: NoArea): string {
  if (why !== 'no-elevations' || terrainSource.value !== null) return say.none[why]
  return terrainTrouble.value ?? say.reading
}

export function GroundLegend() {
  const shown = groundOverlay.value
  // Without one nothing that moves is read, so nothing draws this again.
  if (shown === 'none') return null
  const now = plan.value
  const asked = wantedArea.value
  if (now === null || asked === null) return null
  if (typeof asked === 'string') {
    return (
      <p class="map-over ground-legend" role="status">
        {missing(asked)}
      </p>
    )
  }
  const words = wordsFor(shown, now)
  return (
    <div class="map-over ground-legend" role="group" aria-label={say.legend}>
      <ul>
        <li>
          <span class="swatch swatch-clear" />
          {words.clear}
        </li>
        <li>
          <span class={`swatch ${shown === 'shade' ? 'swatch-shade' : 'swatch-hidden'}`} />
          {words.veiled}
        </li>
        <li>
          <span class="swatch swatch-unknown" />
          {say.unknown}
        </li>
      </ul>
      <p>
        {wayWords(shown, now, asked)}, <span role="status">{stateWords(shownArea.value)}</span>
      </p>
    </div>
  )
}
