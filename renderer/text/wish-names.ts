/** What each light condition is called where its window stands: "Merrin Bridge lit", "sun 3° to 45° high". */
import { exhaustive } from '#core/exhaustive.ts'
import { isGoldenHour } from '#core/light/light-preset.ts'
import type { LightWishes, WishKind } from '#core/light/light-wish.ts'
import type { Plan } from '#core/plan/plan.ts'
import { clockText } from '#core/time/clock-text.ts'
import { rounded } from './figure.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { landmarkName, subjectName } from './names.ts'

type Named = Pick<Plan, 'landmark'> & { readonly shoot: Pick<Plan['shoot'], 'subject' | 'light'> }

/** Empty for a wish that isn't made. */
export function wishName(kind: WishKind, plan: Named): string {
  const { light, subject } = plan.shoot
  return nameOf(kind, light, subjectName(subject), landmarkName(plan.landmark))
}

function nameOf(kind: WishKind, light: LightWishes, subject: string, landmark: string): string {
  const { windowName: say } = lightWords
  switch (kind) {
    case 'subject':
      return light.subject === null ? '' : say.subject[light.subject](subject)
    case 'landmark':
      return light.landmark === null ? '' : say.landmark[light.landmark](landmark)
    case 'altitude':
      return light.altitude === null ? '' : isGoldenHour(light.altitude) ? say.golden : altitudeName(light.altitude)
    case 'sun':
      return light.sun === null ? '' : say.sun[light.sun]
    case 'soft':
      return light.soft === null ? '' : say.soft[light.soft]
    case 'moonUp':
      return light.moonUp ? say.moonUp : ''
    case 'hours':
      return light.hours === null ? '' : say.hours(clockText(light.hours.from), clockText(light.hours.until))
    default:
      return exhaustive(kind)
  }
}

/** A lower end as deep as the sun can stand leaves it open and is not named. */
function altitudeName({ least, most }: NonNullable<LightWishes['altitude']>): string {
  const { windowName: say } = lightWords
  const high = `${rounded(most, 1)}°`
  return least > -90 ? say.altitude(`${rounded(least, 1)}°`, high) : say.atMost(high)
}
