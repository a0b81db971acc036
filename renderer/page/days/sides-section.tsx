/** Which side of the landmark? Each side's hours of direct sun on the chosen day and by month, from no standpoint at all. */
import { settings } from '#renderer/state/library/settings.ts'
import { nearestUnknown } from '#core/light/over-skyline.ts'
import { useMemo } from 'preact/hooks'
import type { LightSkyline } from '#core/light/light-scene.ts'
import type { Span } from '#core/light/crossing.ts'
import { totalOf } from '#core/light/light-window.ts'
import type { Assessment } from '#core/plan/assess.ts'
import { facesOf } from '#core/plan/seen-sides.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { PlacedFaces } from '#core/scene/face.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { type CivilDay, type Zone, formatClock } from '#core/time/civil.ts'
import { bearing, rounded, metres } from '#renderer/text/figure.ts'
import { Warnings } from '#renderer/part/warning.tsx'
import { landmarkName } from '#renderer/text/names.ts'
import { daysWords } from '#renderer/words/en-days.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { HOUR } from '#core/time/duration.ts'
import { shortDay, spansText } from './day-text.ts'
import { type LandmarkSide, landmarkSides } from './side-faces.ts'
import { SidePlan } from './side-plan.tsx'
import { type YearOfSides, NO_MONTHS, withDay, withMonth } from './sides-found.ts'
import { useJob } from './use-days-job.ts'

const { sides: say, year: yearSay } = daysWords
/** Never read: a landmark with sides has points. */
const NOWHERE = { lat: 0, lon: 0 }
/** A side is never lit for more hours a day in the mean; the squares' scale. */
const FULL_HOURS = 16

interface SidesSectionProps {
  readonly plan: Plan
  readonly assessment: Assessment
  /** The landmark's skyline; null where no ground is known. */
  readonly skyline: LightSkyline | null
  readonly zone: Zone
  readonly day: CivilDay
}

export function SidesSection({ plan, assessment, skyline, zone, day }: SidesSectionProps) {
  const { landmark } = plan
  const base = assessment.levels.landmark
  const placed = landmark === null ? null : facesOf(landmark, base)
  const sides = useMemo(() => (placed === null ? [] : landmarkSides(placed)), [placed])
  const name = landmarkName(landmark)
  return (
    <section class="days-part days-sides" aria-label={say.heading}>
      <h2>{say.heading}</h2>
      {landmark === null ? <p class="days-empty">{say.none}</p> : null}
      {landmark !== null && (placed === null || sides.length === 0) ? (
        <Warnings sentences={[lightWords.noFace(name)]} />
      ) : null}
      {landmark !== null && placed !== null && sides.length > 0 ? (
        <>
          <p class="hint">{skyline === null ? say.leadLevel(name) : say.lead(name)}</p>
          <Unsure skyline={skyline} />
          <Sides
            landmark={landmark}
            placed={placed}
            sides={sides}
            skyline={skyline}
            instant={plan.spot.when}
            zone={zone}
            day={day}
          />
        </>
      ) : null}
    </section>
  )
}

function Unsure({ skyline }: { readonly skyline: LightSkyline | null }) {
  const nearest = skyline === null ? null : nearestUnknown(skyline)
  return nearest === null ? null : <p class="hint">{say.unsure(metres(nearest, settings.value.units))}</p>
}

interface SidesProps {
  readonly landmark: Landmark
  readonly placed: PlacedFaces
  readonly sides: readonly LandmarkSide[]
  readonly skyline: LightSkyline | null
  readonly instant: number
  readonly zone: Zone
  readonly day: CivilDay
}

function Sides({ landmark, placed, sides, skyline, instant, zone, day }: SidesProps) {
  const at = landmarkPoints(landmark)[0] ?? NOWHERE
  const year = Number(day.date.slice(0, 4))
  const faces = useMemo(
    () => sides.map(({ id, faces: [first] }) => ({ id, normal: first?.normal ?? { east: 0, north: 0, up: 1 } })),
    [sides],
  )
  const dayJob = useMemo(() => ({ kind: 'faces-day', at, faces, skyline, day }) as const, [at, faces, skyline, day])
  const yearJob = useMemo(
    () => ({ kind: 'faces-year', at, faces, skyline, zone, year }) as const,
    [at, faces, skyline, zone, year],
  )
  const today = useJob(dayJob, null, withDay)
  const months = useJob(yearJob, NO_MONTHS, withMonth)
  const faults = [today.fault, months.fault].filter((fault) => fault !== null)
  const clock = formatClock(instant, zone)
  return (
    <div class="sides">
      <SidePlan
        name={landmarkName(landmark)}
        at={at}
        placed={placed}
        sides={sides}
        skyline={skyline}
        instant={instant}
        clock={clock}
      />
      <div class="sides-desk" tabIndex={0} role="group" aria-label={say.heading}>
        <Warnings sentences={faults} />
        <table class="sides-table">
          <thead>
            <tr>
              <th scope="col" rowSpan={2}>
                {say.side}
              </th>
              <th scope="col" rowSpan={2} colSpan={2}>
                {say.today(shortDay(day.date))}
              </th>
              <th scope="colgroup" colSpan={12}>
                {say.byMonth(year)}
              </th>
            </tr>
            <tr>
              {yearSay.months.map((month, index) => (
                <th scope="col" key={month} aria-label={yearSay.monthNames[index]}>
                  {month.slice(0, 1)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {sides.map((side, index) => (
              <SideRow
                key={side.id}
                side={side}
                index={index}
                months={months.found}
                spans={today.found?.faces[index]?.spans ?? null}
                sunUp={today.found?.sunUp ?? []}
                day={day}
                instant={instant}
                zone={zone}
              />
            ))}
          </tbody>
        </table>
        <p class="hint">{say.grey}</p>
      </div>
    </div>
  )
}

interface SideRowProps {
  readonly side: LandmarkSide
  readonly index: number
  readonly months: YearOfSides
  /** Null until known. */
  readonly spans: readonly Span[] | null
  readonly sunUp: readonly Span[]
  readonly day: CivilDay
  readonly instant: number
  readonly zone: Zone
}

function SideRow({ side, index, months, spans, sunUp, day, instant, zone }: SideRowProps) {
  const lit = spans === null ? null : spans.length === 0 ? say.notLit : spansText(spans, zone)
  return (
    <tr>
      <th scope="row">
        <b>{side.number}</b> {side.name} <small>{bearing(side.bearing)}</small>
      </th>
      <td class="side-bar-cell">
        <DayBar spans={spans ?? []} sunUp={sunUp} day={day} instant={instant} />
      </td>
      <td class="side-hours">
        {spans === null ? null : (
          <>
            <b>{say.litHours(rounded(totalOf(spans) / HOUR, 1, true))}</b>
            <small>{lit}</small>
          </>
        )}
      </td>
      {months.map((hours, month) => {
        const mean = hours?.[index] ?? null
        return (
          <td key={month} class="side-month">
            {mean === null ? null : <MonthCell hours={mean} />}
          </td>
        )
      })}
    </tr>
  )
}

function MonthCell({ hours }: { readonly hours: number }) {
  const side = hours < 0.05 ? 0 : Math.max(2.5, Math.sqrt(Math.min(1, hours / FULL_HOURS)) * 15)
  return (
    <>
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        {side === 0 ? (
          <circle class="year-none" cx="8" cy="8" r="1.1" />
        ) : (
          <rect class="year-light" x={8 - side / 2} y={8 - side / 2} width={side} height={side} />
        )}
      </svg>
      <span>{rounded(hours, hours < 9.95 ? 1 : 0, true)}</span>
    </>
  )
}

const BAR_WIDTH = 200
const BAR_HEIGHT = 14

function DayBar({
  spans,
  sunUp,
  day,
  instant,
}: Pick<SideRowProps, 'sunUp' | 'day' | 'instant'> & { readonly spans: readonly Span[] }) {
  const across = (when: number): number => ((when - day.start) / (day.end - day.start)) * BAR_WIDTH
  const block = (span: Span, name: string, inset: number) => (
    <rect
      key={`${name} ${span.from}`}
      class={name}
      x={across(span.from)}
      width={Math.max(0.5, across(span.until) - across(span.from))}
      y={inset}
      height={BAR_HEIGHT - 2 * inset}
    />
  )
  return (
    <svg class="side-bar" viewBox={`0 0 ${BAR_WIDTH} ${BAR_HEIGHT}`} aria-hidden="true" preserveAspectRatio="none">
      <rect class="side-bar-day" width={BAR_WIDTH} height={BAR_HEIGHT} />
      {sunUp.map((span) => block(span, 'side-bar-up', 0))}
      {spans.map((span) => block(span, 'side-bar-lit', 2))}
      <path class="side-bar-now" d={`M${across(instant)} 0V${BAR_HEIGHT}`} />
    </svg>
  )
}
