/** The alignments found, in order of time; a press goes to that instant. */
import type { Alignment } from '#core/light/alignment.ts'
import { type Zone, civilTime, formatClock, formatDay } from '#core/time/civil.ts'
import { degrees, share } from '#renderer/part/figure.ts'
import { goToInstant } from '#renderer/state/when.ts'
import { daysWords } from '#renderer/words/en-days.ts'

const { stands: say } = daysWords
const MOST_LISTED = 200

interface AlignmentListProps {
  readonly found: readonly Alignment[]
  readonly moon: boolean
  readonly zone: Zone
  /** The board's instant. */
  readonly when: number
}

export function AlignmentList({ found, moon, zone, when }: AlignmentListProps) {
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
            </tr>
          </thead>
          <tbody>
            {found.slice(0, MOST_LISTED).map((one) => (
              <Row key={one.instant} one={one} zone={zone} on={one.instant === when} />
            ))}
          </tbody>
        </table>
      </div>
      {found.length > MOST_LISTED ? <p class="hint">{say.more(MOST_LISTED)}</p> : null}
    </>
  )
}

function Row({ one, zone, on }: { readonly one: Alignment; readonly zone: Zone; readonly on: boolean }) {
  const day = formatDay(civilTime(one.instant, zone).date)
  const clock = formatClock(one.instant, zone)
  return (
    <tr class={on ? 'on' : ''}>
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
      <td>{degrees(one.altitude)}</td>
      <td>{degrees(one.separation, 2)}</td>
      {one.lit === null ? null : (
        <td>
          {share(one.lit)}, {one.waxing === true ? say.waxing : say.waning}
        </td>
      )}
      <td>{say.skyNames[one.sky]}</td>
    </tr>
  )
}
