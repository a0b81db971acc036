/** All lenses of the bag with what they give from here. */
import type { LensOffer } from '#core/frame/lens-choice.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { millimetres, share } from '#renderer/text/figure.ts'
import { Unknown } from '#renderer/part/reading.tsx'
import { lensTaken, subjectName } from '#renderer/text/names.ts'
import { words } from '#renderer/words/en.ts'

function verdict(offer: LensOffer): string {
  const { lens } = words.answers
  if (offer.tooNear) return lens.tooNear
  if (offer.reaches) return lens.reaches
  return offer.end === 'long' ? lens.tooShort : lens.tooLong
}

export function LensTable({ plan, found }: { plan: Plan; found: Assessment }) {
  const { answers } = words
  const { axis } = plan.spot.shot.subjectFill
  const { lenses } = plan.shoot.bag
  if (found.offers.length === 0) return <p class="hint">{words.shoot.emptyBag}</p>
  return (
    <table class="figures">
      <thead>
        <tr>
          <th scope="col">{answers.lens.name}</th>
          <th scope="col">{answers.lens.setting}</th>
          <th scope="col">{answers.subjectFills(subjectName(plan.shoot.subject))}</th>
        </tr>
      </thead>
      <tbody>
        {found.offers.map((offer) => (
          <tr key={offer.lensId} class={offer.lensId === found.lens?.lensId ? 'on' : ''}>
            <th scope="row">{lensTaken(lenses, offer)}</th>
            <td>
              {millimetres(offer.focalLength)}
              <br />
              <small>{verdict(offer)}</small>
            </td>
            <td>
              {offer.gives === null ? <Unknown /> : `${share(offer.gives)} ${answers.wish.ofSide(answers.axis[axis])}`}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
