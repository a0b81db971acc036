/** A share as a small bar of ink, with a tick where a share becomes enough. */
interface BarProps {
  /** 0..1. */
  readonly share: number
  /** Where the tick stands, 0..1; without one no tick is drawn. */
  readonly edge?: number
}

const LONG = 50

export function ShareBar({ share, edge }: BarProps) {
  return (
    <svg class="met-bar" viewBox={`0 0 ${LONG} 10`} width={LONG} height={10} aria-hidden="true">
      <path class="met-rail" d={`M0,5H${LONG}`} />
      <path class="met-ink" d={`M0,5H${(share * LONG).toFixed(1)}`} />
      {edge === undefined ? null : <path class="met-edge" d={`M${edge * LONG},1V9`} />}
    </svg>
  )
}
