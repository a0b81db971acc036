/** Which zones are offered: as found, in use here, all others; fewer by typing. */
import { expect, test } from 'vitest'
import { zoneOffers } from '#renderer/panel/day-strip/zone-offers.ts'

const ALL = Intl.supportedValuesOf('timeZone')
const HERE = ['Asia/Shanghai', 'Asia/Urumqi']

test('as found comes first, then those in use at the place, none of them twice', () => {
  const { offers, more } = zoneOffers(HERE, ALL, '')
  expect(offers.slice(0, 3)).toEqual([
    { zone: null, inUse: false },
    { zone: 'Asia/Shanghai', inUse: true },
    { zone: 'Asia/Urumqi', inUse: true },
  ])
  const zones = offers.map(({ zone }) => zone)
  expect(new Set(zones).size).toBe(zones.length)
  expect(more).toBeGreaterThan(300)
})

test.each([
  ['berlin', 'Europe/Berlin'],
  ['New York', 'America/New_York'],
  ['lord_howe', 'Australia/Lord_Howe'],
  ['Port-au', 'America/Port-au-Prince'],
])('“%s” finds %s first', (typed, zone) => {
  expect(zoneOffers([], ALL, typed).offers[0]?.zone).toBe(zone)
})

test('nothing is offered for what is no zone', () => {
  expect(zoneOffers(HERE, ALL, 'Atlantis')).toEqual({ offers: [], more: 0 })
})
