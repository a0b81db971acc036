/** The faces that the camera sees, against rays sent through every part of the frame. */
import { assert, constantFrom, property, record } from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type View, makeView } from '#core/frame/projection.ts'
import { type SeenFace, seenFaces } from '#core/frame/seen-faces.ts'
import { destination } from '#core/geo/geodesic.ts'
import { type LocalFrame, type LocalPoint, localFrame, toEarth, toLocal } from '#core/geo/local-frame.ts'
import { type ThingFace, landmarkFaces, subjectFaces } from '#core/scene/face.ts'
import { BICYCLE } from '#test/help/plans.ts'
import { number } from '#test/help/arbitrary.ts'

const STOP = { lat: 52, lon: -3 }
const GROUND = localFrame(STOP, 0)

interface Stand {
  readonly from: number
  readonly distance: number
  readonly lens: number
  readonly turn: number
  readonly pitch: number
  readonly focal: number
}

/** A camera `distance` metres from the stop on its side `from`, looking back at it but for a turn and a pitch. */
function camera({ from, distance, lens, turn, pitch, focal }: Stand, refraction = 0): View {
  return makeView({
    frame: localFrame(destination(STOP, from, distance), lens),
    bearing: (from + 180 + turn + 720) % 360,
    pitch,
    imageDistance: focal,
    frameWidth: 36,
    frameHeight: 24,
    refraction,
  })
}

const subtract = (a: LocalPoint, b: LocalPoint): LocalPoint => ({
  east: a.east - b.east,
  north: a.north - b.north,
  up: a.up - b.up,
})
const dot = (a: LocalPoint, b: LocalPoint): number => a.east * b.east + a.north * b.north + a.up * b.up

/** The way a ray through a place of the frame goes, in the thing's frame; from the angles of the aim, not from the projection. */
function rayThrough(view: View, x: number, y: number, thing: LocalFrame): LocalPoint {
  const [b, p] = [(view.bearing * Math.PI) / 180, (view.pitch * Math.PI) / 180]
  const axis = [Math.sin(b) * Math.cos(p), Math.cos(b) * Math.cos(p), Math.sin(p)] as const
  const right = [Math.cos(b), -Math.sin(b), 0] as const
  const up = [-Math.sin(b) * Math.sin(p), -Math.cos(b) * Math.sin(p), Math.cos(p)] as const
  const [e = 0, n = 0, u = 0] = [0, 1, 2].map(
    (at) =>
      (axis[at] ?? 0) * view.imageDistance +
      (right[at] ?? 0) * x * view.frameWidth +
      (up[at] ?? 0) * y * view.frameHeight,
  )
  return subtract(toLocal(thing, toEarth(view.frame, e, n, u)), toLocal(thing, view.frame.origin))
}

/** Which face of a convex thing a ray from the lens enters by; null when it misses. Open below counts as missed. */
function entered(faces: readonly ThingFace[], lens: LocalPoint, ray: LocalPoint): string | null {
  let enter = -Infinity
  let leave = Infinity
  let by: string | null = null
  const foot = { id: 'foot', normal: { east: 0, north: 0, up: -1 }, corners: [{ east: 0, north: 0, up: 0 }] }
  for (const { id, normal, corners } of [...faces, foot]) {
    const [corner] = corners
    if (corner === undefined) continue
    const speed = dot(normal, ray)
    const gap = dot(normal, subtract(corner, lens))
    if (speed < 0 && gap / speed > enter) {
      enter = gap / speed
      by = id
    } else if (speed > 0) leave = Math.min(leave, gap / speed)
  }
  return enter > 0 && enter < leave ? by : null
}

const ACROSS = 240
const DOWN = 160

function byRays(
  view: View,
  thing: LocalFrame,
  faces: readonly ThingFace[],
): { shares: Map<string, number>; hits: number } {
  const counts = new Map<string, number>()
  const lens = toLocal(thing, view.frame.origin)
  let hits = 0
  for (let column = 0; column < ACROSS; column++)
    for (let row = 0; row < DOWN; row++) {
      const x = (column + 0.5) / ACROSS - 0.5
      const y = (row + 0.5) / DOWN - 0.5
      const id = entered(faces, lens, rayThrough(view, x, y, thing))
      if (id === null || id === 'foot') continue
      counts.set(id, (counts.get(id) ?? 0) + 1)
      hits++
    }
  return { shares: new Map([...counts].map(([id, count]) => [id, count / hits])), hits }
}

function expectAgreement(seen: readonly SeenFace[], rays: ReturnType<typeof byRays>): void {
  const { shares, hits } = rays
  // Rays miscount along borders: the fewer hit, the coarser.
  const slack = 0.01 + 3 / Math.sqrt(hits + 1)
  const found = new Map(seen.map(({ face, share }) => [face.id, share]))
  for (const id of new Set([...shares.keys(), ...found.keys()]))
    expect(Math.abs((shares.get(id) ?? 0) - (found.get(id) ?? 0)), id).toBeLessThan(slack)
}

const stand = record({
  from: number(0, 360),
  distance: number(1.6, 12),
  lens: number(0.2, 4),
  turn: number(-40, 40),
  pitch: number(-40, 25),
  focal: constantFrom(16, 24, 35, 50, 85),
})

describe('against rays', () => {
  test('the sides of the subject, whole or cut by the frame, from near and far', () => {
    let compared = 0
    assert(
      property(stand, number(0, 360), (where, heading) => {
        const view = camera(where)
        const faces = subjectFaces(BICYCLE, heading)
        const rays = byRays(view, GROUND, faces)
        const seen = seenFaces(view, GROUND, faces, 0)
        if (rays.hits < 400) return
        compared++
        expectAgreement(seen, rays)
      }),
      { numRuns: 60 },
    )
    expect(compared).toBeGreaterThan(15)
  })

  test('the facets of a tower', () => {
    let compared = 0
    assert(
      property(number(0, 360), number(25, 60), number(1, 15), number(-15, 15), (from, distance, lens, turn) => {
        const view = camera({ from, distance, lens, turn, pitch: 20, focal: 24 })
        const placed = landmarkFaces(
          {
            id: 't',
            name: 'Tower',
            kind: 'upright',
            at: STOP,
            width: 12,
            height: 30,
            baseElevation: 0,
            baseSlope: null,
            baseAspect: null,
          },
          0,
        )
        if (placed === null) throw new Error('has a place')
        // Rays would enter by the open top of a convex hull; the lens stays below it.
        const seen = seenFaces(view, placed.frame, placed.faces, 0)
        const roof = { id: 'foot', normal: { east: 0, north: 0, up: 1 }, corners: [{ east: 0, north: 0, up: 30 }] }
        const rays = byRays(view, placed.frame, [...placed.faces, roof as unknown as ThingFace])
        if (rays.hits < 400) return
        compared++
        expectAgreement(seen, rays)
      }),
      { numRuns: 30 },
    )
    expect(compared).toBeGreaterThan(10)
  })

  test('a long wall that runs from before the lens to behind it', () => {
    const line = [destination(STOP, 0, 60), destination(STOP, 180, 60)]
    const placed = landmarkFaces(
      {
        id: 'w',
        name: 'Wall',
        kind: 'span',
        form: 'wall',
        line,
        deckHeight: 3,
        height: 4,
        width: 2,
        baseElevation: 0,
        baseSlope: null,
        baseAspect: null,
      },
      0,
    )
    if (placed === null) throw new Error('has a place')
    // From 6 m east of its middle, looking along it toward the north.
    const view = camera({ from: 90, distance: 6, lens: 1.6, turn: 75, pitch: 0, focal: 24 })
    const seen = seenFaces(view, placed.frame, placed.faces, 0)
    // The line runs south, so that the wall's east side is its left.
    expect(seen.map(({ face }) => face.id)).toEqual(['segment-0-left'])
    expect(seen[0]?.share).toBe(1)
  })
})

describe('shares', () => {
  test('add up to one, of faces that look toward the lens only', () => {
    assert(
      property(stand, number(0, 360), (where, heading) => {
        const view = camera(where, 0.13)
        const faces = subjectFaces(BICYCLE, heading)
        const seen = seenFaces(view, GROUND, faces, 0.13)
        if (seen.length === 0) return
        expect(Math.abs(seen.reduce((sum, { share }) => sum + share, 0) - 1)).toBeLessThan(1e-12)
        const lens = toLocal(GROUND, view.frame.origin)
        for (const { face } of seen) {
          const [corner] = face.corners
          expect(corner !== undefined && dot(face.normal, subtract(lens, corner)) > 0).toBe(true)
        }
        expect(seen.length).toBeLessThanOrEqual(3)
      }),
    )
  })

  test('are none with the thing behind the camera, beyond any side of the frame, or around the lens', () => {
    const faces = subjectFaces(BICYCLE, 10)
    const where = { from: 40, distance: 6, lens: 1.2, turn: 0, pitch: 0, focal: 50 }
    expect(seenFaces(camera(where), GROUND, faces, 0).length).toBeGreaterThan(0)
    expect(seenFaces(camera({ ...where, turn: 180 }), GROUND, faces, 0)).toEqual([])
    for (const turn of [-50, 50]) expect(seenFaces(camera({ ...where, turn }), GROUND, faces, 0)).toEqual([])
    for (const pitch of [-50, 50]) expect(seenFaces(camera({ ...where, pitch }), GROUND, faces, 0)).toEqual([])
    expect(seenFaces(camera({ ...where, distance: 0, lens: 0.6 }), GROUND, faces, 0)).toEqual([])
  })

  test('keep the order of the faces', () => {
    const faces = subjectFaces(BICYCLE, 0)
    const seen = seenFaces(camera({ from: 45, distance: 6, lens: 3, turn: 0, pitch: -15, focal: 35 }), GROUND, faces, 0)
    expect(seen.map(({ face }) => face.id)).toEqual(['front', 'right', 'top'])
  })
})
