/** Everything stored comes back equal; what no record may hold is refused at the door and by the file itself. */
import * as fc from 'fast-check'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { changeShape } from '#app/contract/library.ts'
import { latLonShape, spotShape } from '#app/contract/records.ts'
import { HAZARDS, PERMISSION_STATES, SPOT_STATUSES } from '#core/record/spot.ts'
import { connect } from '#main/store/handle.ts'
import { saved, shootRecord, type SpotRecord, spotRecord } from '#test/help/library-records.ts'
import { openedLibrary, valueOf } from '#test/help/open-library.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'

// -0 is left out: JSON writes it as 0, which is the same number everywhere in the program.
function between(min: number, max: number): fc.Arbitrary<number> {
  return fc.double({ min, max, noNaN: true }).map((value) => (value === 0 ? 0 : value))
}

const place = fc
  .record({ lat: between(-90, 90), lon: between(-180, 180) })
  .filter((at) => latLonShape.safeParse(at).success)
const anyText = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 60 }),
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.constantFrom(
    '<img src=x onerror=alert(1)>',
    '"; DROP TABLE spot; --',
    '🚲🌉👩‍👩‍👧',
    'a'.repeat(10_000),
    '橋'.repeat(10_000),
  ),
)

const spots: fc.Arbitrary<SpotRecord> = fc
  .record({
    name: anyText,
    notes: anyText,
    whom: anyText,
    surface: anyText.map((text) => text.slice(0, 1_000)),
    hazardNote: anyText,
    status: fc.constantFrom(...SPOT_STATUSES),
    state: fc.constantFrom(...PERMISSION_STATES),
    hazards: fc.subarray([...HAZARDS]),
    stars: fc.integer({ min: 0, max: 5 }),
    rank: between(-1e12, 1e12),
    at: place,
    parking: fc.option(place),
    elevation: fc.option(between(-500, 9_000)),
    aperture: fc.option(between(0.5, 128)),
  })
  .map(({ name, notes, whom, surface, hazardNote, state, parking, elevation, aperture, at, ...others }) => {
    const base = spotRecord('spot', 'shoot', { at, ...others, name, notes, hazardNote })
    return {
      ...base,
      standpoint: { ...base.standpoint, elevation },
      shot: { ...base.shot, aperture },
      access: { parking, walkMinutes: null, surface },
      permission: { state, whom, until: null },
    }
  })

test('opens a shoot of an older version with figures beyond what can be, tells which, and saves it again', async () => {
  const { handlers } = await openedLibrary(temporaryFolder())
  const shoot = shootRecord('shoot', { refraction: 1 })
  const old = { ...shoot, subject: { ...shoot.subject, length: 1e-310 } }
  const spot = spotRecord('spot', 'shoot', { rank: 1e300 })
  // Past the door, as when the limits were wider.
  valueOf(await handlers['library.apply']({ changes: [saved(old), saved(spot)] }))
  const opened = valueOf(await handlers['library.open']({ shootId: 'shoot' }))
  expect(opened.shoot).toEqual({ ...old, revision: 1, refraction: 0.9, subject: { ...old.subject, length: 0.01 } })
  expect(opened.spots).toEqual([{ ...spot, revision: 1, rank: 1e12 }])
  expect(opened.mended?.map(({ field }) => field).toSorted()).toEqual(['rank', 'refraction', 'subject.length'])
  const again = [saved(opened.shoot, 1), ...opened.spots.map((one) => saved(one, 1))]
  expect(again.map((change) => changeShape.safeParse(change).success)).toEqual([true, true])
  valueOf(await handlers['library.apply']({ changes: again }))
  expect(valueOf(await handlers['library.open']({ shootId: 'shoot' }))).not.toHaveProperty('mended')
})

test('gives back every spot as it was put in', async () => {
  const { handlers } = await openedLibrary(temporaryFolder())
  await handlers['library.apply']({ changes: [saved(shootRecord('shoot'))] })
  let count = 0
  await fc.assert(
    fc.asyncProperty(spots, async (spot) => {
      count += 1
      const own = { ...spot, id: `spot-${count}`, revision: 1 }
      expect(changeShape.safeParse(saved(own)).success).toBe(true)
      valueOf(await handlers['library.apply']({ changes: [saved(own)] }))
      const opened = valueOf(await handlers['library.open']({ shootId: 'shoot' }))
      expect(opened.spots.find(({ id }) => id === own.id)).toEqual(own)
      expect(spotShape.parse(own)).toEqual(own)
    }),
    { numRuns: 60 },
  )
})

test('gives back the same after closing and opening again', async () => {
  const folder = temporaryFolder()
  const spot = spotRecord('s', 'a', { name: '橋の下 “ß” 🌉', notes: '<b>\u0000\ud800</b>\r\n', rank: 5e-324 })
  const first = await openedLibrary(folder)
  await first.handlers['library.apply']({ changes: [saved(shootRecord('a')), saved(spot)] })
  await first.close()
  const second = await openedLibrary(folder)
  const { spots: kept } = valueOf(await second.handlers['library.open']({ shootId: 'a' }))
  expect(kept).toEqual([{ ...spot, revision: 1 }])
})

describe('a place that is none', () => {
  const wrong = [
    ['latitude 91', 91, 0],
    ['swapped, latitude -157.4', -157.4, 1.87],
    ['longitude 180, which is stored as -180', 0, 180],
    ['not a number', Number.NaN, 0],
    ['no longitude', 0, Number.NaN],
  ] as const

  test.each(wrong)('is refused at the door: %s', (_, lat, lon) => {
    expect(changeShape.safeParse(saved(spotRecord('s', 'a', { at: { lat, lon } }))).success).toBe(false)
  })

  test.each(wrong)('is refused by the file itself: %s', async (_, lat, lon) => {
    const { handlers } = await openedLibrary(temporaryFolder())
    await handlers['library.apply']({ changes: [saved(shootRecord('a'))] })
    const answer = await handlers['library.apply']({ changes: [saved(spotRecord('s', 'a', { at: { lat, lon } }))] })
    expect(answer).toMatchObject({ ok: false, fault: { reason: 'invalid' } })
    expect(valueOf(await handlers['library.state']({})).spotCount).toBe(0)
  })
})

test('the file waits for the disk at every commit, checks references and keeps a log', async () => {
  const folder = temporaryFolder()
  await openedLibrary(folder)
  const connection = connect(join(folder, 'library.sqlite'), { readonly: false })
  // 2 is FULL; SQLite's documentation, PRAGMA synchronous.
  expect(['journal_mode', 'synchronous', 'foreign_keys'].map((name) => connection.pragma(name))).toEqual(['wal', 2, 1])
  connection.close()
})
