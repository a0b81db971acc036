/** What stands in the way of a scan, in sentences: what, where, and what to do. */
import { exhaustive } from '#core/exhaustive.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { BandName, ScanTrouble } from '#core/scan/scan-troubles.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { formatDay } from '#core/time/civil.ts'
import { metres, percentText } from '#renderer/text/figure.ts'
import { wishName } from '#renderer/text/wish-names.ts'
import { scanTroubleWords as say } from '#renderer/words/en-scan-troubles.ts'
import { scanWishWords } from '#renderer/words/en-scan-wishes.ts'
import type { DemandNames } from './demand-names.ts'
import { countText, placesText } from './cost-text.ts'

export interface TroubleContext {
  readonly shoot: Shoot
  /** The landmark that the spot looks at is named by it. */
  readonly landmark: Landmark | null
  readonly names: DemandNames
  readonly units: UnitSystem
}

function bandName(band: BandName, names: DemandNames): string {
  return band === 'lensHeight' ? scanWishWords.lensHeight : names[band]
}

/** A ground by its name, else by its place in the list. */
function groundName({ stoppingGround }: Shoot, id: string | null): string {
  const index = stoppingGround.findIndex((ground) => ground.id === id)
  const name = stoppingGround[index]?.name.trim() ?? ''
  return name === '' ? say.ground(index + 1) : say.groundNamed(name)
}

export function troubleText(trouble: ScanTrouble, context: TroubleContext): string {
  const { shoot, landmark, names, units } = context
  const where = groundName(shoot, trouble.ground)
  switch (trouble.reason) {
    case 'no-ground':
    case 'empty-bag':
    case 'hours-empty':
    case 'no-parking':
      return say[trouble.reason]
    case 'line-too-short':
      return say['line-too-short'](where, metres(trouble.length, units))
    case 'area-too-few-corners':
      return say['area-too-few-corners'](where, trouble.corners)
    case 'area-crosses-itself':
    case 'area-empty':
    case 'wholly-kept-out':
    case 'ground-without-elevation':
      return say[trouble.reason](where)
    case 'no-landmark':
      return say['no-landmark'](trouble.demands.map((kind) => names[kind]))
    case 'band-upside-down':
      return say['band-upside-down'](bandName(trouble.band, names))
    case 'contradictory-light': {
      const named = { shoot, landmark }
      return trouble.pairs
        .map(([one, other]) => say['contradictory-light'](wishName(one, named), wishName(other, named)))
        .join(' ')
    }
    case 'contradictory-demands':
      return say['contradictory-demands'](
        trouble.demands.map((kind) => names[kind]),
        percentText(trouble.needed, 0),
      )
    case 'days-backwards':
      return say['days-backwards'](formatDay(trouble.from), formatDay(trouble.until))
    case 'no-such-day':
      return say['no-such-day'](formatDay(trouble.from), formatDay(trouble.until))
    case 'too-many':
      return say['too-many'](placesText(trouble.cost.places), countText(trouble.cost.pictures))
    default:
      return exhaustive(trouble)
  }
}
