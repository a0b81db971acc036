/** The light conditions on the strip's left: each a chip that is changed or taken off, and a list of those to add. */
import { GOLDEN_HOUR } from '#core/light/light-preset.ts'
import { type LightWishes, NO_WISHES, type WishKind, wishesMade } from '#core/light/light-wish.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { Menu, type MenuEntry } from '#renderer/part/menu.tsx'
import { toWishes } from '#renderer/part/to-wishes.ts'
import { changeShoot } from '#renderer/state/library/history.ts'
import { shoot as openShoot } from '#renderer/state/library/library.ts'
import { wishName } from '#renderer/text/wish-names.ts'
import { chipWords as say } from '#renderer/words/en-light-chips.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { stripLandmark, wishNames } from './strip-signals.ts'

function wish(part: Partial<LightWishes>): void {
  const now = openShoot.peek()
  if (now !== null) void changeShoot(lightWords.edit.wishes, { ...now, light: { ...now.light, ...part } })
}

interface Ready {
  readonly part: Partial<LightWishes>
  /** Where it has a name of its own. */
  readonly name?: string
}

/** Those that one is most likely to want, in the order in which a day has them. */
const READY: Readonly<Partial<Record<WishKind, readonly Ready[]>>> = {
  subject: [{ part: { subject: 'lit' } }, { part: { subject: 'back-lit' } }],
  landmark: [{ part: { landmark: 'lit' } }, { part: { landmark: 'raking' } }],
  altitude: [{ part: { altitude: GOLDEN_HOUR }, name: say.golden }],
  soft: [{ part: { soft: 'either' }, name: say.blue }],
  sun: [{ part: { sun: 'out-of-frame' } }, { part: { sun: 'in-frame' } }],
  moonUp: [{ part: { moonUp: true } }],
}

function entries(shoot: Shoot, landmark: Landmark | null): MenuEntry[] {
  const made = wishesMade(shoot.light)
  const offered = (Object.keys(READY) as WishKind[])
    .filter((kind) => !made.includes(kind) && (kind !== 'landmark' || landmark !== null))
    .flatMap((kind) =>
      (READY[kind] ?? []).map(({ part, name }): MenuEntry => ({
        text: name ?? wishName(kind, { shoot: { ...shoot, light: { ...NO_WISHES, ...part } }, landmark }),
        onPress: () => wish(part),
      })),
    )
  return [...offered, { text: say.more, apart: true, onPress: toWishes }]
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
  const now = openShoot.value
  if (now === null) return null
  return (
    <div class="conditions" role="group" aria-label={say.conditions}>
      {[...wishNames.value].map(([kind, name]) => (
        <Chip key={kind} kind={kind} name={name} />
      ))}
      <Menu label={say.addLabel} entries={entries(now, stripLandmark.value)} upward>
        <Icon name="add" /> {say.add}
      </Menu>
    </div>
  )
}
