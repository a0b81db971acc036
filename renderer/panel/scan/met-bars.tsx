/** For each demand how well an arrangement meets it: its name, a small bar, a word and the value. */
import type { Shoot } from '#core/record/shoot.ts'
import type { DemandMet } from '#core/scan/scan-found.ts'
import { DEGREE_AT_EDGE } from '#core/scan/score.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { scanFoundWords as say } from '#renderer/words/en-scan-found.ts'
import type { DemandNames } from './demand-names.ts'
import { metValue, metWord } from './met-text.ts'
import { ShareBar } from './share-bar.tsx'

interface MetBarsProps {
  readonly met: readonly DemandMet[]
  readonly shoot: Shoot
  readonly names: DemandNames
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
              <ShareBar share={demand.degree} edge={DEGREE_AT_EDGE} />
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
