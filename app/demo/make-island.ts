/** Makes the demo island, whole and alike on every run: island.geojson, elevation.bin and elevation.json beside this file. */
import { writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { beaches, coverOutlines, crags, fineHeights, lake, landAreas, woods } from './cover.ts'
import {
  areaFeature,
  bridgeFeature,
  collection,
  drawnBox,
  type IslandFeature,
  lighthouseFeature,
  lineFeature,
  pointFeature,
} from './features.ts'
import { carve, Ground } from './ground.ts'
import { buildQuays, type Quays } from './harbour.ts'
import { METRES_PER_DEGREE_EAST, METRES_PER_DEGREE_NORTH, toLatLon } from './island-frame.ts'
import { QUAY_LEVEL } from './island-places.ts'
import type { IslandRing } from './isolines.ts'
import { islandNames } from './names.ts'
import { Nearness } from './nearness.ts'
import { layWays, worthDrawing } from './network.ts'
import { isInside, islandRingArea } from './outline.ts'
import { buildHouses, layFields } from './settlement.ts'
import { traceStreams } from './streams.ts'
import { REACH_EAST, REACH_NORTH } from './terrain.ts'

const POST_SPACING = 20
/** Land smaller than this is a skerry, bare rock. */
const SKERRY_AREA = 16_000

interface MadeIsland {
  readonly geojson: string
  /** Decimetres above the sea, 16-bit little-endian, row by row from the north-west. */
  readonly elevation: Uint8Array
  readonly elevationHeader: string
}

function closed(ring: IslandRing): IslandRing {
  return ring[0] === undefined ? ring : [...ring, ring[0]]
}

function describe(ground: Ground, quays: Quays): IslandFeature[] {
  const heights = fineHeights(ground)
  const land = landAreas(heights)
  const ways = layWays(ground, quays)
  const houses = buildHouses(ground, ways, quays)
  const plots = layFields(ground)
  const nearWays = new Nearness(ways.map((way) => way.line))
  const nearHouses = new Nearness(houses.map((house) => closed(house.corners)))
  const nearFields = new Nearness(plots.flatMap((plot) => fieldLines(plot.corners)))
  return [
    ...land.map((rings) => areaFeature('land', rings)),
    ...land.filter((rings) => islandRingArea(rings[0] ?? []) < SKERRY_AREA).map((rings) => areaFeature('rock', rings)),
    ...crags(ground).map((rings) => areaFeature('crag', rings)),
    ...beaches().map((rings) => areaFeature('beach', rings)),
    ...plots.map((plot) => areaFeature('field', [plot.corners], { tilled: plot.tilled })),
    ...woods(ground, nearWays, nearHouses, nearFields).map((rings) => areaFeature('wood', rings)),
    ...traceStreams(ground).map((line) => lineFeature('stream', line)),
    areaFeature('lake', [lake()], { name: 'Kesper Water', elevation: ground.lakeLevel }),
    ...coverOutlines(heights).map(({ elevation, line }) => lineFeature('contour', line, { elevation })),
    ...quays.areas.map((ring) => areaFeature('quay', [ring])),
    ...quays.walls.map((ring) => areaFeature('wall', [ring])),
    ...ways.filter(worthDrawing).map((way) => lineFeature(way.kind, way.line)),
    ...houses.map((house) => areaFeature('building', [house.corners])),
    bridgeFeature(),
    lighthouseFeature(),
    ...names(ground),
  ]
}

/** A field's outline and lines across it, so that its inside counts as near. */
function fieldLines(corners: IslandRing): IslandRing[] {
  const half = corners.length / 2
  const across = corners.slice(0, half).flatMap((corner, place) => {
    const opposite = corners[corners.length - 1 - place]
    return opposite === undefined ? [] : [[corner, opposite]]
  })
  const [first, middle] = [corners[0], corners[half]]
  return [closed(corners), ...across, ...(first === undefined || middle === undefined ? [] : [[first, middle]])]
}

function names(ground: Ground): IslandFeature[] {
  return islandNames(ground).map(({ name, class: nameClass, importance, at, elevation }) => {
    const extra = { name, class: nameClass, importance, ...(elevation === undefined ? {} : { elevation }) }
    return at.length === 1 && at[0] !== undefined
      ? pointFeature('place', at[0], extra)
      : lineFeature('place', at, extra)
  })
}

function elevations(ground: Ground, quays: Quays): { readonly elevation: Uint8Array; readonly header: object } {
  const columns = (REACH_EAST * 2) / POST_SPACING + 1
  const rows = (REACH_NORTH * 2) / POST_SPACING + 1
  const nearQuay = new Nearness(quays.areas.map(closed))
  const bytes = new DataView(new ArrayBuffer(columns * rows * 2))
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const point = { east: column * POST_SPACING - REACH_EAST, north: REACH_NORTH - row * POST_SPACING }
      // Posts beside a quay carry its level too, so that the ground between posts does not sink below its edge.
      const onQuay = quays.areas.some((ring) => isInside(point, ring)) || nearQuay.metres(point) < 16
      const built = onQuay ? QUAY_LEVEL : 0
      bytes.setInt16((row * columns + column) * 2, Math.round(Math.max(built, ground.heightAt(point)) * 10), true)
    }
  }
  const corner = toLatLon({ east: -REACH_EAST, north: REACH_NORTH })
  const header = {
    columns,
    rows,
    west: corner.lon,
    north: corner.lat,
    degreesEast: POST_SPACING / METRES_PER_DEGREE_EAST,
    degreesSouth: POST_SPACING / METRES_PER_DEGREE_NORTH,
    metresPerUnit: 0.1,
  }
  return { elevation: new Uint8Array(bytes.buffer), header }
}

function makeIsland(): MadeIsland {
  const ground = new Ground(carve())
  const quays = buildQuays()
  const features = describe(ground, quays)
  const { elevation, header } = elevations(ground, quays)
  const elevationHeader = `${JSON.stringify({ ...header, drawn: drawnBox(features) }, null, 2)}\n`
  return { geojson: collection(features), elevation, elevationHeader }
}

/** Writes the three files; a folder other than this one may be named on the command line. */
function writeIsland(folder: string): void {
  const made = makeIsland()
  const write = (name: string, content: string | Uint8Array): void => {
    writeFileSync(join(folder, name), content)
    console.log(`${name}: ${content.length} bytes`)
  }
  write('island.geojson', made.geojson)
  write('elevation.bin', made.elevation)
  write('elevation.json', made.elevationHeader)
}

const thisFile = fileURLToPath(import.meta.url)
if (process.argv[1] === thisFile) writeIsland(process.argv[2] ?? dirname(thisFile))
