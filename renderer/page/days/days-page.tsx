/** Which days? The page of longer spans: the year as wished, the landmark's sides, and when sun or moon stands on it. */
import { useEffect } from 'preact/hooks'
import { Guarded } from '#renderer/part/guarded.tsx'
import { PageFrame } from '#renderer/part/page-frame.tsx'
import { day, scene } from '#renderer/state/plan/daylight.ts'
import { assessment, plan } from '#renderer/state/plan/board-plan.ts'
import { zone } from '#renderer/state/plan/zone.ts'
import { daysWords } from '#renderer/words/en-days.ts'
import { notDrawnWords } from '#renderer/words/en-not-drawn.ts'
import { AlignmentsSection } from './alignments-section.tsx'
import { SidesSection } from './sides-section.tsx'
import { closeWorker } from './use-days-job.ts'
import { YearSection } from './year-section.tsx'
import './days.css'
import './days-sides.css'

export function DaysPage() {
  useEffect(() => closeWorker, [])
  const now = plan.value
  const found = assessment.value
  const light = scene.value
  const today = day.value
  return (
    <PageFrame title={daysWords.title}>
      {now === null || found === null || light === null || today === null ? (
        <p class="days-empty">{daysWords.noSpot}</p>
      ) : (
        <div class="days">
          <Guarded part={notDrawnWords.parts.section}>
            <YearSection plan={now} assessment={found} scene={light} zone={zone.value} chosen={today.date} />
          </Guarded>
          <Guarded part={notDrawnWords.parts.section}>
            <SidesSection
              plan={now}
              assessment={found}
              skyline={light.skylines.landmark}
              zone={zone.value}
              day={today}
            />
          </Guarded>
          <Guarded part={notDrawnWords.parts.section}>
            <AlignmentsSection plan={now} assessment={found} skylines={light.skylines} zone={zone.value} day={today} />
          </Guarded>
        </div>
      )}
    </PageFrame>
  )
}
