/** What the ink on the map means: thicker is better, from the least score found to the best; dotted where nothing passes. */
import type { PlaceFound } from '#core/scan/scan-found.ts'
import { SCORE_CLASSES, scoreRange } from '#renderer/view/overlay/score-drawing.ts'
import { scanFoundWords as say } from '#renderer/words/en-scan-found.ts'

/** Pixels of one sample. */
const SAMPLE = 22

export function ScoreLegend({ places }: { readonly places: readonly PlaceFound[] }) {
  const range = scoreRange(places)
  if (range === null) return null
  const text = (score: number): string => String(Math.round(Math.max(0, score) * 100))
  return (
    <p class="score-legend">
      <span>{say.scoreAlong}</span>
      <span class="score-legend-scale">
        {text(range.least)}
        <svg
          class="scan-scores"
          viewBox={`0 0 ${SCORE_CLASSES * SAMPLE} 12`}
          width={SCORE_CLASSES * SAMPLE}
          height={12}
          aria-hidden="true"
        >
          {Array.from({ length: SCORE_CLASSES }, (_, kind) => (
            // A class of thickness is told by its place among them.
            // oxlint-disable-next-line react/no-array-index-key
            <path key={kind} class={`score-line score-line-${kind}`} d={`M${kind * SAMPLE + 1},6h${SAMPLE - 3}`} />
          ))}
        </svg>
        {text(range.most)}
      </span>
      <span class="score-legend-scale">
        <svg class="scan-scores" viewBox="0 0 24 12" width={24} height={12} aria-hidden="true">
          <path class="score-none" d="M2,6H23" />
        </svg>
        {say.legendNone}
      </span>
    </p>
  )
}
