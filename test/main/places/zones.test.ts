/** Zones by exact boundaries: borders, islands, the open sea, the antimeridian, the poles, places of two clocks. */
import { existsSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { placeCalls } from '#app/contract/places.ts'
import { formatOffset, isZone, zoneName } from '#core/time/civil.ts'
import { type Result, done, failed } from '#core/result.ts'
import { ZONES_ATTRIBUTION, ZONES_FILE, makeZoneFinder } from '#main/places/zones.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'

/** As installed: the build copies the file from here. */
const DATA = resolve(import.meta.dirname, '../../../node_modules/geo-tz/data')
const finder = makeZoneFinder(DATA, async () => done(null))

async function zones(lat: number, lon: number): Promise<readonly string[]> {
  const answer = await finder.zones({ at: { lat, lon } })
  if (!answer.ok) throw new Error(answer.fault.message)
  expect(placeCalls['places.zones'].output.safeParse(answer.value).success).toBe(true)
  expect(answer.value.attribution).toBe(ZONES_ATTRIBUTION)
  expect(answer.value.zones.filter((zone) => !isZone(zone))).toEqual([])
  return answer.value.zones
}

describe('on land', () => {
  // Zones as the IANA time zone database's own comments and zone.tab place them.
  it.each([
    ['Little Diomede, four kilometres from the date line', 65.755, -168.93, 'America/Nome'],
    ['Saint-Pierre, French, off Newfoundland', 46.78, -56.18, 'America/Miquelon'],
    ['Tornio, on the river that is the border', 65.85, 24.15, 'Europe/Helsinki'],
    ['the Hopi land within the Navajo, which keeps no summer time', 35.795, -110.505, 'America/Phoenix'],
    ['Kiritimati', 1.87, -157.4, 'Pacific/Kiritimati'],
    ['Chatham', -43.95, -176.55, 'Pacific/Chatham'],
    ['Eucla', -31.68, 128.88, 'Australia/Eucla'],
    ['Kathmandu', 27.7172, 85.324, 'Asia/Kathmandu'],
    ['Apia', -13.83, -171.77, 'Pacific/Apia'],
    ['the South Pole, by its station', -90, 0, 'Antarctica/McMurdo'],
  ])('%s', async (_name, lat, lon, zone) => {
    expect(await zones(lat, lon)).toEqual([zone])
  })

  it('offers both clocks of Xinjiang, the official one first', async () => {
    expect(await zones(39.47, 75.99)).toEqual(['Asia/Shanghai', 'Asia/Urumqi'])
  })
})

describe('at sea', () => {
  it('names the zone behind UTC west of Greenwich, though its sign reads plus', async () => {
    expect(await zones(0, -30)).toEqual(['Etc/GMT+2'])
    expect(formatOffset(0, 'Etc/GMT+2')).toBe('UTC−2')
    expect(zoneName('Etc/GMT+2')).toBe('UTC−2, open sea')
  })

  it('gives one meridian one answer however it is written', async () => {
    expect(await zones(0, 180)).toEqual(await zones(0, -180))
    expect(await zones(-16.8, 180)).toEqual(await zones(-16.8, -180))
    expect(await zones(0, -540)).toEqual(await zones(0, 180))
    expect(await zones(46.78, -56.18 + 360)).toEqual(['America/Miquelon'])
  })

  it('takes a longitude beyond 180', async () => {
    expect(await zones(0, 180.02)).toEqual(['Etc/GMT+12'])
    expect(await zones(0, 179.98)).toEqual(['Etc/GMT-12'])
  })

  it('gives UTC at the North Pole, where all meridians meet', async () => {
    expect(await zones(90, 0)).toEqual(['UTC'])
    expect(await zones(90, -123)).toEqual(['UTC'])
  })
})

it('answers nothing while the boundaries are not known to be as packed, and says so where they are not', async () => {
  const check = Promise.withResolvers<Result<null, 'not-as-packed'>>()
  let answered = false
  const asked = makeZoneFinder(DATA, () => check.promise).zones({ at: { lat: 46.9, lon: 7.4 } })
  void asked.then(() => {
    answered = true
  })
  // Longer than an answer out of the same boundaries takes, which are loaded by now.
  await zones(46.9, 7.4)
  expect(answered).toBe(false)
  check.resolve(failed('not-as-packed', 'Install it again.'))
  expect(await asked).toEqual(failed('not-as-packed', 'Install it again.'))
})

it('says what is missing and what to do', async () => {
  const folder = temporaryFolder()
  const answer = await makeZoneFinder(folder, async () => done(null)).zones({ at: { lat: 0, lon: 0 } })
  expect(existsSync(join(folder, ZONES_FILE))).toBe(false)
  expect(answer).toEqual({
    ok: false,
    fault: {
      reason: 'no-zones',
      message: `The time zone boundaries are missing (${join(folder, ZONES_FILE)}). Choose the time zone by hand, or install Standpoint again.`,
    },
  })
})
