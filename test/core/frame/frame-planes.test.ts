/** The frame as four planes: they hold what the projection puts within the frame, and they tell how far off it a direction is. */
import { assert, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { framePlanes } from '#core/frame/frame-planes.ts'
import { projectLocal } from '#core/frame/projection.ts'
import { localFrame } from '#core/geo/local-frame.ts'
import { number } from '#test/help/arbitrary.ts'
import { viewWith } from '#test/help/views.ts'

const frame = localFrame({ lat: 47, lon: 8 }, 400)
const lens = (bearing: number, pitch: number, imageDistance: number) =>
  viewWith({ frame, bearing, pitch, imageDistance })

describe('the planes of the frame', () => {
  it('hold a point between them exactly where its image is within the frame', () => {
    let inside = 0
    assert(
      property(
        number(0, 359.9),
        number(-80, 80),
        number(10, 80),
        number(-50, 50),
        number(-50, 50),
        number(-50, 50),
        (bearing, pitch, image, east, north, up) => {
          const view = lens(bearing, pitch, image)
          const at = projectLocal(view, { east, north, up })
          const rooms = framePlanes(view).map((plane) => plane.east * east + plane.north * north + plane.up * up)
          if (rooms.some((room) => Math.abs(room) < 0.02)) return
          const within = at !== null && Math.abs(at.x) < 0.5 && Math.abs(at.y) < 0.5
          if (within) inside++
          expect(rooms.every((room) => room > 0)).toBe(within)
        },
      ),
      { numRuns: 3000 },
    )
    expect(inside).toBeGreaterThan(50)
  })

  it('lie half an angle of view off the axis, so that their distances are metres', () => {
    assert(
      property(number(0, 359.9), number(-80, 80), number(10, 400), (bearing, pitch, image) => {
        const view = lens(bearing, pitch, image)
        const planes = framePlanes(view)
        for (const plane of planes) expect(Math.hypot(plane.east, plane.north, plane.up)).toBeCloseTo(1, 12)
        // A point 100 m along the axis is 100 sin(half the angle) from each border's plane: pinhole, tan(half) = side / 2 v.
        const axis = {
          east: 100 * view.sinBearing * view.cosPitch,
          north: 100 * view.cosBearing * view.cosPitch,
          up: 100 * view.sinPitch,
        }
        const room = planes.map((plane) => plane.east * axis.east + plane.north * axis.north + plane.up * axis.up)
        const wide = 100 * Math.sin(Math.atan(18 / image))
        const high = 100 * Math.sin(Math.atan(12 / image))
        for (const [index, wanted] of [wide, wide, high, high].entries()) expect(room[index]).toBeCloseTo(wanted, 9)
      }),
    )
  })
})
