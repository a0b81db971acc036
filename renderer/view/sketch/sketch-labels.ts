/** The names and heights of the sketch map, placed once for a whole zoom, so that tiles agree on them. */
import { contourStyle, isNamed, type LabelStyle, styleOf } from './label-text.ts'
import {
  type Letter,
  lengthOf,
  labelPointAlong,
  setAlong,
  setLevel,
  setTurned,
  type LabelSetting,
  type Side,
  SIDES,
  TakenSpace,
} from './label-place.ts'
import type { SketchFeature, SketchIndex } from './sketch-index.ts'
import type { SketchPalette } from './sketch-palette.ts'
import { type WorldBox, worldPixels } from './world.ts'

export interface Label {
  readonly style: LabelStyle
  readonly letters: readonly Letter[]
  readonly boxes: readonly WorldBox[]
  /** A small triangle over a summit, world pixels. */
  readonly peak: readonly [number, number] | null
}

export type MeasureText = (text: string, style: LabelStyle) => number

/** Contour numbers stand about this far apart, CSS pixels at zoom 17 and below; above it they keep their places. */
const NUMBER_SPACING = 620
const NUMBER_ZOOM = 14

/** Decides which names are written at a zoom, and where. */
export function placeSketchLabels(
  index: SketchIndex,
  zoom: number,
  palette: SketchPalette,
  measure: MeasureText,
): Label[] {
  const space = new TakenSpace()
  const scale = worldPixels(zoom)
  const labels: Label[] = []
  const names = index
    .all('place')
    .filter(({ properties }) => isNamed(String(properties['class']), Number(properties['importance']), zoom))
    .toSorted((left, right) => urgency(left) - urgency(right))
  for (const place of names) {
    const label = placeName(index, place, zoom, scale, palette, space, measure)
    if (label === null) continue
    space.take(label.boxes)
    labels.push(label)
  }
  if (zoom >= NUMBER_ZOOM) labels.push(...contourNumbers(index, zoom, scale, palette, space, measure))
  return labels
}

/** Names along a line come before names by a point that matter as much: these have other places to go to. */
function urgency(place: SketchFeature): number {
  return Number(place.properties['importance']) - ((place.raw[0]?.length ?? 0) > 2 ? 0.5 : 0)
}

function placeName(
  index: SketchIndex,
  place: SketchFeature,
  zoom: number,
  scale: number,
  palette: SketchPalette,
  space: TakenSpace,
  measure: MeasureText,
): Label | null {
  const name = String(place.properties['name'])
  const nameClass = String(place.properties['class'])
  const style = styleOf(nameClass, Number(place.properties['importance']), zoom, palette)
  const line = (place.raw[0] ?? new Float64Array(2)).map((value) => value * scale)
  const width = (text: string): number => measure(text, style)
  if (line.length > 2) {
    const setting = setAlong(name, line, style.size, style.spacing, width)
    return setting === null || !space.isFree(setting.boxes) ? null : { style, ...setting, peak: null }
  }
  const at = [line[0] ?? 0, line[1] ?? 0] as const
  if (nameClass === 'summit') return placeSummit(place, name, at, { style, zoom, palette }, space, measure)
  const spacedWidth = (text: string): number => width(text) + style.spacing * (text.length - 1)
  const settings = offers(nameClass, zoom).map(([side, away]) =>
    setLevel(name, at, side, away, style.size, spacedWidth),
  )
  const free = settings.filter((setting) => space.isFree(setting.boxes))
  const covered = free.map((setting) => coveredSides(index, setting.boxes, scale))
  const best = free[covered.indexOf(Math.min(...covered))]
  return best === undefined ? null : { style, ...best, peak: null }
}

/** Where a name may stand by its point, in falling order of taste: names of areas on it, names of things beside them. */
function offers(nameClass: string, zoom: number): readonly (readonly [Side, number])[] {
  if (nameClass === 'head' || nameClass === 'island') return [['middle', 0]]
  if (nameClass === 'feature') return [['middle', 0], ...SIDES.map((side) => [side, 8] as const)]
  const near = zoom < 15 ? 7 : 10
  return [near, near * 2.2, near * 4].flatMap((away) =>
    (['right', 'left', 'above', 'below'] as const).map((side) => [side, away] as const),
  )
}

/** How many sides of houses and roads a name would lie on. */
function coveredSides(index: SketchIndex, boxes: readonly WorldBox[], scale: number): number {
  let covered = 0
  for (const box of boxes) {
    const world = { west: box.west / scale, east: box.east / scale, north: box.north / scale, south: box.south / scale }
    for (const kind of ['building', 'road', 'minor', 'lighthouse', 'quay']) {
      for (const feature of index.within(kind, world)) {
        for (const points of feature.raw) covered += sidesWithin(points, world)
      }
    }
  }
  return covered
}

/** Counts the sides of a line whose own box meets the given one: near enough for short sides. */
function sidesWithin(points: Float64Array, box: WorldBox): number {
  let within = 0
  for (let place = 0; place + 3 < points.length; place += 2) {
    const [x, y] = [points[place] ?? 0, points[place + 1] ?? 0]
    const [nextX, nextY] = [points[place + 2] ?? 0, points[place + 3] ?? 0]
    const beside = Math.max(x, nextX) < box.west || Math.min(x, nextX) > box.east
    const beyond = Math.max(y, nextY) < box.north || Math.min(y, nextY) > box.south
    if (!beside && !beyond) within++
  }
  return within
}

/** A summit's name with its triangle, and from zoom 13 on its height below. */
function placeSummit(
  place: SketchFeature,
  name: string,
  at: readonly [number, number],
  look: { readonly style: LabelStyle; readonly zoom: number; readonly palette: SketchPalette },
  space: TakenSpace,
  measure: MeasureText,
): Label | null {
  const { style } = look
  const height = Number(place.properties['elevation'])
  const text = look.zoom >= 13 && height > 0 ? `${name} ${height}` : name
  for (const side of ['above', 'right', 'left', 'below'] as const) {
    const setting = setLevel(
      text,
      at,
      side,
      8,
      style.size,
      (whole) => measure(whole, style) + style.spacing * (whole.length - 1),
    )
    const mark = { west: at[0] - 5, east: at[0] + 5, north: at[1] - 5, south: at[1] + 5 }
    if (!space.isFree([...setting.boxes, mark])) continue
    return {
      style: style,
      letters: setting.letters,
      boxes: [...setting.boxes, mark],
      peak: at,
    }
  }
  return null
}

/** Heights on the contours, where these run straight enough to carry them. */
function contourNumbers(
  index: SketchIndex,
  zoom: number,
  scale: number,
  palette: SketchPalette,
  space: TakenSpace,
  measure: MeasureText,
): Label[] {
  const style = contourStyle(palette)
  const labels: Label[] = []
  const spacing = NUMBER_SPACING * 2 ** Math.max(0, zoom - 17)
  for (const contour of index.all('contour')) {
    const elevation = Number(contour.properties['elevation'])
    if (elevation % (zoom < 17 ? 50 : 20) !== 0) continue
    for (const part of index.shape(contour, zoom)) {
      const line = part.points.map((value) => value * scale)
      const length = lengthOf(line)
      const count = Math.floor(length / spacing)
      for (let number = 0; number < count; number++) {
        const setting = numberAt(line, ((number + 0.5) * length) / count, String(elevation), style, measure)
        if (setting === null || !space.isFree(setting.boxes)) continue
        space.take(setting.boxes)
        labels.push({ style, ...setting, peak: null })
      }
    }
  }
  return labels
}

/** Null where the contour bends too much under the number. */
function numberAt(
  line: Float64Array,
  along: number,
  text: string,
  style: LabelStyle,
  measure: MeasureText,
): LabelSetting | null {
  const before = labelPointAlong(line, along - 10)
  const after = labelPointAlong(line, along + 10)
  if (Math.hypot(after.x - before.x, after.y - before.y) < 18.5) return null
  const turn = Math.atan2(after.y - before.y, after.x - before.x)
  return setTurned(text, { x: (before.x + after.x) / 2, y: (before.y + after.y) / 2, turn }, style.size, (part) =>
    measure(part, style),
  )
}
