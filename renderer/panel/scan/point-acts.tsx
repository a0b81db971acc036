/** What can be done with the point of drawn ground that was taken last: the line cut off on either side of it, or the point taken away. */
import { type Drawn, type DrawnSort, cutAt, withoutPoint } from '#core/record/drawn-ground.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { choosePoint, chosenPoint } from '#renderer/state/session/drawn-ground.ts'
import { stoppingWords as say } from '#renderer/words/en-stopping.ts'
import { changePoints } from '#renderer/state/act/drawn-acts.ts'

interface ActsProps {
  readonly shoot: Shoot
  readonly sort: DrawnSort
  readonly drawn: Drawn
}

export function PointActs({ shoot, sort, drawn }: ActsProps) {
  const at = chosenPoint.value
  if (at === null) return null
  const { form, points } = drawn
  const take = (label: string, left: readonly LatLon[], next: number): void => {
    if (changePoints(label, shoot, sort, drawn, left)) choosePoint(next)
  }
  const before = form === 'line' ? cutAt(points, at, 'from') : null
  const beyond = form === 'line' ? cutAt(points, at, 'until') : null
  const without = withoutPoint(drawn, at)
  return (
    <div class="point-acts" role="group" aria-label={say.pointOf(at + 1, points.length)}>
      <span>{say.pointOf(at + 1, points.length)}</span>
      <span class="drawn-acts">
        {before === null ? null : (
          <button type="button" class="button button-small" onClick={() => take(say.edit.cut, before, 0)}>
            {say.cutBefore}
          </button>
        )}
        {beyond === null ? null : (
          <button type="button" class="button button-small" onClick={() => take(say.edit.cut, beyond, at)}>
            {say.cutBeyond}
          </button>
        )}
        {without === null ? null : (
          <button type="button" class="button button-small" onClick={() => take(say.edit.removePoint, without, at)}>
            {say.takeAway}
          </button>
        )}
      </span>
    </div>
  )
}
