/** The skylines of the board: exact for where things stand, kept while a hand has moved them only a little. */
import { describe, expect, it } from 'vitest'
import { placeOnGrid } from '#core/ground/elevation-grid.ts'
import { obstructedSkyline } from '#core/ground/obstructed-skyline.ts'
import { skyline } from '#core/ground/skyline.ts'
import { skylinesAround } from '#core/plan/kept-skylines.ts'
import type { SkyEyes } from '#core/plan/plan-skylines.ts'
import { mountains } from '#test/help/terrain.ts'

const grid = mountains(121, 30)
const eye = (east: number, north: number) => ({ east, north, elevation: 3_000 })
const EYES: SkyEyes = { subject: eye(0, 0), landmark: eye(400, 300), lens: eye(-10, 0) }
const start = skylinesAround(grid, 0.13, EYES, null, 0)

describe('skylines', () => {
  it('are those of each eye', () => {
    expect(start.found.lens?.altitudes).toEqual(skyline(grid, eye(-10, 0), 0.13).altitudes)
    // Among the hills: from high above them all see the sea's horizon alike.
    const among = (east: number, north: number) => ({ east, north, elevation: 900 })
    const eyes = { subject: among(0, 0), landmark: among(400, 300), lens: among(-10, 0) }
    const { subject, landmark } = skylinesAround(grid, 0.13, eyes, null, 0).found
    expect(subject?.altitudes).toEqual(skyline(grid, among(0, 0), 0.13).altitudes)
    expect(landmark?.altitudes).toEqual(skyline(grid, among(400, 300), 0.13).altitudes)
    expect(landmark?.altitudes).not.toEqual(subject?.altitudes)
  })

  it('stay the same object for as long as nothing has moved', () => {
    expect(skylinesAround(grid, 0.13, { ...EYES, subject: eye(0, 0) }, start, 0)).toBe(start)
  })

  it('under the hand stay until it is farther off than may matter, then only of what moved', () => {
    const near = skylinesAround(grid, 0.13, { ...EYES, lens: eye(10, 0) }, start, 25)
    expect(near).toBe(start)
    const far = skylinesAround(grid, 0.13, { ...EYES, lens: eye(20, 0) }, start, 25)
    expect(far.found.subject).toBe(start.found.subject)
    expect(far.found.lens?.altitudes).toEqual(skyline(grid, eye(20, 0), 0.13).altitudes)
  })

  it('creep along with many small moves: measured from where each was last looked for', () => {
    let around = start
    for (const step of [1, 2, 3]) {
      const eyes = { ...EYES, subject: eye(step * 30, 0), lens: eye(-10 + step * 10, 0) }
      around = skylinesAround(grid, 0.13, eyes, around, 25)
      // The subject is looked for at every step, the lens only when it is 30 m from where it was.
      expect(around.found.lens === start.found.lens).toBe(step < 3)
    }
  })

  it('are exact again when the hand lets go, though it moved them by a step', () => {
    const near = skylinesAround(grid, 0.13, { ...EYES, lens: eye(10, 0) }, start, 25)
    const released = skylinesAround(grid, 0.13, { ...EYES, lens: eye(10, 0) }, near, 0)
    expect(released.found.lens?.altitudes).toEqual(skyline(grid, eye(10, 0), 0.13).altitudes)
    expect(released.found.subject).toBe(start.found.subject)
  })

  it('of another ground, or of other air, are all looked for again', () => {
    expect(skylinesAround(mountains(121, 30, 2), 0.13, EYES, start, 25).found.subject).not.toBe(start.found.subject)
    expect(skylinesAround(grid, 0.2, EYES, start, 25).found.subject).not.toBe(start.found.subject)
  })

  it('of a landmark that is gone are gone', () => {
    expect(skylinesAround(grid, 0.13, { ...EYES, landmark: null }, start, 25).found.landmark).toBeNull()
  })

  it('have trees and walls on them from where each eye is, though the ground is kept', () => {
    const obstructions = [{ line: [placeOnGrid(grid, -50, 20), placeOnGrid(grid, 50, 20)], height: 400 }]
    const from = (eyes: SkyEyes, thing: 'subject' | 'lens') => {
      const at = eyes[thing]
      if (at === null) throw new Error('the eyes are all there')
      return obstructedSkyline(skyline(grid, at, 0.13), grid, at, 0.13, obstructions).altitudes
    }
    const low = { subject: { ...eye(0, 0), elevation: 900 }, landmark: null, lens: { ...eye(-10, 0), elevation: 900 } }
    const walled = skylinesAround(grid, 0.13, low, null, 0, obstructions)
    expect(walled.found.lens?.altitudes).toEqual(from(low, 'lens'))
    expect(walled.found.lens?.altitudes).not.toEqual(walled.ground.lens?.altitudes)
    expect(skylinesAround(grid, 0.13, low, walled, 0, obstructions)).toBe(walled)
    const moved = { ...low, lens: { ...eye(5, 0), elevation: 900 } }
    const dragged = skylinesAround(grid, 0.13, moved, walled, 25, obstructions)
    expect(dragged.ground.lens).toBe(walled.ground.lens)
    expect(dragged.found.lens?.altitudes).not.toEqual(walled.found.lens?.altitudes)
    expect(dragged.found.subject).toBe(walled.found.subject)
    const released = skylinesAround(grid, 0.13, moved, dragged, 0, obstructions)
    expect(released.found.lens?.altitudes).toEqual(from(moved, 'lens'))
    const felled = skylinesAround(grid, 0.13, moved, released, 0, [])
    expect(felled.found.lens).toBe(released.ground.lens)
  })
})
