/** The scan on the map: the score along the ground in ink, and the best spots as numbered marks that can be tried out. */
import { computed } from '@preact/signals'
import { beside } from '#renderer/state/session/navigation.ts'
import {
  type ScanResult,
  pointedResult,
  scanShown,
  pointAwayFrom,
  pointAtResult,
} from '#renderer/state/session/scan-shown.ts'
import { onBoard, openTryOut } from '#renderer/state/act/try-out.ts'
import { scanFoundWords } from '#renderer/words/en-scan-found.ts'
import { mapView } from '#renderer/view/drawing/map-look.ts'
import { type ResultMark, placeMarks } from './result-marks.ts'
import { drawScores } from './score-drawing.ts'
import { figure } from '#renderer/text/path-text.ts'

/** Only beside the scan's panel: the board stays calm otherwise. */
const shown = computed(() => (beside.value === 'scan' ? scanShown.value : null))

/** Drawn again when the map moves or more is found, not with every thing that is dragged. */
const scores = computed(() => {
  const scan = shown.value
  const view = mapView.value
  if (scan === null || view === null || scan.places.length === 0) return null
  return drawScores(scan.places, scan.request.shoot.stoppingGround, scan.request.steps.place, view)
})

const marks = computed(() => {
  const scan = shown.value
  const view = mapView.value
  return scan === null || view === null ? [] : placeMarks(scan.results, scan.request.shoot.subject, view)
})

/** Under the things. */
export function ScanScores() {
  const drawn = scores.value
  if (drawn === null) return null
  const { lines, squares, none, noneDots } = drawn
  return (
    <g class="scan-scores" aria-hidden="true">
      <path class="score-none" d={none} />
      <path class="score-none score-none-dots" d={noneDots} />
      {lines.map((path, kind) => (
        // A class of thickness is told by its place among them.
        // oxlint-disable-next-line react/no-array-index-key
        <path key={`line ${kind}`} class={`score-line score-line-${kind}`} d={path} />
      ))}
      {squares.map((path, kind) => (
        // oxlint-disable-next-line react/no-array-index-key
        <path key={`square ${kind}`} class="score-square" d={path} />
      ))}
    </g>
  )
}

/** Over the things. */
export function ScanMarks() {
  const scan = shown.value
  if (scan === null) return null
  const { results } = scan
  // The best is drawn last, over the others.
  return (
    <g role="group" aria-label={scanFoundWords.best}>
      {marks.value.toReversed().map((mark) => {
        const result = results.find(({ id }) => id === mark.id)
        return result === undefined ? null : <Mark key={mark.id} mark={mark} result={result} />
      })}
    </g>
  )
}

function Mark({ mark, result }: { readonly mark: ResultMark; readonly result: ScanResult }) {
  const { at, stub, plate, number } = mark
  const open = onBoard(mark.id)
  const pointed = pointedResult.value === mark.id
  const score = String(Math.round(result.candidate.score * 100))
  const point = (): void => {
    pointAtResult(mark.id)
  }
  const leave = (): void => {
    pointAwayFrom(mark.id)
  }
  const tryIt = (): void => {
    if (!open) void openTryOut(result.spot)
  }
  return (
    <g
      class={`result-mark${open ? ' result-open' : ''}${pointed ? ' result-pointed' : ''}`}
      data-result={number}
      tabindex={0}
      role="button"
      aria-pressed={open}
      aria-label={scanFoundWords.mark(number, score)}
      onPointerEnter={point}
      onPointerLeave={leave}
      onFocus={point}
      onBlur={leave}
      // The map below would take the press for the beginning of a drag.
      onPointerDown={(event) => event.stopPropagation()}
      onMouseDown={(event) => event.stopPropagation()}
      onDblClick={(event) => event.stopPropagation()}
      onClick={tryIt}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return
        event.preventDefault()
        event.stopPropagation()
        tryIt()
      }}
    >
      <path class="result-stub" d={`M${figure(at.x)},${figure(at.y)}L${figure(stub.x)},${figure(stub.y)}`} />
      <g transform={`translate(${figure(at.x)},${figure(at.y)}) rotate(${figure(mark.heading)})`}>
        <path class="result-body" d={mark.body} />
      </g>
      <g class="result-plate" transform={`translate(${figure(plate.at.x)},${figure(plate.at.y)})`}>
        <rect
          x={figure(-plate.width / 2)}
          y={figure(-plate.height / 2)}
          width={figure(plate.width)}
          height={plate.height}
          rx={3}
        />
        <text y={4.3}>{number}</text>
      </g>
    </g>
  )
}
