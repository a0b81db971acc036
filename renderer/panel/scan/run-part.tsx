/** The scan itself: its cost and start, its progress, what it found, and why it found nothing. */
import { share } from '#renderer/text/figure.ts'
import { Question } from '#renderer/part/question.tsx'
import { Warnings } from '#renderer/part/warning.tsx'
import { homeSpot, spots, tryOut } from '#renderer/state/library/library.ts'
import { spotName } from '#renderer/text/names.ts'
import { type ScanShown, scanAtWork, scanShown } from '#renderer/state/session/scan-shown.ts'
import { scanFoundWords } from '#renderer/words/en-scan-found.ts'
import { scanRunWords as say } from '#renderer/words/en-scan-run.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { countText, placesText, secondsLeft, timeText } from './cost-text.ts'
import { demandNames } from './demand-names.ts'
import { NonePart } from './none-part.tsx'
import { ResultList } from './result-list.tsx'
import { scanAgain, scanChanges } from './scan-now.ts'
import { stopScan } from './scan-run.ts'
import { ScoreLegend } from './score-legend.tsx'
import { StartPart } from './start-part.tsx'
import { useTakenFocus } from '#renderer/part/take-focus.ts'

export function RunPart() {
  const scan = scanShown.value
  return (
    <Question title={scanWords.whereAlong}>
      {scanAtWork.value && scan !== null ? <Progress scan={scan} /> : <StartPart after={scan !== null} />}
      {scan === null ? null : <Found scan={scan} />}
    </Question>
  )
}

function Progress({ scan }: { readonly scan: ScanShown }) {
  const { phase, share: done, elapsed } = scan
  const stop = useTakenFocus(true)
  const left = secondsLeft(done, elapsed)
  const percent = share(Math.floor(done * 100) / 100)
  return (
    <div class="scan-progress">
      <div class="scan-progress-head">
        <span>
          {phase === 'polishing' || phase === 'explaining' ? say.phases[phase] : say.phases.looking}{' '}
          <small>{left === null ? percent : say.shareLeft(percent, timeText(left))}</small>
        </span>
        <button ref={stop} type="button" class="button" onClick={stopScan}>
          {say.stop}
        </button>
      </div>
      <div
        class="scan-bar"
        role="progressbar"
        aria-label={say.progress}
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={Math.floor(done * 100)}
      >
        <span style={{ width: `${done * 100}%` }} />
      </div>
    </div>
  )
}

function goodCount({ places }: ScanShown): number {
  return places.filter(({ score }) => score !== null).length
}

function Found({ scan }: { readonly scan: ScanShown }) {
  const good = goodCount(scan)
  const { phase, fault, why } = scan
  return (
    <div class="scan-found">
      <Stale />
      {phase === 'failed' ? <Warnings sentences={[say.failed(fault ?? '')]} /> : null}
      {phase === 'stopped' ? (
        <p class="hint">{say.stopped(share(Math.floor(scan.share * 100) / 100), good > 0)}</p>
      ) : null}
      <p role="status" class="scan-count">
        {phase === 'looking' && good > 0 ? say.soFar(good, countText(good)) : null}
        {good > 0 && phase !== 'looking'
          ? scanFoundWords.found(good, countText(good), placesText(scan.places.length))
          : null}
      </p>
      {why === null ? null : <NonePart why={why} names={demandNames(scan.request)} />}
      {good > 0 ? <ScoreLegend places={scan.places} /> : null}
      <SetOut scan={scan} />
      {scan.results.length === 0 ? null : (
        <>
          <ResultList scan={scan} />
          <ul class="cautions">
            <li>{scanFoundWords.caution}</li>
          </ul>
        </>
      )}
    </div>
  )
}

/** What has changed since, with a way to scan again. */
function Stale() {
  const changes = scanChanges.value
  if (changes.length === 0) return null
  return (
    <div class="scan-stale" role="status">
      <Warnings sentences={[say.stale(changes.map((change) => say.changes[change]))]} />
      {scanAtWork.value ? (
        <button type="button" class="button button-small" onClick={scanAgain}>
          {say.startAgain}
        </button>
      ) : null}
    </div>
  )
}

/** Told once the board shows another spot than the one that it set out from. */
function SetOut({ scan }: { readonly scan: ScanShown }) {
  const { spot } = scan.request
  const home = homeSpot.value
  const own = home === null || home.id === spot.id || scan.results.some(({ id }) => id === home.id)
  if (own || tryOut.value !== null) return null
  const now = spots.value.find(({ id }) => id === spot.id) ?? spot
  return <p class="hint">{say.setOutFrom(spotName(now))}</p>
}
