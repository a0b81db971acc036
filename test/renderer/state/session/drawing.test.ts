/** Drawing point by point: what is set can be taken back, what can't be kept is refused and goes on. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { MOST_DRAWN_POINTS, shapeFault } from '#core/record/drawn-ground.ts'
import {
  type Drawing,
  beginDrawing,
  endDrawing,
  withPointSet,
  withPointTakenBack,
} from '#renderer/state/session/drawing.ts'

const HERE: LatLon = { lat: 46.4, lon: -33.6 }
const at = (bearing: number, metres: number): LatLon => destination(HERE, bearing, metres)

function drawn(form: 'line' | 'area', ...points: LatLon[]): Drawing {
  return points.reduce(withPointSet, beginDrawing('stopping', form))
}

describe('a drawing', () => {
  it('ends as a line of what was set, in order', () => {
    const end = endDrawing(drawn('line', HERE, at(0, 10), at(90, 10)))
    expect(end).toEqual({ ended: true, shape: { form: 'line', points: [HERE, at(0, 10), at(90, 10)] } })
  })

  it('sets no point twice in one place, as the second press of a double one would', () => {
    expect(drawn('line', HERE, at(0, 10), at(0, 10)).points).toHaveLength(2)
  })

  it('that began and ended in one corner is an area without that corner twice', () => {
    const end = endDrawing(drawn('area', HERE, at(0, 10), at(90, 10), HERE))
    expect(end.ended ? end.shape.points : []).toEqual([HERE, at(0, 10), at(90, 10)])
  })

  it.each([
    ['an empty line', drawn('line'), 'too-few'],
    ['a line of one point', drawn('line', HERE), 'too-few'],
    ['an area of two corners', drawn('area', HERE, at(0, 10)), 'too-few'],
    ['an area in one line', drawn('area', HERE, at(0, 10), at(0, 30)), 'no-size'],
    ['a bow tie', drawn('area', at(0, 50), at(180, 50), at(90, 50), at(270, 50)), 'crosses-itself'],
  ])('refuses to end as %s and keeps its points', (_, drawing, refusal) => {
    expect(endDrawing(drawing)).toEqual({ ended: false, drawing: { ...drawing, refusal } })
  })

  it('forgets the refusal with the next change', () => {
    const end = endDrawing(drawn('line', HERE))
    if (end.ended) throw new Error('one point is no line')
    expect(withPointSet(end.drawing, at(0, 5)).refusal).toBeNull()
    expect(withPointTakenBack(end.drawing)).toEqual(beginDrawing('stopping', 'line'))
  })

  it('takes no more points than can be stored', () => {
    const full: Drawing = {
      ...beginDrawing('keep-out', 'line'),
      points: Array.from({ length: MOST_DRAWN_POINTS }, (_, n) => at(0, n)),
    }
    const more = withPointSet(full, at(90, 1))
    expect(more.points).toHaveLength(MOST_DRAWN_POINTS)
    expect(more.refusal).toBe('too-many')
  })

  it('whatever is set and taken back, holds what is left, and ends only as a shape without fault', () => {
    const steps = fc.array(
      fc.oneof(
        fc.record({
          bearing: fc.double({ min: 0, max: 359, noNaN: true }),
          reach: fc.double({ min: 1, max: 500, noNaN: true }),
        }),
        fc.constant('back' as const),
      ),
      { maxLength: 25 },
    )
    fc.assert(
      fc.property(steps, fc.constantFrom('line' as const, 'area' as const), (list, form) => {
        let drawing = beginDrawing('stopping', form)
        const left: LatLon[] = []
        for (const step of list) {
          if (step === 'back') {
            drawing = withPointTakenBack(drawing)
            left.pop()
          } else {
            const place = at(step.bearing, step.reach)
            drawing = withPointSet(drawing, place)
            const last = left.at(-1)
            if (last?.lat !== place.lat || last.lon !== place.lon) left.push(place)
          }
        }
        expect(drawing.points).toEqual(left)
        const end = endDrawing(drawing)
        if (end.ended) expect(shapeFault(end.shape)).toBeNull()
        else expect(end.drawing.points).toEqual(left)
      }),
    )
  })
})
