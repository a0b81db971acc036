/** The light at one place of a scan: the sun at every instant tried, what of the light wishes is told by it alone, and for pictures the rest. */
import type { LightScene } from '#core/light/light-scene.ts'
import { LEVEL_HORIZON } from '#core/light/light-scene.ts'
import { type WishKind, wishesMade } from '#core/light/light-wish.ts'
import { overGround } from '#core/light/over-skyline.ts'
import { type SunLook, lookAtSun } from '#core/light/wish-margin.ts'
import { geodesicLine } from '#core/geo/geodesic.ts'
import { type FacedThings, facedThings, seenOf, sceneOfThings } from '#core/plan/seen-sides.ts'
import { skylineLooks, landmarkSkyEye, skyEye } from '#core/plan/plan-skylines.ts'
import { type LightMet, hoursMargin, lightMargin, lightMet } from './light-demand.ts'
import type { ScanPicture } from './picture.ts'
import type { ScanTable } from './scan-table.ts'
import { degreeOf, meets } from './score.ts'
import type { StopPlace } from './stand-place.ts'

type LookAlong = ReturnType<typeof skylineLooks>

/** What one light wish is at most, at an instant, whatever the picture. */
type Bound = (index: number) => number

export interface PlaceLight {
  /** Instants in the order of what their light can be at best, those that miss a must left out. */
  readonly order: readonly number[]
  /** The degree that the light at an instant can have at best, by its index. */
  readonly atBest: Float64Array
  /** The light of a picture at instants by their index; null where it misses a must. */
  readonly of: (picture: ScanPicture) => (index: number) => LightMet | null
}

/** Kinds that are told by place and instant alone. */
const OF_THE_SKY: ReadonlySet<WishKind> = new Set(['altitude', 'soft', 'moonUp', 'hours'])

/** The scene of nothing seen: for wishes that are told by the sky alone. */
function bareScene(place: StopPlace): LightScene {
  return { at: place.at, toSubject: null, subject: [], landmark: [], frame: null, skylines: LEVEL_HORIZON }
}

/** Degrees of the sun over the skyline of a thing, each instant looked at once. */
function rememberedOver(count: number, sun: (index: number) => SunLook, eye: () => LookAlong | null): Bound {
  const known = new Float64Array(count).fill(Number.NaN)
  let skyline: LookAlong | null | undefined
  return (index) => {
    const before = known[index] as number
    if (!Number.isNaN(before)) return before
    if (skyline === undefined) skyline = eye()
    const look = sun(index)
    const ground = skyline === null ? null : skyline(look.azimuth).altitude
    // As fine as the skylines are kept, so that both tell the same.
    const over = overGround(ground === null ? null : Math.fround(ground), look)
    known[index] = over
    return over
  }
}

function rememberedSun(place: StopPlace, instants: readonly number[]): (index: number) => SunLook {
  const known: (SunLook | undefined)[] = []
  return (index) => {
    const look = known[index] ?? lookAtSun(place.at, instants[index] ?? 0)
    known[index] = look
    return look
  }
}

/** `hours` are the margins of the light's own clock hours by instant, the same at every place. */
export function placeLight(table: ScanTable, place: StopPlace, hours: Float64Array | null): PlaceLight {
  const { light, terrain, shoot, instants, landmark, landmarkAt } = table
  const count = instants.length
  const kinds = wishesMade(light)
  const must = table.wishes.light?.must === true
  const sun = rememberedSun(place, instants)
  const { refraction, obstructions } = shoot
  const from = (eye: ReturnType<typeof skyEye>): LookAlong | null =>
    terrain === null ? null : skylineLooks(terrain, eye, refraction, obstructions)
  const overSubject = rememberedOver(count, sun, () =>
    terrain === null ? null : from(skyEye(terrain, place.at, place.level.level ?? 0, shoot.subject.height / 2)),
  )
  const overLandmark = rememberedOver(count, sun, () =>
    terrain === null || landmark === null || landmarkAt === null
      ? null
      : from(landmarkSkyEye(terrain, landmark, landmarkAt, table.foot.level ?? 0)),
  )
  const bare = bareScene(place)
  const skyMargins = new Map(
    kinds.flatMap((kind) => (OF_THE_SKY.has(kind) ? [[kind, marginsOfSky(kind)] as const] : [])),
  )

  function marginsOfSky(kind: WishKind): Float64Array {
    if (kind === 'hours') return hours ?? new Float64Array(count).fill(1)
    return Float64Array.from(instants, (instant, index) => lightMargin(kind, light, bare, instant, sun(index)))
  }

  /** The margin that a wish can have at best, told from place and instant. */
  function mostOf(kind: WishKind, index: number): number {
    const known = skyMargins.get(kind)
    if (known !== undefined) return known[index] as number
    if (kind === 'hours' || (kind !== 'subject' && kind !== 'landmark')) return 1
    // With sides turned as well as can be, to the sun or away from it: what is left is the sun's own height.
    const over = kind === 'subject' ? overSubject(index) : overLandmark(index)
    return bestOnSides(kind, over, sun(index))
  }

  function bestOnSides(kind: 'subject' | 'landmark', over: number, look: SunLook): number {
    const { azimuth, direction } = look
    const way = light[kind] === 'in-shade' ? -1 : 1
    const toward = { east: way * direction.east, north: way * direction.north, up: way * direction.up }
    const scene: LightScene = {
      ...bare,
      toSubject: azimuth,
      subject: [{ normal: toward, part: 1 }],
      landmark: [{ normal: toward, part: 1 }],
    }
    const most = light[kind] === 'raking' ? { ...light, [kind]: 'lit' } : light
    return lightMargin(kind, most, scene, 0, look, { subject: over, landmark: over, lens: over })
  }

  const atBest = new Float64Array(count)
  const order: number[] = []
  for (let index = 0; index < count; index++) {
    let degrees = 0
    let fits = true
    for (const kind of kinds) {
      const most = mostOf(kind, index)
      if (must && !meets(most)) {
        fits = false
        break
      }
      degrees += degreeOf(most)
    }
    atBest[index] = kinds.length > 0 ? degrees / kinds.length : 1
    if (fits) order.push(index)
  }
  order.sort((one, other) => (atBest[other] as number) - (atBest[one] as number) || one - other)

  const seesSides = (kinds.includes('subject') && light.subject !== 'back-lit') || kinds.includes('landmark')
  const things = new Map<number, FacedThings>()

  function lightSceneOf({ subject, stood }: ScanPicture): LightScene {
    const { levels, made } = stood
    const toSubject = light.subject === 'back-lit' ? geodesicLine(stood.at, place.at).bearing : null
    const nothing: FacedThings = { ground: place.plane, subject: [], placed: null }
    const faced = seesSides ? facedAt(subject.heading, levels) : nothing
    return sceneOfThings(seenOf(faced, made.view, refraction), made.view, place.at, toSubject, LEVEL_HORIZON)
  }

  function facedAt(heading: number, levels: ScanPicture['stood']['levels']): FacedThings {
    const known = things.get(heading)
    // A stop over unknown ground is taken level with the camera: then nothing is kept.
    if (known !== undefined && place.level.level !== null && table.foot.level !== null) return known
    const faced = facedThings(
      shoot.subject,
      { at: place.at, heading, elevation: null, slope: null, aspect: null },
      landmark,
      levels,
    )
    things.set(heading, faced)
    return faced
  }

  function of(picture: ScanPicture): (index: number) => LightMet | null {
    const scene = lightSceneOf(picture)
    const { stood } = picture
    const overLens = rememberedOver(count, sun, () =>
      terrain === null ? null : from(skyEye(terrain, stood.at, stood.levels.standpoint, stood.lensHeight)),
    )
    const margins: number[] = kinds.map(() => 0)
    return (index) => {
      for (let at = 0; at < kinds.length; at++) {
        const kind = kinds[at] as WishKind
        const known = skyMargins.get(kind)
        const margin = known === undefined ? ofPicture(kind, index) : (known[index] as number)
        if (must && !meets(margin)) return null
        margins[at] = margin
      }
      return lightMet(margins)
    }

    function ofPicture(kind: WishKind, index: number): number {
      if (kind === 'hours') return 1
      const over = {
        subject: kind === 'subject' ? overSubject(index) : 0,
        landmark: kind === 'landmark' ? overLandmark(index) : 0,
        lens: kind === 'sun' ? overLens(index) : 0,
      }
      return lightMargin(kind, light, scene, instants[index] ?? 0, sun(index), over)
    }
  }

  return { order, atBest, of }
}

/** The margins of the light's own clock hours, by instant; null where none are wished. */
export function hoursByInstant({ light, instants, request }: ScanTable): Float64Array | null {
  const { hours } = light
  return hours === null ? null : Float64Array.from(instants, (instant) => hoursMargin(hours, instant, request.zone))
}
