/** Which days? The wished light over a year, the chosen day ringed, and beside it the days to choose from. */
import { toWishes } from '#renderer/part/to-wishes.ts'
import { type ReadonlySignal, signal } from '@preact/signals'
import { useEffect, useMemo, useState } from 'preact/hooks'
import type { LightScene } from '#core/light/light-scene.ts'
import { contradictions, wishesMade } from '#core/light/light-wish.ts'
import { NO_DAYS } from '#core/light/wish-days.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { Zone } from '#core/time/civil.ts'
import { FigureField } from '#renderer/part/figure-field.tsx'
import { Icon } from '#renderer/part/icon.tsx'
import { Warnings } from '#renderer/part/warning.tsx'
import { wishName } from '#renderer/text/wish-names.ts'
import { daysWords } from '#renderer/words/en-days.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { chooseDay } from './choose-day.ts'
import { DayList } from './day-list.tsx'
import { dayText, shortDay } from './day-text.ts'
import { type Findings, useJob } from './use-days-job.ts'
import { type YearFound, NOTHING_YET, daysOf, whyNoDays, withDays, withReason } from './year-found.ts'
import { YearLegend, YearStrip } from './year-strip.tsx'

const { year: say } = daysWords
const YEARS = { least: 1900, most: 2100 } as const

interface YearSectionProps {
  readonly plan: Plan
  readonly assessment: Assessment
  readonly scene: LightScene
  readonly zone: Zone
  /** YYYY-MM-DD of the board's instant. */
  readonly chosen: string
}

export function YearSection(props: YearSectionProps) {
  const { plan, chosen } = props
  const [year, setYear] = useState(Number(chosen.slice(0, 4)))
  useEffect(() => setYear(Number(chosen.slice(0, 4))), [chosen])
  const { light } = plan.shoot
  const made = wishesMade(light)
  const names = made.map((kind) => wishName(kind, plan))
  const impossible = contradictions(light).map(([one, other]) =>
    lightWords.contradiction(wishName(one, plan), wishName(other, plan)),
  )
  return (
    <section class="days-part days-year" aria-label={say.heading(year)}>
      <div class="days-head">
        <h2>{say.heading(year)}</h2>
        {made.length === 0 || impossible.length > 0 ? null : <YearStepper year={year} onYear={setYear} />}
      </div>
      {made.length === 0 ? <Unwished text={say.noWishes} /> : <p class="days-wishes">{say.wished(names)}</p>}
      {impossible.length === 0 ? null : (
        <>
          <Warnings sentences={impossible} />
          <Unwished text={null} />
        </>
      )}
      {made.length > 0 && impossible.length === 0 ? <WholeYear {...props} year={year} /> : null}
    </section>
  )
}

function Unwished({ text }: { readonly text: string | null }) {
  return (
    <div class="days-empty">
      {text === null ? null : <p>{text}</p>}
      <button type="button" class="button" onClick={toWishes}>
        {say.toWishes}
      </button>
    </div>
  )
}

function YearStepper({ year, onYear }: { readonly year: number; readonly onYear: (year: number) => void }) {
  return (
    <div class="year-stepper" role="group" aria-label={say.year}>
      <button
        type="button"
        class="icon-button"
        aria-label={say.earlier}
        title={say.earlier}
        disabled={year <= YEARS.least}
        onClick={() => onYear(year - 1)}
      >
        <Icon name="earlier" />
      </button>
      <FigureField
        label={say.year}
        hideLabel
        decimals={0}
        value={year}
        limits={YEARS}
        onTake={(value) => onYear(Math.round(value))}
      />
      <button
        type="button"
        class="icon-button"
        aria-label={say.later}
        title={say.later}
        disabled={year >= YEARS.most}
        onClick={() => onYear(year + 1)}
      >
        <Icon name="later" />
      </button>
    </div>
  )
}

/** The day under the pointer or in focus: only what tells of it is drawn again. */
const pointed = signal<string | null>(null)

function point(date: string | null): void {
  pointed.value = date
}

function WholeYear(props: YearSectionProps & { readonly year: number }) {
  const { scene, zone, year, plan, chosen } = props
  const wishes = plan.shoot.light
  const job = useMemo(() => ({ kind: 'year', scene, wishes, zone, year }) as const, [scene, wishes, zone, year])
  const findings = useJob(job, NOTHING_YET, withDays)
  const { found, share, fault } = findings
  useEffect(() => () => point(null), [])
  const count = daysOf(found, year).filter(({ total }) => total > 0).length
  const none = share === 1 && count === 0
  return (
    <>
      {fault === null ? null : <Warnings sentences={[fault]} />}
      <div class="year-side">
        <YearStrip
          year={year}
          found={found}
          whole={share === 1}
          zone={zone}
          chosen={chosen}
          onPoint={point}
          onChoose={(date) => chooseDay(date, found.byDate.get(date)?.spans ?? [])}
        />
        <div class="year-foot">
          <PointedDay pointed={pointed} findings={findings} chosen={chosen} year={year} zone={zone} />
          {none ? null : <YearLegend found={found} />}
        </div>
        <p class="hint" role="status">
          {share < 1 ? daysWords.working : none ? say.noDay(year) : say.summary(count, year)}
        </p>
        <p class="hint">{say.keys}</p>
        {none ? <Reason {...props} /> : null}
      </div>
      {none ? null : <DayList {...props} found={found} />}
    </>
  )
}

interface PointedDayProps {
  readonly pointed: ReadonlySignal<string | null>
  readonly findings: Findings<YearFound>
  readonly chosen: string
  readonly year: number
  readonly zone: Zone
}

/** The day under the pointer or in focus, else the chosen one. */
function PointedDay({ pointed, findings, chosen, year, zone }: PointedDayProps) {
  const date = pointed.value ?? (chosen.startsWith(`${year}-`) ? chosen : null)
  if (date === null) return <p class="year-pointed"> </p>
  const day = findings.found.byDate.get(date)
  const name = shortDay(date)
  const text =
    day === undefined && findings.share === 1 ? say.dayMissing(name) : dayText(name, day?.spans ?? null, zone)
  return <p class="year-pointed">{text}</p>
}

/** Why no day will do: asked only then, since it takes longer than the year. */
function Reason({ plan, scene, zone, year }: YearSectionProps & { readonly year: number }) {
  const wishes = plan.shoot.light
  const job = useMemo(() => ({ kind: 'reason', scene, wishes, zone, year }) as const, [scene, wishes, zone, year])
  const { found, share, fault } = useJob(job, NO_DAYS, withReason)
  if (fault !== null) return <Warnings sentences={[fault]} />
  if (share < 1) return <p class="hint">{daysWords.working}</p>
  const name = (kind: Parameters<typeof wishName>[0]): string => wishName(kind, plan)
  const unseen = { subject: scene.subject, landmark: scene.landmark }
  const why = whyNoDays(found).map((reason) =>
    reason.why === 'never'
      ? (reason.kind === 'subject' || reason.kind === 'landmark') && unseen[reason.kind].length === 0
        ? say.neverSeen(name(reason.kind))
        : say.never(name(reason.kind))
      : reason.why === 'apart'
        ? say.apart(name(reason.kinds[0]), name(reason.kinds[1]))
        : say.allTogether,
  )
  return (
    <>
      <Warnings sentences={why} />
      <ul class="wish-days">
        {found.alone.map(({ kind, days }) => (
          <li key={kind}>{say.alone(name(kind), days, found.looked)}</li>
        ))}
      </ul>
      <p>{say.what}</p>
      <Unwished text={null} />
    </>
  )
}
