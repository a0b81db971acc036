/** Polishing: a candidate moved between the scan's samples, little by little and never to the worse, as far as ground and wishes let it. */
import { geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { Span } from '#core/light/crossing.ts'
import { hoursSpans } from '#core/light/light-window.ts'
import type { StoppingGround } from '#core/record/stopping-ground.ts'
import { civilDayOf } from '#core/time/civil.ts'
import { turnBetween, wrapBearing } from '#core/units/angle.ts'
import { MINUTE } from '#core/time/duration.ts'
import { wayToCamera } from './apart.ts'
import { type MeasuredLine, alongAt, holdsPlace, measuredLine, pointAlong } from './scan-places.ts'
import { awayFrom, offPlane, planeAt } from './drawn-shape.ts'
import { metOf } from './demands.ts'
import { type JudgedCandidate, isGood, judge, keepsRoom } from './judge-candidate.ts'
import type { ScanRequest } from './scan-request.ts'
import type { Candidate } from './scan-found.ts'
import { type ScanTable, scanTable } from './scan-table.ts'
import { nearestStand } from '#core/plan/stand.ts'
import { standForShare, stopPlace, turnedSubject } from './stand-place.ts'

/** What is moved: each a number that may change by any little. */
interface Setting {
  /** Metres along a line; east and north of the first place in an area. */
  readonly along: number
  readonly east: number
  readonly north: number
  readonly heading: number
  readonly way: number
  /** Logarithms of metres and millimetres: these count by ratio. */
  readonly far: number
  readonly focal: number
  readonly height: number
  /** Minutes from the first instant. */
  readonly later: number
}

type Move = Partial<Setting>

interface Polishing {
  readonly request: ScanRequest
  readonly table: ScanTable
  readonly from: Candidate
  readonly ground: StoppingGround
  readonly line: MeasuredLine | null
  readonly lens: ScanTable['focals'][number]['lens']
  /** Metres along the line at which the sampled place lies. */
  readonly start: number
  /** When the instant may be; null where it stays. */
  readonly times: readonly Span[] | null
}

function timesOf({ request, table }: Pick<Polishing, 'request' | 'table'>, instant: number): readonly Span[] | null {
  if (!table.lit) return null
  const day = civilDayOf(instant, request.zone)
  const { hours } = table.wishes
  return hours === null ? [{ from: day.start, until: day.end - 1 }] : hoursSpans(hours, day, request.zone)
}

/** The first moves, about half a sample's step each way: alone, and those together that leave the subject's fill as it is. */
function movesOf({ request, table, ground, line, lens, times }: Polishing): Move[] {
  const { steps } = request
  const { lensHeight, subjectFill } = table.wishes
  const moves: Move[] = [{ way: steps.bearing / 2 }]
  const half = steps.place / 2
  if (line === null) moves.push({ east: half }, { north: half })
  else moves.push({ along: half })
  if (line === null || ground.turn === 'free') moves.push({ heading: steps.heading / 2 })
  if (subjectFill !== null) moves.push({ far: 0.1 })
  const zoom = Math.log(lens.focalMax / lens.focalMin) / Math.max(2, 2 * (steps.focalLengths - 1))
  if (zoom > 0) moves.push({ focal: zoom, far: zoom })
  if (zoom > 0 && subjectFill !== null) moves.push({ focal: zoom })
  if (lensHeight.most > lensHeight.least) moves.push({ height: (lensHeight.most - lensHeight.least) / 4 })
  if (times !== null) moves.push({ later: steps.minutes / 2 })
  return moves
}

const NAMES = ['along', 'east', 'north', 'heading', 'way', 'far', 'focal', 'height', 'later'] as const

function moved(setting: Setting, move: Move, by: number): Setting {
  const next = { ...setting }
  for (const name of NAMES) next[name] += (move[name] ?? 0) * by
  return next
}

interface Stop {
  readonly at: LatLon
  readonly heading: number
}

/** Where the subject then stops; null off its ground. */
function stopAt({ ground, line, from }: Polishing, { along, east, north, heading }: Setting): Stop | null {
  if (line === null) {
    const at = offPlane(planeAt(from.at), east, north)
    return holdsPlace(ground, at) ? { at, heading: wrapBearing(heading) } : null
  }
  if (along < 0 || along > line.length) return null
  const point = pointAlong(line, along)
  if (point === null) return null
  if (ground.turn === 'free') return { at: point.at, heading: wrapBearing(heading) }
  const back = ground.turn === 'either-way' && Math.abs(turnBetween(point.bearing, from.heading)) > 90
  return { at: point.at, heading: back ? wrapBearing(point.bearing + 180) : point.bearing }
}

/** Half a step from the sampled place is the next one's: it is polished too, and two must not end as one. */
function isNear({ request, start }: Polishing, { along, east, north }: Setting): boolean {
  const half = request.steps.place / 2
  return Math.abs(along - start) <= half && Math.hypot(east, north) <= half
}

/** The arrangement of a setting, not yet judged; null for one that can't be. */
function arrangementOf(polishing: Polishing, setting: Setting): Candidate | null {
  const { table, from, lens, times } = polishing
  if (!isNear(polishing, setting)) return null
  const { lensHeight } = table.wishes
  const stop = stopAt(polishing, setting)
  // Whole seconds: no clock is set finer.
  const instant = times === null ? from.instant : Math.round((from.instant + setting.later * MINUTE) / 1000) * 1000
  const inTime = times === null || times.some(({ from: first, until }) => instant >= first && instant <= until)
  const focalLength = Math.exp(setting.focal)
  const reached = focalLength >= lens.focalMin && focalLength <= lens.focalMax
  const high = setting.height >= lensHeight.least && setting.height <= lensHeight.most
  if (stop === null || !inTime || !reached || !high) return null
  const way = wrapBearing(setting.way)
  const standpoint = standpointFor(polishing, stop, way, { ...setting, focal: focalLength })
  if (standpoint === null) return null
  return { ...from, ...stop, standpoint, lensHeight: setting.height, focalLength, instant }
}

/** Without a wish for the subject's fill it stays the shot's own, and the camera goes where that is. */
function standpointFor({ table, from, lens }: Polishing, stop: Stop, way: number, setting: Setting): LatLon | null {
  const distance = Math.exp(setting.far)
  if (distance < nearestStand(table.shoot.subject)) return null
  if (table.wishes.subjectFill !== null) return awayFrom(planeAt(stop.at), way, distance)
  const place = stopPlace(table, stop.at)
  const subject = turnedSubject(table, place, stop.heading)
  const placement = { across: from.across, up: from.up }
  const frame = table.settings[0]
  if (frame === undefined) return null
  const { share } = table.shot.subjectFill
  const focal = { lens, focalLength: setting.focal }
  return standForShare(table, subject, way, focal, { ...frame, placement }, share, setting.height, distance)?.at ?? null
}

/** Times that the moves are halved, and rounds at each size. */
const HALVINGS = 9
const ROUNDS = 3
/** Less is no improvement worth a move. */
const WORTH = 1e-9

/**
 * The same candidate, or one with a higher score that meets all musts and limits as it does, and with room to spare where it had
 * any; always the same for the same.
 */
export function polish(request: ScanRequest, candidate: Candidate): Candidate {
  const table = scanTable(request, [])
  const ground = request.shoot.stoppingGround.find(({ id }) => id === candidate.ground)
  const lens = request.shoot.bag.lenses.find(({ id }) => id === candidate.lensId)
  if (ground === undefined || lens === undefined) return candidate
  const line = ground.form === 'line' ? measuredLine(ground.points) : null
  const times = timesOf({ request, table }, candidate.instant)
  const start = line === null ? 0 : alongAt(line, candidate.at)
  const polishing: Polishing = { request, table, from: candidate, ground, line, lens, start, times }
  const moves = movesOf(polishing)
  let best: Best = { candidate, judged: judge(request, table.out, candidate) }
  let here: Setting = {
    along: start,
    east: 0,
    north: 0,
    heading: candidate.heading,
    way: wayToCamera(candidate),
    far: Math.log(geodesicLine(candidate.at, candidate.standpoint).distance),
    focal: Math.log(candidate.focalLength),
    height: candidate.lensHeight,
    later: 0,
  }
  for (let halving = 0; halving <= HALVINGS; halving++) {
    for (let round = 0; round < ROUNDS; round++) {
      const before = best
      for (const move of moves) {
        for (const way of [1, -1]) {
          const next = moved(here, move, way / 2 ** halving)
          const better = betterOf(polishing, best, next)
          if (better === null) continue
          best = better
          here = next
          break
        }
      }
      if (best === before) break
    }
  }
  return best.candidate
}

interface Best {
  readonly candidate: Candidate
  readonly judged: JudgedCandidate
}

function betterOf(polishing: Polishing, best: Best, setting: Setting): Best | null {
  const arrangement = arrangementOf(polishing, setting)
  if (arrangement === null) return null
  const judged = judge(polishing.request, polishing.table.out, arrangement)
  const { candidate } = best
  if (!isGood(judged) || judged.score <= candidate.score + WORTH || !keepsRoom(judged, best.judged)) return null
  return { candidate: { ...arrangement, score: judged.score, met: judged.measured.map(metOf) }, judged }
}
