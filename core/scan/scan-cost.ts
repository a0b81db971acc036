/** What a scan will take, told before it starts: lengths, areas, places and combinations, without trying any of them. */
import type { StoppingGround } from '#core/record/stopping-ground.ts'
import { DAY_MINUTES } from '#core/time/duration.ts'
import { areaOf, onPlane, planeAt } from './drawn-shape.ts'
import { cellsOver, measuredLine, samplesAlong, turnSamples } from './scan-places.ts'
import type { ScanRequest } from './scan-request.ts'
import type { ScanCost } from './scan-found.ts'
import { daySamples, fillSamples, focalSamples, heightSamples, looksAtLight, placementSamples } from './scan-samples.ts'

interface GroundSize {
  readonly length: number
  readonly area: number
  readonly places: number
  readonly headings: number
}

/** Areas are counted by their square metres, not by the places that fall into them. */
function sizeOf(ground: StoppingGround, { place, heading }: ScanRequest['steps']): GroundSize {
  const round = turnSamples(heading)
  if (ground.form === 'line') {
    const { length } = measuredLine(ground.points)
    const places = length > 0 ? samplesAlong(length, place) : 0
    return { length, area: 0, places, headings: ground.turn === 'free' ? round : ground.turn === 'along' ? 1 : 2 }
  }
  const [first] = ground.points
  if (first === undefined || ground.points.length < 3) return { length: 0, area: 0, places: 0, headings: round }
  const plane = planeAt(first)
  const shape = ground.points.map((at) => onPlane(plane, at))
  const area = areaOf(shape)
  const { columns, rows, box } = cellsOver(shape, place)
  const share = box > 0 ? area / box : 0
  return { length: 0, area, places: area > 0 ? Math.max(1, Math.round(columns * rows * share)) : 0, headings: round }
}

/** Instants looked at, about: days of 24 hours, the wished part of each. */
function instantCount(request: ScanRequest): number {
  if (!looksAtLight(request)) return 1
  const { hours } = request.shoot.scanWishes
  const minutes = hours === null ? DAY_MINUTES : (hours.until - hours.from + DAY_MINUTES) % DAY_MINUTES || DAY_MINUTES
  return daySamples(request).length * Math.max(1, Math.round(minutes / request.steps.minutes))
}

/** Keep-outs are not taken off: the cost is never told too low for them. */
export function scanCost(request: ScanRequest): ScanCost {
  const { shoot, steps } = request
  const sizes = shoot.stoppingGround.map((ground) => sizeOf(ground, steps))
  const turned = sizes.reduce((sum, { places, headings }) => sum + places * headings, 0)
  const onWay =
    focalSamples(shoot.bag.lenses, steps.focalLengths).length *
    fillSamples(request).length *
    heightSamples(shoot.scanWishes, steps.heights).length *
    placementSamples(request).length
  const pictures = turned * turnSamples(steps.bearing) * onWay
  return {
    length: sizes.reduce((sum, { length }) => sum + length, 0),
    area: sizes.reduce((sum, { area }) => sum + area, 0),
    places: sizes.reduce((sum, { places }) => sum + places, 0),
    pictures,
    combinations: pictures * instantCount(request),
  }
}
