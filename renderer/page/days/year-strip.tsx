/** The year's heat strip: weeks as columns, a square for every day, larger the longer the wished light holds. */
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { Zone } from '#core/time/civil.ts'
import { daysWords } from '#renderer/words/en-days.ts'
import { MINUTE } from '#core/time/duration.ts'
import { dayText, lengthText, shortDay } from './day-text.ts'
import { type GridDay, type WeekGrid, dayByKey, fullSquare, squareSide, weekGrid } from './week-grid.ts'
import type { YearFound } from './year-found.ts'

const { year: say } = daysWords
/** Pixels of the drawing; the picture is as wide as its place. */
const CELL = 16
const LEFT = 22
const TOP = 13
const LARGEST = CELL - 3

export interface YearStripProps {
  readonly year: number
  readonly found: YearFound
  /** All of it is known. */
  readonly whole: boolean
  readonly zone: Zone
  /** YYYY-MM-DD of the board's instant. */
  readonly chosen: string
  readonly onPoint: (date: string | null) => void
  readonly onChoose: (date: string) => void
}

export function YearStrip(props: YearStripProps) {
  const { year, found, whole, zone, chosen, onPoint, onChoose } = props
  const grid = useMemo(() => weekGrid(year), [year])
  const names = useMemo(() => grid.days.map(({ date }) => shortDay(date)), [grid])
  const chosenIndex = grid.days.findIndex(({ date }) => date === chosen)
  const [active, setActive] = useState(Math.max(0, chosenIndex))
  const ref = useRef<SVGSVGElement>(null)
  useLayoutEffect(() => setActive(Math.max(0, chosenIndex)), [year, chosenIndex])
  const most = Math.max(0, ...grid.days.map(({ date }) => found.byDate.get(date)?.total ?? 0)) / MINUTE
  const full = fullSquare(most)
  const onKey = (event: KeyboardEvent): void => {
    const date = grid.days[active]?.date
    if ((event.key === 'Enter' || event.key === ' ') && date !== undefined) {
      event.preventDefault()
      onChoose(date)
      return
    }
    const next = event.ctrlKey || event.metaKey || event.altKey ? null : dayByKey(event.key, active, grid.days.length)
    if (next === null) return
    event.preventDefault()
    setActive(next)
    ref.current?.querySelector<SVGGElement>(`[data-index="${next}"]`)?.focus()
  }
  const fullLabel = (index: number): string => {
    const date = grid.days[index]?.date ?? ''
    const day = found.byDate.get(date)
    if (day === undefined && whole) return say.dayMissing(names[index] ?? '')
    return dayText(names[index] ?? '', day?.spans ?? null, zone)
  }
  return (
    <svg
      ref={ref}
      class="year-strip"
      viewBox={`0 0 ${LEFT + grid.weeks * CELL + 2} ${TOP + 7 * CELL + 2}`}
      role="grid"
      aria-label={say.gridLabel(year)}
      onKeyDown={onKey}
      onPointerLeave={() => onPoint(null)}
    >
      <g aria-hidden="true">
        {grid.months.map((week, month) => (
          <text key={month} class="year-month" x={LEFT + week * CELL} y={TOP - 5}>
            {say.months[month]}
          </text>
        ))}
      </g>
      {say.weekdays.map((weekday, row) => (
        <g role="row" key={weekday}>
          <text
            role="rowheader"
            class="year-weekday"
            x={0}
            y={TOP + row * CELL + 11}
            aria-label={say.weekdayNames[row]}
          >
            {weekday}
          </text>
          {grid.days.map((day, index) =>
            day.row === row ? (
              <DayCell
                key={day.date}
                index={index}
                x={LEFT + day.week * CELL}
                y={TOP + row * CELL}
                side={squareSide((found.byDate.get(day.date)?.total ?? 0) / MINUTE, full) * LARGEST}
                known={found.byDate.has(day.date)}
                chosen={day.date === chosen}
                active={index === active}
                label={index === active ? fullLabel(index) : shortLabel(names[index] ?? '', found, day.date)}
                onPoint={() => onPoint(day.date)}
                onChoose={() => {
                  setActive(index)
                  onChoose(day.date)
                }}
              />
            ) : null,
          )}
        </g>
      ))}
      <path class="year-months" d={monthLines(grid)} aria-hidden="true" />
      <ChosenRing day={grid.days[chosenIndex]} />
    </svg>
  )
}

/** Over all days, so that no neighbour covers it. */
function ChosenRing({ day }: { readonly day: GridDay | undefined }) {
  if (day === undefined) return null
  const box = { x: LEFT + day.week * CELL, y: TOP + day.row * CELL, width: CELL, height: CELL, rx: 2 }
  return (
    <g aria-hidden="true">
      <rect class="year-chosen" {...box} />
      <rect class="year-ring" {...box} />
    </g>
  )
}

/** Clock times are told of the day in focus alone: for all days they would take longer than the year itself. */
function shortLabel(name: string, found: YearFound, date: string): string {
  const day = found.byDate.get(date)
  if (day === undefined) return name
  return `${name}: ${day.total < MINUTE ? say.none : lengthText(day.total)}`
}

interface DayCellProps {
  readonly index: number
  readonly x: number
  readonly y: number
  readonly side: number
  readonly known: boolean
  readonly chosen: boolean
  readonly active: boolean
  readonly label: string
  readonly onPoint: () => void
  readonly onChoose: () => void
}

function DayCell({ index, x, y, side, known, chosen, active, label, onPoint, onChoose }: DayCellProps) {
  const middle = CELL / 2
  return (
    <g
      role="gridcell"
      class="year-day"
      data-index={index}
      tabIndex={active ? 0 : -1}
      aria-label={label}
      aria-selected={chosen}
      transform={`translate(${x},${y})`}
      onPointerEnter={onPoint}
      onFocus={onPoint}
      onClick={onChoose}
    >
      <rect class="year-cell" width={CELL} height={CELL} />
      {known && side === 0 ? <circle class="year-none" cx={middle} cy={middle} r="1.1" /> : null}
      {side > 0 ? (
        <rect class="year-light" x={middle - side / 2} y={middle - side / 2} width={side} height={side} />
      ) : null}
    </g>
  )
}

/** Wider gaps between the months, around the days of each. */
function monthLines(grid: WeekGrid): string {
  return grid.days
    .filter(({ date }) => date.endsWith('-01') && !date.endsWith('-01-01'))
    .map(({ week, row }) => {
      const [x, y] = [LEFT + week * CELL, TOP + row * CELL]
      const foot = TOP + 7 * CELL
      return row === 0 ? `M${x} ${TOP}V${foot}` : `M${x + CELL} ${TOP}V${y}H${x}V${foot}`
    })
    .join('')
}

/** What the squares stand for, in minutes. */
export function YearLegend({ found }: { readonly found: YearFound }) {
  const most = Math.max(0, ...found.days.map(({ total }) => total)) / MINUTE
  const full = fullSquare(most)
  const steps = [full / 8, full / 4, full / 2, full].map(Math.round)
  return (
    <p class="year-legend">
      <span>{say.legend}</span>
      <LegendSquare text={say.none} side={0} />
      {steps.map((minutes) => (
        <LegendSquare key={minutes} text={lengthText(minutes * MINUTE)} side={squareSide(minutes, full) * LARGEST} />
      ))}
      <span class="legend-item legend-ring">
        <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
          <rect class="year-ring" x="1.2" y="1.2" width="13.6" height="13.6" rx="2" />
        </svg>
        {say.chosen}
      </span>
    </p>
  )
}

function LegendSquare({ text, side }: { readonly text: string; readonly side: number }) {
  return (
    <span class="legend-item">
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        {side === 0 ? (
          <circle class="year-none" cx="8" cy="8" r="1.1" />
        ) : (
          <rect class="year-light" x={8 - side / 2} y={8 - side / 2} width={side} height={side} />
        )}
      </svg>
      {text}
    </span>
  )
}
