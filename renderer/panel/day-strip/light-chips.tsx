/** The light conditions on the strip's left: each a chip that is changed or taken off, and a list of those to add. */
import { NO_WISHES, type LightWishes, type WishKind } from '#core/light/light-wish.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { Menu, type MenuEntry } from '#renderer/part/menu.tsx'
import { toWishes } from '#renderer/part/to-wishes.ts'
import { changeShoot } from '#renderer/state/library/history.ts'
import { shoot } from '#renderer/state/library/library.ts'
import { chipWords as say } from '#renderer/words/en-light-chips.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { lightOffers } from './light-offers.ts'
import { stripLandmark, wishNames } from './strip-signals.ts'

function wish(part: Partial<LightWishes>): void {
  const now = shoot.peek()
  if (now !== null) void changeShoot(lightWords.edit.wishes, { ...now, light: { ...now.light, ...part } })
}

function entries(): readonly MenuEntry[] {
  const offers = shoot.value === null ? [] : lightOffers(shoot.value, stripLandmark.value)
  return [
    ...offers.map(({ text, light }): MenuEntry => ({ text, onPress: () => wish(light) })),
    { text: say.more, apart: true, onPress: toWishes },
  ]
}

function Chip({ kind, name }: { readonly kind: WishKind; readonly name: string }) {
  return (
    <span class="condition">
      <button type="button" class="condition-name" aria-label={say.change(name)} title={name} onClick={toWishes}>
        {name}
      </button>
      <button
        type="button"
        class="condition-off"
        aria-label={say.off(name)}
        title={say.off(name)}
        onClick={() => wish({ [kind]: NO_WISHES[kind] })}
      >
        <Icon name="close" />
      </button>
    </span>
  )
}

export function LightChips() {
  return (
    <div class="conditions" role="group" aria-label={say.conditions}>
      {[...wishNames.value].map(([kind, name]) => (
        <Chip key={kind} kind={kind} name={name} />
      ))}
      <Menu label={say.addLabel} entries={entries} upward>
        <Icon name="add" /> {say.add}
      </Menu>
    </div>
  )
}
