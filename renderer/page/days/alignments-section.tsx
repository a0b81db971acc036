/** When does the sun or moon stand on it? Days and instants for the spot as it is, and the line of standpoints for one instant. */
import { useMemo, useState } from 'preact/hooks'
import type { Alignment } from '#core/light/alignment.ts'
import { type AlignmentRequest, LATEST } from '#core/light/alignment-request.ts'
import { hourPlace } from '#core/light/hour-angle.ts'
import type { LightSkyline, PlanSkylines } from '#core/light/light-scene.ts'
import { trueAltitude } from '#core/light/refraction.ts'
import { alignmentSkyline } from '#core/plan/alignment-skyline.ts'
import { type PlanTarget, alignmentTargets } from '#core/plan/alignment-target.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { type CivilDay, type Zone, civilTime, formatClock, formatDay } from '#core/time/civil.ts'
import { bearing, degreesText, share } from '#renderer/text/figure.ts'
import { Warnings } from '#renderer/part/warning.tsx'
import { daysWords } from '#renderer/words/en-days.ts'
import { AlignmentForm } from './alignment-form.tsx'
import { AlignmentList } from './alignment-list.tsx'
import { type AlignmentWish, FIRST_WISH, asWished } from './alignment-wish.ts'
import type { AlignmentsJob, AlignmentsUpdate } from './days-job.ts'
import { showStandLine } from './show-stand-line.ts'
import { useJob } from './use-days-job.ts'

const { stands: say } = daysWords
const YEAR = 365.25 * 86_400_000
const NONE: readonly Alignment[] = []

interface AlignmentsSectionProps {
  readonly plan: Plan
  readonly assessment: Assessment
  readonly skylines: PlanSkylines
  readonly zone: Zone
  readonly day: CivilDay
}

export function AlignmentsSection(props: AlignmentsSectionProps) {
  const { plan } = props
  const targets = alignmentTargets(plan)
  return (
    <section class="days-part days-stands" aria-label={say.heading}>
      <h2>{say.heading}</h2>
      {plan.landmark === null ? <p class="days-empty">{say.none}</p> : null}
      {plan.landmark !== null && targets.length === 0 ? <Warnings sentences={[say.noTop]} /> : null}
      {targets.length === 0 ? null : <Alignments {...props} targets={targets} />}
    </section>
  )
}

function grown(found: readonly Alignment[], update: AlignmentsUpdate): readonly Alignment[] {
  return [...found, ...update.found]
}

/** The same job for as long as the same is asked, whatever else of the plan changes. */
function useAlignmentsJob(
  plan: Plan,
  target: PlanTarget,
  skyline: LightSkyline | null,
  wish: AlignmentWish,
  from: number,
): AlignmentsJob {
  const { at } = plan.spot.standpoint
  const { name, bearing: toward, altitude } = target
  const { body, tolerance, span } = wish
  return useMemo(() => {
    const request: AlignmentRequest = {
      at,
      body,
      target,
      skyline,
      tolerance,
      from,
      until: Math.min(LATEST, from + Number(span) * YEAR),
    }
    return { kind: 'alignments', request }
    // The target is made again each time; these are what it says.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [at, body, name, toward, altitude, skyline, tolerance, span, from])
}

function Alignments({
  plan,
  assessment,
  skylines,
  zone,
  day,
  targets,
}: AlignmentsSectionProps & { readonly targets: readonly PlanTarget[] }) {
  const [wish, setWish] = useState<AlignmentWish>(FIRST_WISH)
  // Held while the days found are looked through: they would go when one of them is chosen.
  const [from, setFrom] = useState(day.start)
  // The plan is made again with every instant; this is what the skyline depends on.
  const { landmark, terrain, spot, shoot } = plan
  const skyline = useMemo(
    () => alignmentSkyline(plan, skylines),
    // oxlint-disable-next-line react-hooks/exhaustive-deps
    [landmark, terrain, spot.standpoint, shoot.refraction, shoot.obstructions, skylines.lens],
  )
  const target = targets.find(({ name }) => name === wish.where) ?? targets[0]
  if (target === undefined) return null
  const since = formatDay(civilTime(from, zone).date)
  const instant = plan.spot.when
  const at = `${formatDay(day.date)}, ${formatClock(instant, zone)}`
  return (
    <div class="stands">
      <div>
        <Warnings sentences={[say.caution]} />
        <AlignmentForm
          wish={wish}
          names={targets.map(({ name }) => name)}
          hills={skyline !== null}
          onWish={(part) => {
            setWish({ ...wish, ...part })
            setFrom(day.start)
          }}
        />
        <p class="stands-line">
          <button
            type="button"
            class="button"
            onClick={() => showStandLine({ plan, assessment, body: wish.body, when: at })}
          >
            {say.line}
          </button>
          <small>{plan.terrain === null ? say.lineHint(at) : say.lineHintHills(at)}</small>
        </p>
      </div>
      <div>
        <Found plan={plan} target={target} skyline={skyline} wish={wish} from={from} since={since} zone={zone} />
        {from === day.start ? null : (
          <button type="button" class="button button-small stands-again" onClick={() => setFrom(day.start)}>
            {say.again}
          </button>
        )}
        <p class="hint">{skyline === null ? say.flat : say.hilly}</p>
      </div>
    </div>
  )
}

interface FoundProps {
  readonly plan: Plan
  readonly target: PlanTarget
  readonly skyline: LightSkyline | null
  readonly wish: AlignmentWish
  readonly from: number
  readonly since: string
  readonly zone: Zone
}

function Found({ plan, target, skyline, wish, from, since, zone }: FoundProps) {
  const job = useAlignmentsJob(plan, target, skyline, wish, from)
  const { found, share: done, fault } = useJob(job, NONE, grown)
  const kept = asWished(found, wish)
  const behind = kept.filter(({ ground }) => ground === 'behind').length
  if (fault !== null) return <Warnings sentences={[fault]} />
  return (
    <>
      <p class="stands-count" role="status">
        {done < 1
          ? say.working(share(done))
          : kept.length > 0
            ? say.found(kept.length, found.length, since, behind)
            : ''}
      </p>
      {job.request.until === LATEST ? <p class="hint">{say.lastYear}</p> : null}
      {done === 1 && kept.length === 0 ? <p>{whyNone(plan, target, wish, found.length, since)}</p> : null}
      {kept.length === 0 ? null : (
        <AlignmentList
          found={kept}
          moon={wish.body === 'moon'}
          hills={skyline !== null}
          zone={zone}
          when={plan.spot.when}
        />
      )}
    </>
  )
}

/** Degrees that sun and moon can stand off the celestial equator: the earth's tilt, and the moon's orbit on top (Meeus chapters 22, 52). */
const FARTHEST_OFF = { sun: 23.5, moon: 28.8 } as const

function whyNone(plan: Plan, target: PlanTarget, wish: AlignmentWish, others: number, since: string): string {
  if (others > 0) return say.noneSo(others)
  const { at } = plan.spot.standpoint
  const { declination } = hourPlace(at.lat, target.bearing, trueAltitude(target.altitude))
  const most = FARTHEST_OFF[wish.body]
  const place =
    target.altitude < 0
      ? say.below(bearing(target.bearing), degreesText(-target.altitude))
      : say.direction(bearing(target.bearing), degreesText(target.altitude))
  const never = Math.abs(declination) > most + 1.25 * wish.tolerance
  return [
    say.noneFound(wish.body, wish.span, since),
    place,
    ...(never ? [say.outOfReach(wish.body, degreesText(declination), degreesText(most))] : []),
    never ? say.tryElsewhere : say.try,
  ].join(' ')
}
