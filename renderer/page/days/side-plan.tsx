/** A tiny plan of the landmark: its outline with the sides numbered, white where the sun strikes at the chosen instant, else dark. */
import { lookAtSun } from '#core/light/wish-margin.ts'
import { SUN_RISE_ALTITUDE } from '#core/light/day-events.ts'
import type { LightSkyline } from '#core/light/light-scene.ts'
import { overSkyline } from '#core/light/over-skyline.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { LocalPoint } from '#core/geo/local-frame.ts'
import type { PlacedFaces } from '#core/scene/face.ts'
import { daysWords } from '#renderer/words/en-days.ts'
import type { LandmarkSide } from './side-faces.ts'

const { sides: say } = daysWords
const SIZE = 220
const ROOM = 34
const LEAST_HIGH = 120
/** Pixels that a number stands out from its side. */
const ASIDE = 13
/** Numbers beyond these would cover each other. */
const MOST_NUMBERS = 24

interface SidePlanProps {
  readonly name: string
  readonly at: LatLon
  readonly placed: PlacedFaces
  readonly sides: readonly LandmarkSide[]
  /** The landmark's skyline; null where no ground is known. */
  readonly skyline: LightSkyline | null
  readonly instant: number
  readonly clock: string
}

interface Edge {
  readonly id: string
  readonly from: LocalPoint
  readonly to: LocalPoint
  readonly normal: LocalPoint
  readonly lit: boolean
}

/** The lower edge of each side: its first two corners. */
function edgesOf(
  placed: PlacedFaces,
  at: LatLon,
  skyline: LightSkyline | null,
  instant: number,
): { readonly edges: Edge[]; readonly sun: 'strikes' | 'behind' | 'down' } {
  const look = lookAtSun(at, instant)
  const { direction } = look
  const up = overSkyline(skyline, look) > 0
  const edges = placed.faces.flatMap(({ id, upright, corners, normal }): Edge[] => {
    const [from, to] = corners
    if (!upright || from === undefined || to === undefined) return []
    const cosine = normal.east * direction.east + normal.north * direction.north + normal.up * direction.up
    return [{ id, from, to, normal, lit: up && cosine > 0 }]
  })
  return { edges, sun: up ? 'strikes' : look.altitude > SUN_RISE_ALTITUDE ? 'behind' : 'down' }
}

interface Fitted {
  readonly high: number
  readonly x: (point: LocalPoint) => number
  readonly y: (point: LocalPoint) => number
}

function fitted(edges: readonly Edge[]): Fitted {
  const points = edges.flatMap(({ from, to }) => [from, to])
  const [west, east] = [Math.min(...points.map((one) => one.east)), Math.max(...points.map((one) => one.east))]
  const [south, north] = [Math.min(...points.map((one) => one.north)), Math.max(...points.map((one) => one.north))]
  const scale = (SIZE - 2 * ROOM) / Math.max(east - west, north - south, 0.1)
  // A long thin thing along east and west needs no square.
  const high = Math.max(LEAST_HIGH, Math.min(SIZE, (north - south) * scale + 2 * ROOM))
  return {
    high,
    x: (point) => SIZE / 2 + (point.east - (west + east) / 2) * scale,
    y: (point) => high / 2 - (point.north - (south + north) / 2) * scale,
  }
}

const NOTES = { strikes: say.planNote, behind: say.planBehind, down: say.planNight } as const

const figure = (value: number): string => value.toFixed(1)

export function SidePlan({ name, at, placed, sides, skyline, instant, clock }: SidePlanProps) {
  const { edges, sun } = edgesOf(placed, at, skyline, instant)
  const { x, y, high } = fitted(edges)
  const line = ({ from, to }: Edge): string =>
    `M${figure(x(from))} ${figure(y(from))}L${figure(x(to))} ${figure(y(to))}`
  return (
    <figure class="side-plan">
      <svg viewBox={`0 0 ${SIZE} ${high.toFixed(0)}`} role="img" aria-label={say.planLabel(name, clock)}>
        {edges.map((edge) => (
          <g key={edge.id} class={edge.lit ? 'side-edge side-edge-lit' : 'side-edge'}>
            <path class="side-hair" d={line(edge)} />
            <path class="side-stroke" d={line(edge)} />
          </g>
        ))}
        {sides.slice(0, MOST_NUMBERS).map((side) => {
          const middle = edges.find(({ id }) => id === (side.faces[Math.floor((side.faces.length - 1) / 2)]?.id ?? ''))
          if (middle === undefined) return null
          const level = Math.hypot(middle.normal.east, middle.normal.north)
          return (
            <text
              key={side.id}
              class="side-number"
              x={figure((x(middle.from) + x(middle.to)) / 2 + (middle.normal.east / level) * ASIDE)}
              y={figure((y(middle.from) + y(middle.to)) / 2 - (middle.normal.north / level) * ASIDE + 4)}
            >
              {side.number}
            </text>
          )
        })}
        <path class="side-north" d={`M${SIZE - 14} 30V10M${SIZE - 18} 15L${SIZE - 14} 9L${SIZE - 10} 15`} />
        <text class="side-number" x={SIZE - 14} y={43}>
          {say.north}
        </text>
      </svg>
      <figcaption class="hint">{NOTES[sun](clock)}</figcaption>
    </figure>
  )
}
