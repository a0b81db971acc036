/** Nothing meets every must: which must rules out how much, and the smallest changes, each to be applied and scanned again. */
import type { WhyNone } from '#core/scan/scan-found.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { changeShoot } from '#renderer/state/library/history.ts'
import { shoot } from '#renderer/state/library/library.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { scanFoundWords } from '#renderer/words/en-scan-found.ts'
import { countText, placesText } from './cost-text.ts'
import type { DemandNames } from './demand-names.ts'
import { excludedName, partText, relaxationText } from './none-text.ts'
import { ShareBar } from './share-bar.tsx'
import { relaxed } from './relax.ts'
import { scanAgain } from './scan-now.ts'

const { none: say } = scanFoundWords

interface NonePartProps {
  readonly why: WhyNone
  readonly names: DemandNames
}

export function NonePart({ why, names }: NonePartProps) {
  const { looked } = why
  const excluded = why.excluded.filter(({ count }) => count > 0)
  return (
    <div class="scan-none">
      <h3>
        <Icon name="warning" /> {say.title}
      </h3>
      <p class="hint">
        {say.looked(
          countText(looked),
          excluded.some(({ alone }) => alone > 0),
        )}
      </p>
      <table class="none-table">
        <caption class="unseen">{say.title}</caption>
        <tbody>
          {excluded.map(({ by, count, alone }) => (
            <tr key={by}>
              <th scope="row">{excludedName(by, names)}</th>
              <td>
                <ShareBar share={count / Math.max(looked, 1)} />
              </td>
              <td>
                {say.excludes(partText(count, looked))}
                {alone > 0 ? <small> {say.alone(partText(alone, looked))}</small> : null}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Relaxations why={why} names={names} />
    </div>
  )
}

function Relaxations({ why, names }: NonePartProps) {
  const home = shoot.value
  if (why.relaxations.length === 0 || home === null) return <p>{say.noSingle}</p>
  return (
    <>
      <h3>{say.smallest}</h3>
      <ul class="relaxations">
        {why.relaxations.map((relaxation) => {
          const change = relaxationText(relaxation, names, settings.value.units)
          const wishes = relaxed(home.scanWishes, relaxation)
          return (
            <li key={`${relaxation.of} ${relaxation.end ?? ''}`}>
              <span>{say.with(change, placesText(relaxation.places))}</span>
              {wishes === null ? (
                <small>{say.lensOnly}</small>
              ) : (
                <button
                  type="button"
                  class="button button-small"
                  aria-label={say.applyNamed(change)}
                  onClick={() => apply(change, { ...home, scanWishes: wishes })}
                >
                  {say.apply}
                </button>
              )}
            </li>
          )
        })}
      </ul>
    </>
  )
}

function apply(change: string, after: Shoot): void {
  void changeShoot(say.edit(change), after)
  scanAgain()
}
