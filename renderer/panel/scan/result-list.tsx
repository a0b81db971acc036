/** The best arrangements as a list: each with its frame, lens, time and score, to be tried on the board and kept on the shelf. */
import { useEffect, useRef } from 'preact/hooks'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import { alongAt, measuredLine } from '#core/scan/scan-places.ts'
import { civilTime, formatClock, formatDay } from '#core/time/civil.ts'
import { spanText } from '#renderer/text/light-text.ts'
import { LensThumb } from '#renderer/view/lens-picture/lens-thumb.tsx'
import { bearing, metres, millimetres } from '#renderer/text/figure.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { Fold } from '#renderer/part/question.tsx'
import { spots, tryOut } from '#renderer/state/library/library.ts'
import { lensName, spotName } from '#renderer/text/names.ts'
import {
  type ScanResult,
  type ScanShown,
  pointedResult,
  pointAwayFrom,
  pointAtResult,
} from '#renderer/state/session/scan-shown.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { keepArrangement, leaveTryOut, onBoard, openTryOut } from '#renderer/state/act/try-out.ts'
import { scanFoundWords as say } from '#renderer/words/en-scan-found.ts'
import { demandNames } from './demand-names.ts'
import { MetBars } from './met-bars.tsx'

/** CSS pixels across the small frame. */
const THUMB = 96

export function ResultList({ scan }: { readonly scan: ScanShown }) {
  return (
    <ol class="results" aria-label={say.best}>
      {scan.results.map((result) => (
        <ResultCard key={result.id} result={result} scan={scan} />
      ))}
    </ol>
  )
}

interface CardProps {
  readonly result: ScanResult
  readonly scan: ScanShown
}

/** The window of the light, else the instant. */
function whenText({ window, candidate }: ScanResult, zone: string): string {
  const day = formatDay(civilTime(candidate.instant, zone).date)
  return window === null ? say.at(day, formatClock(candidate.instant, zone)) : say.window(day, spanText(window, zone))
}

function ResultCard({ result, scan }: CardProps) {
  const { candidate, spot, number, id } = result
  const { shoot, zone } = scan.request
  const { units } = settings.value
  const open = onBoard(id)
  const onShelf = spots.value.some((one) => one.id === id)
  const pointed = pointedResult.value === id
  const card = useRef<HTMLLIElement>(null)
  // Pointed at on the map it comes into sight in the list.
  useEffect(() => {
    if (open) card.current?.scrollIntoView({ block: 'nearest' })
  }, [open])
  const lens = shoot.bag.lenses.find((one) => one.id === candidate.lensId)
  const score = String(Math.round(candidate.score * 100))
  const away = metres(geodesicDistance(candidate.at, candidate.standpoint), units)
  const ground = shoot.stoppingGround.find((one) => one.id === candidate.ground)
  const along = ground?.form === 'line' ? metres(alongAt(measuredLine(ground.points), candidate.at), units) : null
  const point = (on: boolean) => (): void => (on ? pointAtResult(id) : pointAwayFrom(id))
  return (
    <li
      ref={card}
      class={`result${open ? ' result-on' : ''}${pointed ? ' result-at' : ''}`}
      onPointerEnter={point(true)}
      onPointerLeave={point(false)}
      onFocusIn={point(true)}
      onFocusOut={point(false)}
    >
      <button
        type="button"
        class="result-face"
        aria-pressed={open}
        title={open ? say.trying : say.tryIt}
        onClick={() => void (tryOut.value?.spot.id === id ? leaveTryOut() : openTryOut(spot))}
      >
        <span class="result-frame">
          <LensThumb shoot={shoot} spot={result.frame} width={THUMB} ground={scan.request.terrain} />
        </span>
        <span class="result-words">
          <span class="result-head">
            <span class="result-number">{number}</span>
            <strong>{millimetres(candidate.focalLength)}</strong>
            <span class="result-score">{say.score(score)}</span>
          </span>
          <span class="result-line">{lens === undefined ? '' : lensName(lens)}</span>
          <span class="result-line">{whenText(result, zone)}</span>
          <span class="result-line">{say.stops(along, bearing(candidate.heading))}</span>
          <span class="result-line">{say.stands(away, metres(candidate.lensHeight, units))}</span>
        </span>
      </button>
      <div class="result-acts">
        <Fold title={say.howMet}>
          <MetBars met={candidate.met} shoot={shoot} names={demandNames(scan.request)} />
          {result.polished ? <p class="hint">{say.polished}</p> : null}
        </Fold>
        {onShelf ? (
          <span class="result-kept">
            <Icon name="visited" /> {say.kept}
          </span>
        ) : (
          <button
            type="button"
            class="button button-small"
            aria-label={say.keepNamed(spotName(spot))}
            onClick={() => void keepArrangement(spot)}
          >
            {say.keep}
          </button>
        )}
      </div>
    </li>
  )
}
