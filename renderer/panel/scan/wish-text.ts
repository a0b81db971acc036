/** Scan wishes as short phrases: "fills 30–60 % of the width", for summaries and where a demand is told of. */
import { exhaustive } from '#core/exhaustive.ts'
import type { ScanWishKind, ScanWishes } from '#core/record/scan-wishes.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { metres, percentText, rounded } from '#renderer/text/figure.ts'
import { scanWishWords } from '#renderer/words/en-scan-wishes.ts'
import { presetOf } from './demand-start.ts'

const { phrases: say } = scanWishWords

/** Two figures with one unit: 30–60 %. */
function between(least: number, most: number, unit: string): string {
  return least === most ? `${rounded(least, 1)}${unit}` : `${rounded(least, 1)}–${rounded(most, 1)}${unit}`
}

const PERCENT = '\u{a0}%'

/** What a demand asks, without the names of the things; empty for one that isn't made. */
export function wishText(kind: ScanWishKind, wishes: ScanWishes, units: UnitSystem): string {
  switch (kind) {
    case 'subjectFill':
    case 'landmarkFill': {
      const wish = wishes[kind]
      return wish === null ? '' : say.fills(between(wish.least * 100, wish.most * 100, PERCENT), wish.axis)
    }
    case 'landmarkWhole':
      return wishes.landmarkWhole === null ? '' : say.whole(wishes.landmarkWhole.crops)
    case 'landmarkPlace': {
      const wish = wishes.landmarkPlace
      if (wish === null) return ''
      return say.place(wish.where, wish.where === 'behind' || wish.gap === 0 ? null : percentText(wish.gap))
    }
    case 'subjectView': {
      const wish = wishes.subjectView
      if (wish === null) return ''
      const preset = presetOf(wish)
      return say.view(preset === null ? null : scanWishWords.view.presets[preset], between(wish.least, wish.most, '°'))
    }
    case 'landmarkShown':
      return wishes.landmarkShown === null ? '' : say.shown(percentText(wishes.landmarkShown.least))
    case 'softness': {
      const wish = wishes.softness
      return wish === null ? '' : say.softness(between(wish.least * 100, wish.most * 100, PERCENT))
    }
    case 'light':
      return wishes.light === null ? '' : say.light
    case 'parking':
      return wishes.parking === null ? '' : say.parking(metres(wishes.parking.within, units))
    default:
      return exhaustive(kind)
  }
}
