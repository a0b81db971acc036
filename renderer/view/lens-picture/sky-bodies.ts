/** Sun and moon in the picture: at their true place and size, the moon with its lit part, turned as it is seen. */
import { type CameraPoint, type View, toCamera } from '#core/frame/projection.ts'
import type { LocalPoint } from '#core/geo/local-frame.ts'
import { sunDirection } from '#core/light/incidence.ts'
import type { BodyReading, LightReading } from '#core/plan/light-reading.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { NEAR } from './clip.ts'
import { type Sheet, finePath, toSheet } from './pen.ts'

export interface SkyBody {
  /** The whole disc. */
  readonly disc: string
  /** What of it shines; empty when nothing does. */
  readonly lit: string
  /** Place of its middle and its radius in the drawing, for the glow around it. */
  readonly x: number
  readonly y: number
  readonly radius: number
}

const CORNERS = 48

type Turned = (across: number, along: number) => CameraPoint

/**
 * A place on the body's disc: `along` the way to `tilt` (degrees clockwise from straight up, as seen) and `across` it to the
 * right of that way, both in radii. All lie on the cone about the body's direction, so that the lens stretches them as it does.
 */
function onDisc(view: View, body: BodyReading, tilt: number): Turned {
  const { azimuth, apparent, radius } = body
  const middle = sunDirection(azimuth, apparent)
  const above = sunDirection(azimuth, apparent + 90)
  const right = sunDirection(azimuth + 90, 0)
  const [sin, cos] = [Math.sin(tilt * RADIANS_PER_DEGREE), Math.cos(tilt * RADIANS_PER_DEGREE)]
  const size = Math.tan(radius * RADIANS_PER_DEGREE)
  const place = (axis: keyof LocalPoint, x: number, y: number): number =>
    middle[axis] + size * (x * right[axis] + y * above[axis])
  return (across, along) => {
    const x = across * cos + along * sin
    const y = along * cos - across * sin
    return toCamera(view, { east: place('east', x, y), north: place('north', x, y), up: place('up', x, y) })
  }
}

/** Corners of a half turn from -90 to 90 degrees about the way along, as shares of a radius; `depth` 1 is the limb itself. */
function halfTurn(turned: Turned, depth: number): CameraPoint[] {
  return Array.from({ length: CORNERS / 2 + 1 }, (_, index) => {
    const turn = (index / (CORNERS / 2) - 0.5) * Math.PI
    return turned(Math.sin(turn), Math.cos(turn) * depth)
  })
}

function bodyOf(view: View, sheet: Sheet, body: BodyReading, tilt: number, share: number): SkyBody | null {
  if (!body.up || body.behindGround) return null
  const turned = onDisc(view, body, tilt)
  const limb = halfTurn(turned, 1)
  const rest = halfTurn(turned, -1).toReversed()
  const all = [...limb, ...rest]
  if (all.some(({ depth }) => depth < NEAR)) return null
  const path = (points: readonly CameraPoint[]): string =>
    finePath(
      points.map((point) => toSheet(sheet, point)),
      sheet,
    )
  const disc = path(all)
  if (disc === '') return null
  // The edge of the light is half an ellipse: a great circle of the ball seen askew.
  const edge = halfTurn(turned, 1 - 2 * share).toReversed()
  const { x, y } = toSheet(sheet, turned(0, 0))
  const side = toSheet(sheet, turned(1, 0))
  const radius = Math.hypot(side.x - x, side.y - y)
  return { disc, lit: share >= 1 ? disc : path([...limb, ...edge]), x, y, radius }
}

/** Null when it is down, behind the ground or nowhere near the picture. The ground is drawn over what of it lies lower. */
export function sunInPicture(view: View, sheet: Sheet, light: LightReading): SkyBody | null {
  return bodyOf(view, sheet, light.sun, 0, 1)
}

export function moonInPicture(view: View, sheet: Sheet, light: LightReading): SkyBody | null {
  const { phase } = light.moon
  return bodyOf(view, sheet, light.moon, phase.tilt, phase.lit)
}
