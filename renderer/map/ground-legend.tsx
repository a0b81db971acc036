/** What the veil on the map says, in words: what is clear, what is veiled, how finely and how surely it was found. */
import type { Plan } from '#core/plan/plan.ts'
import { formatClock } from '#core/time/civil.ts'
import { type AreaState } from '#renderer/ground/keep-area.ts'
import { type AreaAsk, type NoArea, shownArea, wantedArea } from '#renderer/ground/shown-area.ts'
import { metres, share } from '#renderer/part/figure.ts'
import { plan } from '#renderer/state/derived.ts'
import { type GroundShown, groundShown, seenAt, wantedShare } from '#renderer/state/ground-shown.ts'
import { settings } from '#renderer/state/settings.ts'
import { terrainSource, terrainTrouble } from '#renderer/state/terrain.ts'
import { zone } from '#renderer/state/zone.ts'
import { type LegendWords, groundMapWords as say } from '#renderer/words/en-ground-map.ts'

/** Which share of the landmark, in words. */
export function shareWords(wanted: number): string {
  if (wanted <= 0.01) return say.anyShare
  return wanted >= 1 ? say.wholeShare : say.atLeast(share(wanted))
}

/** The landmark as far as its showing is told: a long or broad one by its middle, a summit by its upper part. */
export function landmarkWords({ landmark }: Plan): string {
  const name = landmark === null || landmark.name === '' ? say.theLandmark : landmark.name
  if (landmark?.kind === 'summit') return say.upperPart(name)
  return landmark?.kind === 'upright' || landmark === null ? name : say.atMiddle(name)
}

function wordsFor(shown: Exclude<GroundShown, 'none'>, now: Plan): LegendWords {
  if (shown === 'landmark') return say.landmark(shareWords(wantedShare.value), landmarkWords(now))
  if (shown === 'shade') return say.shade(formatClock(now.spot.when, zone.value))
  return seenAt.value === 'ground'
    ? say.standpoint
    : say.standpointFor(metres(now.shoot.subject.height, settings.value.units))
}

/** How far the answer is: the word that tells a preview from the exact one. */
export function stateWords({ shown, share: done, fault }: AreaState): string {
  if (fault !== null) return say.failed(fault)
  const percent = share(Math.floor((done ?? 0) * 100) / 100)
  if (shown === null) return say.working(percent)
  if (!shown.preview) return shown.of.kind === 'shade' ? say.shadeDone : say.exact
  return done === null ? say.preview : say.settling(percent)
}

function wayWords(shown: GroundShown, now: Plan, { grid }: AreaAsk): string {
  const { units } = settings.value
  const cells = say.cells(metres(grid.cell, units))
  return shown === 'shade' ? cells : `${cells}, ${say.lensUp(metres(now.spot.standpoint.lensHeight, units))}`
}

function missing(why: NoArea): string {
  if (why !== 'no-elevations' || terrainSource.value !== null) return say.none[why]
  return terrainTrouble.value ?? say.reading
}

export function GroundLegend() {
  const shown = groundShown.value
  const now = plan.value
  const asked = wantedArea.value
  if (shown === 'none' || now === null || asked === null) return null
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
