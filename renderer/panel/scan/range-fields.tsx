/** Within what a scan looks: the heights of the lens, the days, the hours. */
import type { Hours } from '#core/light/light-wish.ts'
import type { ScanWishes } from '#core/record/scan-wishes.ts'
import { type Result, failed } from '#core/result.ts'
import { LAST_DATE, addDays } from '#core/time/civil.ts'
import { clockText, parseClock } from '#core/time/clock-text.ts'
import { dateText } from '#core/time/date-text.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { useDraft } from '#renderer/part/draft.ts'
import { DateField } from '#renderer/part/date-field.tsx'
import { Field } from '#renderer/part/field.tsx'
import { useTryAgain } from '#renderer/part/try-again.ts'
import { scanWishWords as say } from '#renderer/words/en-scan-wishes.ts'
import { BandFields } from './band-fields.tsx'

const HEIGHTS = { least: 0, most: 1_000 } as const
/** Days that a range begins with, the spot's own the first. */
const DAYS_AHEAD = 27
/** Minutes after midnight that the hours begin with. */
const DAYTIME: Hours = { from: 7 * 60, until: 20 * 60 }

interface RangeProps {
  readonly wishes: ScanWishes
  readonly onWish: (name: string, part: Partial<ScanWishes>) => void
  /** Calendar day of the spot, YYYY-MM-DD. */
  readonly spotDay: string
}

/** `looksAtLight` tells whether the scan looks at other times than the spot's at all. */
export function RangeFields({
  wishes,
  onWish,
  spotDay,
  looksAtLight,
}: RangeProps & { readonly looksAtLight: boolean }) {
  const { lensHeight, days, hours } = wishes
  return (
    <div class="scan-range">
      <div class="scan-range-row">
        <span>{say.lensHeight}</span>
        <BandFields
          name={say.lensHeight}
          band={lensHeight}
          limits={HEIGHTS}
          onTake={(part) => onWish(say.lensHeight, { lensHeight: { ...lensHeight, ...part } })}
        />
      </div>
      <Days wishes={wishes} onWish={onWish} spotDay={spotDay} />
      <SomeHours wishes={wishes} onWish={onWish} />
      {looksAtLight || (days === null && hours === null) ? null : <p class="hint">{say.timesIdle}</p>}
    </div>
  )
}

function Days({ wishes: { days }, onWish, spotDay }: RangeProps) {
  const save = (next: ScanWishes['days']): string | null => {
    if (next !== null && next.from > next.until) return say.days.order
    onWish(say.days.label, { days: next })
    return null
  }
  return (
    <div class="scan-range-row">
      <Choice
        label={say.days.label}
        value={days === null ? 'spot' : 'range'}
        options={[
          ['spot', say.days.spot(dateText(spotDay))],
          ['range', say.days.range],
        ]}
        onChoose={(chosen) => save(chosen === 'spot' ? null : { from: spotDay, until: lastDay(spotDay) })}
      />
      {days === null ? null : (
        <div class="field-row">
          <DateField
            label={say.days.from}
            date={days.from}
            near={days.from}
            by={days.until}
            onTake={(from) => save({ ...days, from })}
          />
          <DateField
            label={say.days.until}
            date={days.until}
            near={days.until}
            by={days.from}
            onTake={(until) => save({ ...days, until })}
          />
        </div>
      )}
    </div>
  )
}

function lastDay(from: string): string {
  const ahead = addDays(from, DAYS_AHEAD)
  return ahead > LAST_DATE ? from : ahead
}

function SomeHours({ wishes: { hours }, onWish }: Omit<RangeProps, 'spotDay'>) {
  const save = (next: Hours | null): void => onWish(say.hours.label, { hours: next })
  return (
    <div class="scan-range-row">
      <Choice
        label={say.hours.label}
        value={hours === null ? 'whole' : 'some'}
        options={[
          ['whole', say.hours.whole],
          ['some', say.hours.some],
        ]}
        onChoose={(chosen) => save(chosen === 'whole' ? null : DAYTIME)}
      />
      {hours === null ? null : (
        <div class="field-row">
          <ClockField label={say.hours.from} end="from" hours={hours} onTake={save} />
          <ClockField label={say.hours.until} end="until" hours={hours} onTake={save} />
        </div>
      )}
    </div>
  )
}

interface ClockFieldProps {
  readonly label: string
  readonly end: 'from' | 'until'
  readonly hours: Hours
  readonly onTake: (hours: Hours) => void
}

/** The hours with one end typed again; midnight as an end is the day's own, 24:00. */
function typedHours(text: string, end: 'from' | 'until', hours: Hours): Result<Hours> {
  if (text.trim() === '') return failed('empty', say.hours.needed)
  const read = parseClock(text)
  if (!read.ok) return read
  const minutes = end === 'from' ? read.value % 1440 : read.value === 0 ? 1440 : read.value
  const next = { ...hours, [end]: minutes }
  return next.from === next.until ? failed('same', say.hours.same) : { ok: true, value: next }
}

function ClockField({ label, end, hours, onTake }: ClockFieldProps) {
  const shown = clockText(hours[end])
  const draft = useDraft(shown, (text) => {
    const read = typedHours(text, end, hours)
    if (read.ok) onTake(read.value)
    return read
  })
  useTryAgain(draft, shown, { by: String(end === 'from' ? hours.until : hours.from) })
  return <Field label={label} draft={draft} />
}
