/** For each demand how well an arrangement meets it: its name, a small bar, a word and the value. */
import type { ScanWishKind } from '#core/plan/scan-wishes.ts'
import type { Shoot } from '#core/plan/shoot.ts'
import type { DemandMet } from '#core/scan/scan-found.ts'
import { settings } from '#renderer/state/settings.ts'
import { scanFoundWords as say } from '#renderer/words/en-scan-found.ts'
import { metValue, metWord } from './met-text.ts'

interface MetBarsProps {
  readonly met: readonly DemandMet[]
  readonly shoot: Shoot
  readonly names: Readonly<Record<ScanWishKind, string>>
}

export function MetBars({ met, shoot, names }: MetBarsProps) {
  const { units } = settings.value
  return (
    <table class="met-bars">
      <caption class="unseen">{say.howMet}</caption>
      <tbody>
        {met.map((demand) => (
          <tr key={demand.kind}>
            <th scope="row">
              {names[demand.kind]}
              {demand.must ? <small> {say.must}</small> : null}
            </th>
            <td>
              <Bar degree={demand.degree} />
            </td>
            <td>
              {metWord(demand.degree)} <small>{metValue(demand, shoot, units)}</small>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** Ink as long as the degree; the tick is the edge of what is demanded. */
function Bar({ degree }: { readonly degree: number }) {
  return (
    <svg class="met-bar" viewBox="0 0 50 10" width="50" height="10" aria-hidden="true">
      <path class="met-rail" d="M0,5H50" />
      <path class="met-ink" d={`M0,5H${(degree * 50).toFixed(1)}`} />
      <path class="met-edge" d="M40,1V9" />
    </svg>
  )
}
