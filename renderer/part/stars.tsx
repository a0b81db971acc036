/** Stars, none to five: to read on the shelf, to choose on the spot's own page. */
import { useId } from 'preact/hooks'
import { words } from '#renderer/words/en.ts'
import { Icon } from './icon.tsx'

const COUNTS = [0, 1, 2, 3, 4, 5] as const

export function StarsShown({ count }: { count: number }) {
  return count === 0 ? null : (
    <span class="stars-shown">
      <span aria-hidden="true">{'★'.repeat(count)}</span>
      <span class="unseen">{words.board.shelf.stars(count)}</span>
    </span>
  )
}

export function StarsChosen({ count, onChoose }: { count: number; onChoose: (count: number) => void }) {
  const name = useId()
  return (
    <fieldset class="stars">
      <legend>{words.spot.stars}</legend>
      {COUNTS.map((option) => (
        <label key={option} title={option === 0 ? words.spot.noStars : words.board.shelf.stars(option)}>
          <input type="radio" name={name} checked={option === count} onChange={() => onChoose(option)} />
          {option === 0 ? <Icon name="close" /> : <Icon name="chosen" filled={option <= count} />}
          <span class="unseen">{option === 0 ? words.spot.noStars : words.board.shelf.stars(option)}</span>
        </label>
      ))}
    </fieldset>
  )
}
