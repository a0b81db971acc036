/** Remembered offsets against the zone data themselves, asked each time (Temporal over the engine's IANA time zone database). */
import { Temporal } from 'temporal-polyfill'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { offsetOf } from '#core/time/zone-offset.ts'
import { EARLIEST_INSTANT, LATEST_INSTANT, formatClock, formatClockSeconds } from '#core/time/civil.ts'

const ZONES = Intl.supportedValuesOf('timeZone')
const anyZone = fc.constantFrom(...ZONES)
const anyInstant = fc.integer({ min: EARLIEST_INSTANT, max: LATEST_INSTANT })

function asked(instant: number, zone: string): Temporal.ZonedDateTime {
  return Temporal.Instant.fromEpochMilliseconds(instant).toZonedDateTimeISO(zone)
}

const two = (value: number): string => String(value).padStart(2, '0')

test('an offset is the zone’s own, whatever was asked before', () => {
  fc.assert(
    fc.property(anyZone, anyInstant, (zone, instant) => {
      expect(offsetOf(instant, zone)).toBe(asked(instant, zone).offsetNanoseconds / 1e6)
    }),
    { numRuns: 2_000 },
  )
})

test('about every change of the clocks it is right to the millisecond', () => {
  fc.assert(
    fc.property(anyZone, anyInstant, (zone, from) => {
      const change = asked(from, zone).getTimeZoneTransition('next')
      if (change === null) return
      const at = change.epochMilliseconds
      for (const instant of [at - 900_000, at - 1, at, at + 1, at + 900_000, at - 60_001])
        expect(offsetOf(instant, zone)).toBe(asked(instant, zone).offsetNanoseconds / 1e6)
    }),
    { numRuns: 600 },
  )
})

test('clock texts are those of the zone’s own reading', () => {
  fc.assert(
    fc.property(anyZone, anyInstant, (zone, instant) => {
      const { hour, minute, second, day } = asked(instant, zone)
      expect(formatClockSeconds(instant, zone)).toBe(`${two(hour)}:${two(minute)}:${two(second)}`)
      const nearest = asked(instant + 30_000, zone)
      const shown = nearest.day === day ? nearest : { hour, minute }
      expect(formatClock(instant, zone)).toBe(`${two(shown.hour)}:${two(shown.minute)}`)
    }),
    { numRuns: 2_000 },
  )
})

test('more spans than are remembered come out right all the same', () => {
  const instants = Array.from({ length: 5_000 }, (_, day) => EARLIEST_INSTANT + day * 86_400_000)
  const offsets = instants.map((instant) => offsetOf(instant, 'Europe/Berlin'))
  expect(offsets).toEqual(instants.map((instant) => asked(instant, 'Europe/Berlin').offsetNanoseconds / 1e6))
})

test('what is no zone and no instant is refused as ever', () => {
  expect(() => offsetOf(0, 'Nowhere/Land')).toThrow(RangeError)
  expect(() => offsetOf(Number.NaN, 'UTC')).toThrow('finite')
})
