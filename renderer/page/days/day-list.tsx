/** The days to choose from: the chosen one, the best of the year, the next; their windows can be ticked for a calendar file. */
import { useEffect, useState } from 'preact/hooks'
import { bestDays, nextDays } from '#core/light/best-days.ts'
import type { Span } from '#core/light/crossing.ts'
import { windowsWithDoubts } from '#core/light/light-window.ts'
import type { LightScene } from '#core/light/light-scene.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { Zone } from '#core/time/civil.ts'
import { spanText } from '#renderer/text/light-text.ts'
import { download, fileNameOf } from '#renderer/host/download.ts'
import { spotName } from '#renderer/text/names.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { daysWords } from '#renderer/words/en-days.ts'
import { chooseDay } from './choose-day.ts'
import { lengthText, shortDay } from './day-text.ts'
import { lightCalendar } from './light-calendar.ts'
import { type DayFound, type YearFound, daysOf } from './year-found.ts'

const { list: say, calendar } = daysWords
const BEST = 8
const NEXT = 5

interface DayListProps {
  readonly plan: Plan
  readonly assessment: Assessment
  readonly scene: LightScene
  readonly zone: Zone
  readonly year: number
  readonly found: YearFound
  readonly chosen: string
}

type Ticked = ReadonlyMap<number, Span>

interface Group {
  readonly title: string
  readonly days: readonly DayFound[]
  /** Said where there is none. */
  readonly empty: string
}

function chosenGroup({ found, chosen }: DayListProps): Group {
  const own = found.byDate.get(chosen)
  return { title: say.chosen, days: own === undefined || own.total === 0 ? [] : [own], empty: say.noneChosen }
}

function groupsOf({ found, year, chosen }: DayListProps): readonly Group[] {
  const here = chosen.startsWith(`${year}-`)
  const next = here ? nextDays(found.days, chosen, NEXT + 1) : nextDays(daysOf(found, year), `${year}-01-01`, NEXT)
  return [
    { title: say.best(year), days: bestDays(daysOf(found, year), BEST), empty: daysWords.working },
    {
      title: here ? say.next(shortDay(chosen)) : say.first(year),
      days: next.filter(({ date }) => date !== chosen).slice(0, NEXT),
      empty: say.noNext(year),
    },
  ]
}

export function DayList(props: DayListProps) {
  const { plan, assessment, scene, zone, chosen, year } = props
  const [ticked, setTicked] = useState<Ticked>(new Map())
  // Other light, other windows: what was ticked is no more.
  useEffect(() => setTicked(new Map()), [scene, plan.shoot.light])
  const tick = (span: Span, on: boolean): void => {
    const next = new Map(ticked)
    if (on) next.set(span.from, span)
    else next.delete(span.from)
    setTicked(next)
  }
  const save = (): void => {
    const windows = [...ticked.values()].toSorted((one, other) => one.from - other.from)
    const file = lightCalendar({ plan, found: assessment, scene, zone, windows, stamp: Date.now() })
    if (!file.ok) {
      tell('fault', file.fault.message)
      return
    }
    const name = fileNameOf(calendar.fileName(spotName(plan.spot)), '.ics')
    download(name, file.value, 'text/calendar')
    tell('done', say.saved(name))
  }
  const rows = ({ title, days, empty }: Group) => (
    <>
      <h3>{title}</h3>
      {days.length === 0 ? <p class="hint">{empty}</p> : null}
      <ul>
        {days.map((day) => (
          <DayRow
            key={day.date}
            day={{ ...day, spans: windowsWithDoubts(scene, plan.shoot.light, day.spans) }}
            on={day.date === chosen}
            zone={zone}
            ticked={ticked}
            onTick={tick}
          />
        ))}
      </ul>
    </>
  )
  return (
    <div class="day-list">
      <div>
        {chosen.startsWith(`${year}-`) ? rows(chosenGroup(props)) : null}
        <p class="day-save">
          <button type="button" class="button" disabled={ticked.size === 0} onClick={save}>
            {ticked.size === 0 ? say.save : say.saveCount(ticked.size)}
          </button>
          {ticked.size === 0 ? (
            <small>{say.pickFirst}</small>
          ) : (
            <button type="button" class="button button-small" onClick={() => setTicked(new Map())}>
              {say.clear}
            </button>
          )}
        </p>
      </div>
      {groupsOf(props).map((group) => (
        <div key={group.title}>{rows(group)}</div>
      ))}
    </div>
  )
}

interface DayRowProps {
  readonly day: DayFound
  readonly on: boolean
  readonly zone: Zone
  readonly ticked: Ticked
  readonly onTick: (span: Span, on: boolean) => void
}

function DayRow({ day, on, zone, ticked, onTick }: DayRowProps) {
  const name = shortDay(day.date)
  return (
    <li class={on ? 'day-row on' : 'day-row'}>
      <button
        type="button"
        class="day-name"
        aria-label={say.choose(name)}
        aria-pressed={on}
        onClick={() => chooseDay(day.date, day.spans)}
      >
        {name}
      </button>
      <span class="day-length">{lengthText(day.total)}</span>
      <span class="day-windows">
        {day.spans.map((span) => {
          const text = spanText(span, zone)
          return (
            <label key={span.from}>
              <input
                type="checkbox"
                checked={ticked.has(span.from)}
                aria-label={say.pick(name, text)}
                onChange={(event) => onTick(span, event.currentTarget.checked)}
              />
              {text}
            </label>
          )
        })}
      </span>
    </li>
  )
}
