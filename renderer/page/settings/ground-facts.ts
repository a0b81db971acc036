/** What a source of elevations says of itself in one line: its box, its fineness, its gaps, its size. */
import type { GroundSourceBrief } from '#app/contract/ground.ts'
import { metres, rounded } from '#renderer/text/figure.ts'
import { groundSourceWords as say } from '#renderer/words/en-ground-sources.ts'

export function sourceFacts(source: GroundSourceBrief, units: 'metric' | 'imperial'): string {
  const { bounds, resolution, bytes } = source
  const parts = [
    bounds === null
      ? ''
      : say.bounds(
          degrees(bounds.south, 'NS'),
          degrees(bounds.north, 'NS'),
          degrees(bounds.west, 'EW'),
          degrees(bounds.east, 'EW'),
        ),
    resolution === null ? '' : say.between(metres(resolution, units)),
    gapsText(source.gaps),
    bytes === null ? '' : say.megabytes(rounded(bytes / 1e6, bytes < 1e7 ? 1 : 0)),
  ]
  return parts.filter((part) => part !== '').join(' · ')
}

/** As many decimals as tell a place of a kilometre; whole degrees without. */
function degrees(value: number, letters: 'NS' | 'EW'): string {
  return `${rounded(Math.abs(value), 2)}° ${value < 0 ? letters[1] : letters[0]}`
}

/** Null shares are not told: nobody has counted. */
function gapsText(share: number | null): string {
  if (share === null) return ''
  if (share === 0) return say.noGaps
  return say.gaps(share < 0.01 ? `under 1\u{a0}%` : `${Math.min(99, Math.round(share * 100))}\u{a0}%`)
}
