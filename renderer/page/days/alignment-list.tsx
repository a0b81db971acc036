/** The alignments found, in order of time; a press goes to that instant. */
import type { Alignment } from '#core/light/alignment.ts'
import type { BehindGround } from '#core/light/over-skyline.ts'
import { type Zone, civilTime, formatClock } from '#core/time/civil.ts'
import { dateText } from '#core/time/date-text.ts'
import { degreesText, metres, share } from '#renderer/text/figure.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { goToInstant } from '#renderer/state/act/planned-instant.ts'
import { daysWords } from '#renderer/words/en-days.ts'

const { stands: say } = daysWords
const MOST_LISTED = 200

interface AlignmentListProps {
  readonly found: readonly Alignment[]
  readonly moon: boolean
  /** Whether hills are known. */
  readonly hills: boolean
  readonly zone: Zone
  /** The board's instant. */
  readonly when: number
}

export function AlignmentList({ found, moon, hills, zone, when }: AlignmentListProps) {
  return (
    <>
      <div class="stands-desk" tabIndex={0} role="group" aria-label={say.heading}>
        <table class="figures stands-table">
          <thead>
            <tr>
              <th scope="col">{say.day}</th>
              <th scope="col">{say.clock}</th>
              <th scope="col">{say.altitude}</th>
              <th scope="col">{say.near}</th>
              {moon ? <th scope="col">{say.phase}</th> : null}
              <th scope="col">{say.skyColumn}</th>
              {hills ? <th scope="col">{say.hillsColumn}</th> : null}
            </tr>
          </thead>
          <tbody>
            {found.slice(0, MOST_LISTED).map((one) => (
              <Row key={one.instant} one={one} hills={hills} zone={zone} on={one.instant === when} />
            ))}
          </tbody>
        </table>
      </div>
      {found.length > MOST_LISTED ? <p class="hint">{say.more(MOST_LISTED)}</p> : null}
    </>
  )
}

interface RowProps {
  readonly one: Alignment
  readonly hills: boolean
  readonly zone: Zone
  readonly on: boolean
}

function Row({ one, hills, zone, on }: RowProps) {
  const day = dateText(civilTime(one.instant, zone).date)
  const clock = formatClock(one.instant, zone)
  const name = [...(on ? ['on'] : []), ...(one.ground === 'behind' ? ['behind'] : [])].join(' ')
  return (
    <tr class={name}>
      <th scope="row">
        <button
          type="button"
          class="day-name"
          aria-label={say.choose(day, clock)}
          aria-pressed={on}
          onClick={() => goToInstant(one.instant)}
        >
          {day}
        </button>
      </th>
      <td>{clock}</td>
      <td>{degreesText(one.altitude)}</td>
      <td>{degreesText(one.separation, 2)}</td>
      {one.lit === null ? null : (
        <td>
          {share(one.lit)}, {one.waxing === true ? say.waxing : say.waning}
        </td>
      )}
      <td>{say.skyNames[one.sky]}</td>
      {hills ? (
        <td>
          <HillMark ground={one.ground} />
          {one.ground === null ? say.hillUnknown : say.hillNames[one.ground]}
          {one.unsure === null ? '' : `, ${say.hillUnsure(metres(one.unsure, settings.value.units))}`}
        </td>
      ) : null}
    </tr>
  )
}

/** A disc: full where all of it shows, half where some does, a ring where nothing does. */
function HillMark({ ground }: { readonly ground: BehindGround | null }) {
  return (
    <svg class="hill-mark" viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
      {ground === null ? null : <circle cx="6" cy="6" r="4.2" />}
      {ground === 'clear' ? <circle class="hill-mark-shows" cx="6" cy="6" r="4.2" /> : null}
      {ground === 'partly' ? <path class="hill-mark-shows" d="M1.8 6a4.2 4.2 0 0 1 8.4 0z" /> : null}
    </svg>
  )
}
