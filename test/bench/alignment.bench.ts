/** The search for alignments against looking at every minute with the same places of sun and moon. */
import { alignments } from '#core/light/alignment.ts'
import { type AlignmentRequest, LONGEST_SEARCH } from '#core/light/alignment-request.ts'
import { type Body, bodyAt } from '#core/light/body.ts'
import { sunDirection } from '#core/light/incidence.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { type BenchRow, cpu, median } from './measure.ts'

const MINUTE = 60_000
const YEAR = 365 * 24 * 60 * MINUTE
/** The search is too short for the clock alone. */
const CALLS = 50
const ROUNDS = 3

const ASKS: readonly Pick<AlignmentRequest, 'body' | 'target'>[] = [
  { body: 'sun', target: { bearing: 120, altitude: 5 } },
  { body: 'moon', target: { bearing: 245, altitude: 8 } },
]

function request(body: Body, target: AlignmentRequest['target'], span: number): AlignmentRequest {
  const from = Date.UTC(2025, 0, 1)
  return { at: { lat: 46.9, lon: 9.3 }, body, target, tolerance: 0.5, from, until: from + span }
}

function search(asked: AlignmentRequest): number {
  const found = alignments(asked)
  if (!found.ok) throw new Error(found.fault.message)
  return found.value.length
}

/** Times at which the body comes within the tolerance, a minute apart. */
function byMinutes({ at, body, target, tolerance, from, until }: AlignmentRequest): number {
  const aimed = sunDirection(target.bearing, target.altitude)
  const near = Math.cos((tolerance * Math.PI) / 180)
  let [count, inside] = [0, false]
  for (let instant = from; instant < until; instant += MINUTE) {
    const { azimuth, altitude } = bodyAt(body, at, instant)
    const seen = sunDirection(azimuth, apparentAltitude(altitude))
    const within = seen.east * aimed.east + seen.north * aimed.north + seen.up * aimed.up >= near
    if (within && !inside) count++
    inside = within
  }
  return count
}

function yearRow({ body, target }: (typeof ASKS)[number]): BenchRow {
  const asked = request(body, target, YEAR)
  let hits = 0
  for (let call = 0; call < CALLS; call++) hits = search(asked)
  let seen = 0
  const rounds = Array.from({ length: ROUNDS }, () => {
    const anchor = cpu(() => {
      seen = byMinutes(asked)
    })
    const ours = cpu(() => {
      for (let call = 0; call < CALLS; call++) hits = search(asked)
    })
    return { anchor, ours: ours / CALLS }
  })
  if (hits !== seen || hits === 0) throw new Error(`${hits} alignments found, ${seen} seen by minutes`)
  return {
    name: `a year of ${body} alignments (${hits}), every minute / ours`,
    ours: `${median(rounds.map(({ ours }) => ours)).toFixed(2)} ms`,
    anchor: `${median(rounds.map(({ anchor }) => anchor)).toFixed(0)} ms`,
    // Told upside down: three decimals would round the other away.
    ratio: median(rounds.map(({ ours, anchor }) => anchor / ours)),
    aim: '800 times, at least 400',
  }
}

export function benchAlignment(): BenchRow[] {
  const asked = request('moon', { bearing: 120, altitude: 5 }, LONGEST_SEARCH)
  let hits = search(asked)
  const took = median(
    Array.from({ length: 7 }, () =>
      cpu(() => {
        hits = search(asked)
      }),
    ),
  )
  return [
    ...ASKS.map(yearRow),
    {
      name: `ten years of moon alignments (${hits})`,
      ours: `${took.toFixed(1)} ms`,
      anchor: '250 ms',
      ratio: took / 250,
      aim: '250 ms',
    },
  ]
}
