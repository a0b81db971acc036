/** The light windows of the day: when all wishes hold as solid bars, then one row of outlined bars for each wish, named. */
import type { Span } from '#core/light/crossing.ts'
import type { DayLight } from '#core/plan/day-light.ts'
import { daylight } from '#renderer/state/plan/daylight.ts'
import { shortSpanText, spanText } from '#renderer/text/light-text.ts'
import { goToInstant } from '#renderer/state/act/planned-instant.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { type NamePlace, placeBarNames, placeOneName } from './bar-names.ts'
import { wishNames } from './strip-signals.ts'
import { shareOf, snapped } from './time-axis.ts'
import { noCommonText, secondsText } from './window-words.ts'

export interface BarMeasure {
  /** Pixels of the axis. */
  readonly width: number
  /** Pixels of the type in the bars. */
  readonly type: number
}

/** Rows seen at a time, as in the style. */
const ROWS = 4

/** Of a letter's height; Source Sans runs a little narrower, so a name that is taken to fit does. */
const LETTER = 0.52

interface Placed {
  readonly span: Span
  readonly from: number
  readonly until: number
}

function placed(spans: readonly Span[], today: DayLight, width: number): Placed[] {
  return spans.map((span) => ({
    span,
    from: shareOf(today.day, span.from) * width,
    // A window of seconds must be seen too.
    until: Math.max(shareOf(today.day, span.until) * width, shareOf(today.day, span.from) * width + 2),
  }))
}

function nameStyle({ from, until }: Placed, place: NamePlace, width: number): Record<string, string> {
  if (place === 'in') return { left: `${from + 6}px`, 'max-width': `${Math.max(0, until - from - 8)}px` }
  return place === 'after' ? { left: `${until + 5}px` } : { right: `${width - from + 5}px` }
}

export function WindowBars({ width, type }: BarMeasure) {
  const today = daylight.value
  const names = wishNames.value
  if (today === null || width <= 0) return null
  const { wishes } = today.windows
  if (wishes.length === 0) return <p class="no-wish">{stripWords.noWish}</p>
  const wide = (text: string): number => text.length * type * LETTER
  return (
    <ul
      class="window-rows"
      aria-label={stripWords.wishes}
      style={{ '--chart': `${width}px` }}
      // More rows than are seen: it takes the focus so that keys can scroll it.
      tabIndex={wishes.length >= ROWS ? 0 : undefined}
    >
      <CommonRow today={today} width={width} wide={wide} />
      {wishes.map(({ kind, spans }) => (
        <WishRow
          key={kind}
          name={names.get(kind) ?? ''}
          bars={placed(spans, today, width)}
          today={today}
          width={width}
          wide={wide}
        />
      ))}
    </ul>
  )
}

interface RowProps {
  readonly today: DayLight
  readonly width: number
  readonly wide: (text: string) => number
}

function CommonRow({ today, width, wide }: RowProps) {
  const names = wishNames.value
  const { common } = today.windows
  if (common.length === 0) {
    const text = noCommonText(today, (kind) => names.get(kind) ?? '')
    return (
      <li class="window-row window-first window-none" title={text}>
        {text}
      </li>
    )
  }
  const bars = placed(common, today, width)
  const texts = common.map((span, index) => {
    const clock = shortSpanText(span, today.zone)
    return index === 0 ? stripWords.all(clock) : clock
  })
  const places = placeBarNames(
    bars.map((bar, index) => ({ ...bar, name: wide(texts[index] ?? '') })),
    width,
  )
  return (
    <li class="window-row window-first">
      {bars.map((bar, index) => (
        <CommonBar
          // They move with the light; each keeps its element.
          // oxlint-disable-next-line react/no-array-index-key
          key={index}
          bar={bar}
          text={texts[index] ?? ''}
          place={places[index] ?? null}
          today={today}
          width={width}
        />
      ))}
    </li>
  )
}

interface CommonBarProps {
  readonly bar: Placed
  readonly text: string
  readonly place: NamePlace | null
  readonly today: DayLight
  readonly width: number
}

function CommonBar({ bar, text, place, today, width }: CommonBarProps) {
  const { span, from, until } = bar
  const middle = snapped(today.day, (span.from + span.until) / 2)
  const seconds = stripWords.all(secondsText(span, today))
  const bare = place === null || place === 'in'
  return (
    <>
      <span class="window-bar window-all" style={{ left: `${from}px`, width: `${until - from}px` }} title={seconds} />
      <button
        type="button"
        class={bare ? 'window-name window-name-on' : 'window-name'}
        style={nameStyle(bar, place ?? 'in', width)}
        aria-label={stripWords.jump(text)}
        title={seconds}
        onClick={() => goToInstant(middle)}
      >
        {place === null ? '' : text}
      </button>
    </>
  )
}

interface WishRowProps extends RowProps {
  readonly name: string
  readonly bars: readonly Placed[]
}

function WishRow({ name, bars, today, width, wide }: WishRowProps) {
  if (bars.length === 0) return <li class="window-row window-never">{stripWords.notToday(name)}</li>
  const chosen = placeOneName(bars, wide(name), width)
  const bearer = chosen === null ? undefined : bars[chosen.index]
  return (
    <li class="window-row">
      {bars.map(({ span, from, until }, index) => (
        <span
          // oxlint-disable-next-line react/no-array-index-key
          key={index}
          class="window-bar"
          style={{ left: `${from}px`, width: `${until - from}px` }}
          title={stripWords.one(name, secondsText(span, today))}
        />
      ))}
      {chosen === null || bearer === undefined ? null : (
        <span class="window-name" style={nameStyle(bearer, chosen.place, width)} title={name}>
          {name}
        </span>
      )}
      <span class="unseen">{bars.map(({ span }) => spanText(span, today.zone)).join(', ')}</span>
    </li>
  )
}
