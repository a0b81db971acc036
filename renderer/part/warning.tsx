/** A sentence about what stands in the way, told by an icon and words. */
import { Icon } from './icon.tsx'

export function Warnings({ sentences }: { sentences: readonly string[] }) {
  return sentences.length === 0 ? null : (
    <ul class="warnings">
      {sentences.map((sentence) => (
        <li key={sentence}>
          <Icon name="warning" />
          <span>{sentence}</span>
        </li>
      ))}
    </ul>
  )
}
