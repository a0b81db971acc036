/** The summit's solid: ridges and gullies falling from the top, nowhere outside the cone of its bounding points. */
import type { LocalPoint } from '#core/geo/local-frame.ts'
import type { Summit } from '#core/scene/landmark.ts'
import type { Face, Solid } from '#core/scene/solid.ts'
import { at, face, part } from './shape.ts'

const RAYS = 32
/** Heights of the rows, as shares, and how far within the cone the mean flank lies there: concave, as mountains are. */
const ROWS = [
  [0, 1],
  [0.2, 0.88],
  [0.42, 0.76],
  [0.64, 0.7],
  [0.84, 0.74],
] as const

/** Gullies by ray: an even spread that repeats nowhere near, from the golden ratio (no chance in core). */
function roughness(ray: number, row: number): number {
  const golden = (ray * 0.618_033_988_75 + row * 0.414_213_56) % 1
  // Five main ridges; between them the flank falls back.
  const ridge = Math.cos((ray / RAYS) * 2 * Math.PI * 5 + row * 0.35) * 0.5 + 0.5
  return 0.66 + 0.31 * ridge + 0.03 * golden
}

export function summitSolid(summit: Summit): Solid {
  const radius = summit.width / 2
  const rows = ROWS.map(([up, keep], row) =>
    Array.from({ length: RAYS }, (_, ray): LocalPoint => {
      const turn = (ray / RAYS) * 2 * Math.PI
      const rough = row === 0 ? 1 : roughness(ray, row)
      const reach = radius * (1 - up) * keep * rough
      // A row is not level: ridges stand a little higher than the gullies between them, still inside the cone.
      const lift = row === 0 ? 0 : (rough - 0.8) * 0.3 * up * (1 - up)
      return at(reach * Math.cos(turn), -reach * Math.sin(turn), (up + Math.min(lift, 0.05)) * summit.height)
    }),
  )
  const top = at(0, 0, summit.height)
  const faces: Face[] = []
  rows.forEach((row, index) => {
    row.forEach((corner, ray) => {
      const next = row[(ray + 1) % RAYS] ?? corner
      const above = rows[index + 1]
      if (above === undefined) faces.push(face('hue', [corner, next, top]))
      else {
        const [a, b] = [above[ray] ?? top, above[(ray + 1) % RAYS] ?? top]
        faces.push(face('hue', [corner, next, b]), face('hue', [corner, b, a]))
      }
    })
  })
  return [part(faces)]
}
