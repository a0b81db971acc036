/** The true ground as SVG: paler with distance, as far things are through air. */
import type { GroundPicture, SoftGround } from './ground-picture.ts'
import type { Picture } from './picture.ts'
import { Soft } from './blurred.tsx'

/** Metres between which land seen from afar takes on the tone of hills. */
const HILLS_FROM = 90
const HILLS_AT = 900
/** Metres after which all but 1/e of what is seen is the air before it. */
const AIR = 7_000

function percent(value: number): string {
  return `${Math.round(value * 100)}%`
}

/** How much of hills, and of the air before them, a thing at a distance has. */
export function haze(distance: number): { readonly '--rise': string; readonly '--air': string } {
  const rise = Math.log(distance / HILLS_FROM) / Math.log(HILLS_AT / HILLS_FROM)
  return { '--rise': percent(Math.min(1, Math.max(0, rise))), '--air': percent(1 - Math.exp(-distance / AIR)) }
}

/** The sea, ever paler toward its horizon: a paint in one, so that it shows no seams. */
export function WaterPaint({ id, ground }: { readonly id: string; readonly ground: GroundPicture }) {
  const { waterline } = ground
  const [top, bottom] = [waterline[0]?.y ?? 0, waterline.at(-1)?.y ?? 0]
  const whole = Math.max(1e-6, bottom - top)
  return (
    <linearGradient id={id} gradientUnits="userSpaceOnUse" x1="0" x2="0" y1={top} y2={top + whole}>
      {waterline.map(({ y, distance }) => (
        <stop key={distance} class="lens-water-stop" offset={(y - top) / whole} style={haze(distance)} />
      ))}
    </linearGradient>
  )
}

interface GroundAreasProps {
  readonly id: string
  readonly groups: readonly SoftGround[]
  readonly picture: Picture
  /** Paints of the ground one stands on, and of water. */
  readonly near: string
  readonly water: string
}

export function GroundAreas({ id, groups, picture, near, water }: GroundAreasProps) {
  return (
    <>
      {groups.map(({ deviation, pieces }, index) => (
        <Soft key={index} id={`${id}${index}`} kind="ground" deviation={deviation} picture={picture}>
          {pieces.map(({ kind, distance, path }, at) => {
            if (kind === 'near') return <path key={at} fill={near} d={path} />
            // Its own edge closes the seams between the bands of the sea.
            if (kind === 'water') return <path key={at} fill={water} stroke={water} stroke-width="0.7" d={path} />
            return <path key={at} class={`lens-${kind}`} style={haze(distance)} d={path} />
          })}
        </Soft>
      ))}
    </>
  )
}
