/** The area shown over the map: what the board asks of the ground, and how far the answer is. */
import { type ReadonlySignal, computed, signal } from '@preact/signals'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { Hearer } from '#renderer/job/ask-jobs.ts'
import { assessment, plan } from '#renderer/state/plan/board-plan.ts'
import { groundOverlay, seenAt, wantedShare } from '#renderer/state/session/ground-overlay.ts'
import { moving } from '#renderer/state/library/library.ts'
import { type AreaRequest, type NoArea, areaRequest } from './area-request.ts'
import { askerOn } from './ground-asker.ts'
import type { AreaJob, AreaUpdate } from './ground-job.ts'
import { calmly } from '#renderer/state/plan/calmly.ts'
import { type AreaState, NO_AREA, keepArea } from './keep-area.ts'

const shownAreaSignal = signal<AreaState>(NO_AREA)
export const shownArea: ReadonlySignal<AreaState> = shownAreaSignal

/** What is asked now; null while nothing shall be shown. */
export const wantedArea = computed<AreaRequest | NoArea | null>(() => {
  const shown = groundOverlay.value
  const now = plan.value
  const reading = assessment.value
  if (shown === 'none' || now === null || reading === null) return null
  return areaRequest(shown, now, reading.levels, wantedShare.value, seenAt.value)
})

/** Keeps the area in step with the board. Returns a function that ends it. */
export function followArea(): () => void {
  let grid: ElevationGrid | null = null
  const keeper = keepArea({
    ask(job: AreaJob, hearer: Hearer<AreaUpdate>) {
      if (grid === null) throw new Error('an area is asked of no ground')
      return askerOn(grid)(job, hearer)
    },
    show: (state) => {
      shownAreaSignal.value = state
    },
  })
  const stop = calmly(() => {
    const asked = wantedArea.value
    const job = asked === null || typeof asked === 'string' ? null : asked
    if (job !== null) grid = job.grid
    keeper.want(job === null ? null : job.job, moving.value)
  })
  return () => {
    stop()
    keeper.want(null, false)
  }
}
