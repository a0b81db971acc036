/** The light conditions that the strip offers ready-made, each with the conditions as they are once it is taken. */
import { type LightPreset, withLightPreset } from '#core/light/light-preset.ts'
import { type LightWishes, NO_WISHES, type WishKind, wishesMade } from '#core/light/light-wish.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { wishName } from '#renderer/text/wish-names.ts'
import { chipWords as say } from '#renderer/words/en-light-chips.ts'

export interface LightOffer {
  readonly text: string
  readonly light: LightWishes
}

/** Those that one is most likely to want, in the order in which a day has them. */
const READY: Readonly<Partial<Record<WishKind, readonly (LightPreset | Partial<LightWishes>)[]>>> = {
  subject: [{ subject: 'lit' }, { subject: 'back-lit' }],
  landmark: [{ landmark: 'lit' }, { landmark: 'raking' }],
  altitude: ['golden'],
  soft: ['blue'],
  sun: [{ sun: 'out-of-frame' }, { sun: 'in-frame' }],
  moonUp: [{ moonUp: true }],
}

/** Of the kinds of which none is set yet. */
export function lightOffers(shoot: Shoot, landmark: Landmark | null): readonly LightOffer[] {
  const { light } = shoot
  const made = wishesMade(light)
  return (Object.keys(READY) as WishKind[])
    .filter((kind) => !made.includes(kind) && (kind !== 'landmark' || landmark !== null))
    .flatMap((kind) =>
      (READY[kind] ?? []).map((ready): LightOffer => {
        if (typeof ready === 'string') return { text: say[ready], light: withLightPreset(light, ready) }
        const alone = { shoot: { ...shoot, light: { ...NO_WISHES, ...ready } }, landmark }
        return { text: wishName(kind, alone), light: { ...light, ...ready } }
      }),
    )
}
