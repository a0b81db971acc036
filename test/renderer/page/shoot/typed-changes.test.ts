/** What the forms of a shoot make of what is typed: nothing impossible is left behind, and nothing else is touched. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { USUAL_CROPS } from '#core/frame/crop.ts'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import { SENSOR_FORMATS, USUAL_SHUTTER } from '#core/optics/sensor.ts'
import {
  formatOf,
  hasCrop,
  hasUsualSize,
  ownCrops,
  pointBetween,
  resized,
  sizeAs,
  toggledCrop,
} from '#renderer/page/shoot/typed-changes.ts'
import { BICYCLE } from '#test/help/plans.ts'

describe('a subject made shorter', () => {
  const subject = {
    ...BICYCLE,
    features: [
      { name: 'lamp', behindFront: 0.2 },
      { name: 'saddle', behindFront: 1.6 },
    ],
  }
  test('keeps its named places on it', () => {
    const next = resized(subject, { length: 1 })
    expect(next.features).toEqual([
      { name: 'lamp', behindFront: 0.2 },
      { name: 'saddle', behindFront: 1 },
    ])
    expect([next.length, next.width, next.height, next.name]).toEqual([1, 0.65, 1.2, 'Cargo bicycle'])
  })

  test('by mistake, and longer again, has them where they were meant', () => {
    const short = resized(subject, { length: 0.1 })
    const longer = resized(short, { length: 1 }, subject.features)
    expect(longer.features.map(({ behindFront }) => behindFront)).toEqual([0.2, 1])
    expect(resized(longer, { length: 2.5 }, subject.features)).toEqual(subject)
  })

  test('or longer, wider, higher moves none of them', () => {
    expect(resized(subject, { length: 3 }).features).toEqual(subject.features)
    expect(resized(subject, { width: 0.1, height: 5 })).toEqual({ ...subject, width: 0.1, height: 5 })
  })
})

describe('a subject of another kind', () => {
  test('has that kind’s ordinary size', () => {
    const car = { ...BICYCLE, ...sizeAs(BICYCLE, 'car'), kind: 'car' as const }
    expect(hasUsualSize(car)).toBe(true)
    expect(sizeAs(car, 'cargo-bicycle')).toEqual({ length: 2.5, width: 0.65, height: 1.2 })
  })

  test('keeps what was typed, whatever comes first', () => {
    const typed = { ...BICYCLE, length: 5.61 }
    const { width, height } = sizeAs(BICYCLE, 'van')
    expect(sizeAs(typed, 'van')).toEqual({ length: 5.61, width, height })
    expect(hasUsualSize(typed)).toBe(false)
  })
})

describe('a sensor', () => {
  test('of usual sides has its format, of any other none', () => {
    const camera = (sensorWidth: number, sensorHeight: number) =>
      formatOf({ name: '', sensorWidth, sensorHeight, confusionDivisor: 1500, ...USUAL_SHUTTER })?.id
    for (const { id, width, height } of SENSOR_FORMATS) expect(camera(width, height)).toBe(id)
    expect(camera(36, 23.9)).toBeUndefined()
    expect(camera(35.9, 24)).toBeUndefined()
    expect(camera(24, 36)).toBeUndefined()
  })
})

describe('crops', () => {
  const OWN = { wide: 5, high: 7 }
  const square = { wide: 1, high: 1 }
  const wide = { wide: 16, high: 9 }

  test('ticked come in the usual order, one’s own after them', () => {
    expect(toggledCrop([wide, OWN], square)).toEqual([square, wide, OWN])
    expect(toggledCrop([square, wide, OWN], square)).toEqual([wide, OWN])
    expect(toggledCrop([], wide)).toEqual([wide])
  })

  test('ticked twice are as before', () => {
    fc.assert(
      fc.property(fc.subarray([...USUAL_CROPS]), fc.constantFrom(...USUAL_CROPS), (ticked, crop) => {
        const once = toggledCrop([...ticked, OWN], crop)
        expect(hasCrop(once, crop)).toBe(!hasCrop(ticked, crop))
        expect(toggledCrop(once, crop)).toEqual([...ticked, OWN])
      }),
    )
  })

  test('of one’s own are those that are no usual one', () => {
    expect(ownCrops([square, OWN, wide, { wide: 9, high: 17 }])).toEqual([OWN, { wide: 9, high: 17 }])
    expect(ownCrops(USUAL_CROPS)).toEqual([])
    // 16 : 9 and 9 : 16 are two.
    expect(hasCrop([wide], { wide: 9, high: 16 })).toBe(false)
  })
})

describe('a point added to a line', () => {
  const [one, other] = [
    { lat: 46.4, lon: -33.6 },
    { lat: 46.41, lon: -33.59 },
  ]
  test('lies halfway along its last stretch, and so changes nothing', () => {
    const middle = pointBetween([{ lat: 0, lon: 0 }, one, other]) ?? one
    const whole = geodesicDistance(one, other)
    expect(geodesicDistance(one, middle)).toBeCloseTo(whole / 2, 6)
    expect(geodesicDistance(middle, other)).toBeCloseTo(whole / 2, 6)
  })

  test('on a stretch of no length lies on it; without a stretch there is none', () => {
    expect(pointBetween([one, one])).toEqual(one)
    expect(pointBetween([one])).toBeNull()
    expect(pointBetween([])).toBeNull()
  })
})
