/** The true ground as SVG: paler with distance, as far things are through air. */
import type { GroundPiece, SoftGround } from './ground-picture.ts'
import type { Picture } from './picture.ts'
import { Soft } from './soft.tsx'

/** Metres between which land seen from afar takes on the tone of hills. */
const HILLS_FROM = 90
const HILLS_AT = 900
/** Metres after which all but 1/e of what is seen is the air before it. */
const AIR = 7_000

function percent(value: number): string {
  return `${Math.round(value * 100)}%`
}

/** How much of hills, and of the air before them, a thing at a distance has. */
function haze(distance: number): { readonly '--rise': string; readonly '--air': string } {
  const rise = Math.log(distance / HILLS_FROM) / Math.log(HILLS_AT / HILLS_FROM)
  return { '--rise': percent(Math.min(1, Math.max(0, rise))), '--air': percent(1 - Math.exp(-distance / AIR)) }
}

interface GroundAreasProps {
  readonly id: string
  readonly groups: readonly SoftGround[]
  readonly picture: Picture
  /** Paint of the ground one stands on. */
  readonly near: string
}

export function GroundAreas({ id, groups, picture, near }: GroundAreasProps) {
  return (
    <>
      {groups.map(({ deviation, pieces }, index) => (
        <Soft key={index} id={`${id}${index}`} kind="ground" deviation={deviation} picture={picture}>
          {pieces.map((piece, at) => (
            <Piece key={at} piece={piece} near={near} />
          ))}
        </Soft>
      ))}
    </>
  )
}

function Piece({ piece, near }: { readonly piece: GroundPiece; readonly near: string }) {
  const { kind, distance, path } = piece
  return kind === 'near' ? (
    <path fill={near} d={path} />
  ) : (
    <path class={`lens-${kind}`} style={haze(distance)} d={path} />
  )
}
