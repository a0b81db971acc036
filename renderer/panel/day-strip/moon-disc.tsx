/** The moon as a small disc: its lit part bright, turned as it is seen. */
import type { MoonPhase } from '#core/light/sky.ts'

/** The lit part of a disc of radius 1 whose bright limb looks up: half the rim, and the terminator back. */
export function litPath(lit: number): string {
  const bulge = Math.abs(1 - 2 * lit).toFixed(3)
  return `M-1 0A1 1 0 0 1 1 0A1 ${bulge} 0 0 ${lit < 0.5 ? 0 : 1} -1 0Z`
}

export function MoonDisc({ phase }: { phase: MoonPhase }) {
  return (
    <svg class="strip-moon" viewBox="-1.25 -1.25 2.5 2.5" aria-hidden="true" focusable="false">
      <circle class="strip-moon-dark" r="1" />
      <path class="strip-moon-lit" d={litPath(phase.lit)} transform={`rotate(${phase.tilt.toFixed(1)})`} />
      <circle class="strip-moon-rim" r="1" />
    </svg>
  )
}
