/** A month as a grid of days to choose from, over everything else, beside the button that opened it. */
import type { RefObject } from 'preact'
import { useEffect, useId, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { addMonths, clampDate, monthWeeks } from '#core/time/calendar-month.ts'
import { MONTHS, civilDayOf, formatDay } from '#core/time/civil.ts'
import { zone } from '#renderer/state/plan/zone.ts'
import { dateWords as say } from '#renderer/words/en-date.ts'
import { besideButton } from './beside-button.ts'
import { dayByCalendarKey } from './calendar-keys.ts'
import { Icon } from './icon.tsx'

interface CalendarProps {
  readonly label: string
  /** The chosen day; null where none is. */
  readonly date: string | null
  /** Where it begins to look when none is chosen. */
  readonly near: string
  /** What it stands beside. */
  readonly beside: RefObject<HTMLElement | null>
  readonly onChoose: (date: string) => void
  readonly onClose: () => void
}

/** Shows an element over everything, beside another, for as long as it is on the page. */
function useOnTop(beside: RefObject<HTMLElement | null>) {
  const box = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    const element = box.current
    const button = beside.current
    if (element === null || button === null) return undefined
    const place = (): void => {
      const size = { width: element.offsetWidth, height: element.offsetHeight }
      const { left, top } = besideButton(button.getBoundingClientRect(), size, {
        width: innerWidth,
        height: innerHeight,
      })
      Object.assign(element.style, { left: `${left}px`, top: `${top}px` })
    }
    element.showPopover()
    place()
    addEventListener('resize', place)
    addEventListener('scroll', place, true)
    return () => {
      removeEventListener('resize', place)
      removeEventListener('scroll', place, true)
    }
  }, [beside])
  return box
}

export function MonthCalendar({ label, date, near, beside, onChoose, onClose }: CalendarProps) {
  const id = useId()
  const box = useOnTop(beside)
  const [at, setAt] = useState(clampDate(date ?? near))
  // The buttons of the month keep the focus; the keys of the grid take it along.
  const [follows, setFollows] = useState(true)
  const [today] = useState(() => civilDayOf(Date.now(), zone.peek()).date)
  useEffect(() => {
    if (follows) box.current?.querySelector<HTMLElement>('[tabindex="0"]')?.focus()
  }, [at, follows, box])
  const go = (next: string, byKey: boolean): void => {
    setAt(clampDate(next))
    setFollows(byKey)
  }
  const onGridKey = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const next = dayByCalendarKey(event.key, event.shiftKey, at)
    if (next !== null) go(next, true)
    else if (event.key === 'Enter' || event.key === ' ') onChoose(at)
    else return
    event.preventDefault()
    event.stopPropagation()
  }
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return
    event.stopPropagation()
    onClose()
  }
  const step = (icon: 'earlier' | 'later', months: number) => (
    <button
      type="button"
      class="icon-button"
      aria-label={say[icon]}
      title={say[icon]}
      onClick={() => go(addMonths(at, months), false)}
    >
      <Icon name={icon} />
    </button>
  )
  return (
    <div
      ref={box}
      class="calendar"
      popover="manual"
      role="dialog"
      tabIndex={-1}
      aria-label={say.calendar(label)}
      onKeyDown={onKey}
    >
      <div class="calendar-head">
        {step('earlier', -1)}
        <h3 id={id} aria-live="polite">
          {say.month(MONTHS[Number(at.slice(5, 7)) - 1] ?? '', at.slice(0, 4))}
        </h3>
        {step('later', 1)}
      </div>
      <table role="grid" aria-labelledby={id} onKeyDown={onGridKey}>
        <thead>
          <tr>
            {say.weekdays.map((weekday, index) => (
              <th key={weekday} scope="col" aria-label={say.weekdayNames[index]}>
                {weekday}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {/* Places keep their elements from month to month, or the focus would go with the day it is on. */}
          {monthWeeks(at).map((week, row) => (
            <tr key={row}>
              {week.map((one, column) => (
                <DayCell
                  key={column}
                  date={one}
                  at={at}
                  chosen={one === date}
                  today={one === today}
                  onChoose={onChoose}
                />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p class="hint">{say.gridHint}</p>
    </div>
  )
}

interface DayCellProps {
  readonly date: string
  /** The day that the keys are at: its month is the one shown. */
  readonly at: string
  readonly chosen: boolean
  readonly today: boolean
  readonly onChoose: (date: string) => void
}

function DayCell({ date, at, chosen, today, onChoose }: DayCellProps) {
  const beside = date.slice(0, 7) !== at.slice(0, 7)
  // What lies beyond the years that are computed stands there for the week's sake.
  const beyond = clampDate(date) !== date
  const name = formatDay(date)
  return (
    <td
      role="gridcell"
      class={beside ? 'calendar-beside' : undefined}
      tabIndex={date === at ? 0 : -1}
      aria-selected={chosen}
      aria-current={today ? 'date' : undefined}
      aria-disabled={beyond ? true : undefined}
      aria-label={today ? say.today(name) : name}
      onClick={() => {
        if (!beyond) onChoose(date)
      }}
    >
      {Number(date.slice(8))}
    </td>
  )
}
