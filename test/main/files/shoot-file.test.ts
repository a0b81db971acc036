/** Shoot files: come back equal, and refuse what is cut short, newer, foreign or hostile with a sentence. */
import { describe, expect, test } from 'vitest'
import { done, failed } from '#core/result.ts'
import { SHOOT_FILE_LIMIT } from '#app/contract/files.ts'
import type { Change } from '#app/contract/library.ts'
import { changeShape } from '#app/contract/library.ts'
import { changesToAdd, readShootFile, type ShootFile, shootFileText } from '#main/files/shoot-file.ts'
import { shootFileHandlers } from '#main/files/shoot-calls.ts'
import { shootRecord, spotRecord } from '#test/help/library-records.ts'

const file: ShootFile = {
  shoot: shootRecord('shoot-a', {
    revision: 7,
    name: 'Ünïcode <b>&</b> 山 🚲\u202E',
    landmarks: [
      {
        id: 'tower',
        name: 'Tower',
        kind: 'upright',
        at: { lat: -35.4, lon: -20.2 },
        height: 30,
        width: 6,
        baseElevation: null,
        baseSlope: null,
        baseAspect: null,
      },
    ],
  }),
  spots: [
    spotRecord('spot-a', 'shoot-a', { revision: 3, landmarkId: 'tower' }),
    spotRecord('spot-b', 'shoot-a', { notes: 'x'.repeat(100_000) }),
  ],
}
const text = shootFileText(file)

function changed(change: (parsed: Record<string, never>) => void): string {
  const parsed = JSON.parse(text) as Record<string, never>
  change(parsed)
  return JSON.stringify(parsed)
}

const reasonOf = (given: string): string => {
  const read = readShootFile(given)
  return read.ok ? 'read' : read.fault.reason
}

describe('reading', () => {
  test('gives back what was written', () => {
    expect(readShootFile(text)).toEqual(done(file))
  })

  test('reads a file from before slopes were measured as one in which none was', () => {
    const older = JSON.stringify(JSON.parse(text), (key: string, value: unknown) =>
      ['slope', 'aspect', 'baseSlope', 'baseAspect'].includes(key) ? undefined : value,
    )
    expect(older).not.toContain('lope')
    expect(readShootFile(older)).toEqual(done(file))
  })

  test('reads obstructions from a file of version 1, which calls them screens', () => {
    const line = [
      { lat: -35.4, lon: -20.2 },
      { lat: -35.4, lon: -20.1 },
    ]
    const obstructions = [{ id: 'trees', name: 'Poplars', line, height: 12 }]
    const { obstructions: _none, ...shoot } = file.shoot
    const first = (screens: object): string =>
      JSON.stringify({ ...JSON.parse(text), version: 1, shoot: { ...shoot, ...screens } })
    expect(readShootFile(first({ screens: obstructions }))).toEqual(
      done({ ...file, shoot: { ...shoot, obstructions } }),
    )
    expect(readShootFile(first({}))).toEqual(done(file))
    expect(reasonOf(first({ screens: 'no list' }))).toBe('broken')
    expect(reasonOf(JSON.stringify({ ...JSON.parse(text), version: 1, shoot: null }))).toBe('broken')
  })

  test('takes a byte order mark and another layout', () => {
    expect(reasonOf(`\uFEFF${text}`)).toBe('read')
    expect(reasonOf(JSON.stringify(JSON.parse(text)))).toBe('read')
  })

  test('a file cut short at any place is told as broken, or as foreign when not even its first word is left', () => {
    const length = text.trimEnd().length
    for (let end = 0; end < length; end += Math.max(1, Math.floor(length / 400))) {
      const reason = reasonOf(text.slice(0, end))
      expect(['broken', 'not-a-shoot-file']).toContain(reason)
      if (end > 40) expect(reason).toBe('broken')
    }
  })

  test.each([3, 1000])('a file of version %i is told as newer, even when its body is of another form', (version) => {
    const newer = JSON.stringify({ format: 'standpoint-shoot', version, shoot: 'another form' })
    expect(readShootFile(newer)).toMatchObject({
      fault: { reason: 'newer', message: expect.stringContaining('Update') },
    })
  })

  test.each([
    '',
    'null',
    '[]',
    '7',
    '{}',
    '{"format":"other","version":1}',
    '{"format":"standpoint-shoot"}',
    '{"format":"standpoint-shoot","version":0}',
    '{"format":"standpoint-shoot","version":"1"}',
    '{"format":"standpoint-shoot","version":1.5}',
    '<html></html>',
    'GIF89a',
    '['.repeat(200_000),
    '{"type":"FeatureCollection","features":[]}',
  ])('%.40s is not a shoot file', (given) => {
    expect(reasonOf(given)).toBe('not-a-shoot-file')
  })

  test('a text beyond the limit is refused unread', () => {
    expect(reasonOf(' '.repeat(SHOOT_FILE_LIMIT + 1))).toBe('too-large')
  })

  test.each([
    ['no shoot', { format: 'standpoint-shoot', version: 1, spots: [] }],
    ['no spots', { format: 'standpoint-shoot', version: 1, shoot: file.shoot }],
  ])('a file with %s is broken', (_name, given) => {
    expect(reasonOf(JSON.stringify(given))).toBe('broken')
  })

  test.each([
    ['a latitude of 91', (spot: { stop: { at: { lat: number } } }) => void (spot.stop.at.lat = 91)],
    ['a longitude of 180', (spot: { stop: { at: { lon: number } } }) => void (spot.stop.at.lon = 180)],
    ['a heading of 360', (spot: { stop: { heading: number } }) => void (spot.stop.heading = 360)],
    ['a place that is no number', (spot: { stop: { at: { lat: unknown } } }) => void (spot.stop.at.lat = '1')],
    ['a status of its own', (spot: { status: string }) => void (spot.status = 'safe')],
    ['an unknown hazard', (spot: { hazards: string[] }) => void (spot.hazards = ['dragons'])],
  ])('a spot with %s is broken, and the sentence says where', (_name, change) => {
    const given = changed((parsed) => change((parsed as unknown as { spots: never[] }).spots[1] as never))
    const read = readShootFile(given)
    expect(read).toMatchObject({ fault: { reason: 'broken', message: expect.stringContaining('spots.1.') } })
  })

  test('a figure beyond what can be is brought to the nearest that can, and told', () => {
    const given = changed((parsed) => {
      const { shoot, spots } = parsed as unknown as {
        shoot: typeof file.shoot
        spots: { shot: { aperture: number } }[]
      }
      Object.assign(shoot, { refraction: 1, subject: { ...shoot.subject, height: 1e-310 } })
      Object.assign(spots[1]?.shot ?? {}, { aperture: 1e9 })
    })
    const read = readShootFile(given)
    if (!read.ok) throw new Error(read.fault.message)
    expect(read.value.shoot).toMatchObject({ refraction: 0.9, subject: { height: 0.01 } })
    expect(read.value.spots[1]?.shot.aperture).toBe(128)
    expect(read.value.mended?.map(({ field }) => field).toSorted()).toEqual([
      'shoot.refraction',
      'shoot.subject.height',
      'spots.1.shot.aperture',
    ])
  })

  test('extra fields, also hostile ones, do not come along', () => {
    const hostile = text.replace(
      '"shoot": {',
      '"__proto__": {"ok": true}, "shoot": {"__proto__": {"bad": 1}, "evil": "<script>",',
    )
    const read = readShootFile(hostile)
    if (!read.ok) throw new Error(read.fault.message)
    expect(read.value).toEqual(file)
    expect(Object.getPrototypeOf(read.value.shoot)).toBe(Object.prototype)
    expect(({} as Record<string, unknown>)['bad']).toBeUndefined()
  })
})

describe('adding', () => {
  let count = 0
  const makeId = (): string => `new-${(count += 1)}`

  test('makes every record new, under fresh ids, with references kept true', () => {
    count = 0
    const changes = changesToAdd(file, makeId)
    expect(changes.map((one) => [one.kind, one.id, one.before])).toEqual([
      ['shoot', 'new-1', null],
      ['spot', 'new-2', null],
      ['spot', 'new-3', null],
    ])
    for (const change of changes) expect(changeShape.safeParse(change).success).toBe(true)
    const [, first] = changes
    expect(first?.record).toMatchObject({ id: 'new-2', shootId: 'new-1', landmarkId: 'tower' })
  })

  test('a reference to a landmark or lens that the file does not hold becomes none', () => {
    const spot = spotRecord('spot-a', 'shoot-a', { landmarkId: 'elsewhere' })
    const lost = { ...file, spots: [{ ...spot, shot: { ...spot.shot, lensId: 'elsewhere' } }] }
    const record = changesToAdd(lost, makeId)[1]?.record
    expect(record).toMatchObject({ landmarkId: null, shot: { lensId: null } })
  })

  test('saves all in one batch and tells the new shoot', async () => {
    const batches: Change[][] = []
    const calls = shootFileHandlers(
      {
        'library.open': () => failed('gone', 'There is no such shoot.'),
        'library.apply': ({ changes }) => {
          batches.push(changes)
          return done({ version: 1, revisions: [] })
        },
      },
      makeId,
    )
    count = 0
    expect(await calls['shoot.import']({ text })).toEqual(done({ shootId: 'new-1', name: file.shoot.name, spots: 2 }))
    expect(batches.map((batch) => batch.length)).toEqual([3])
    expect(await calls['shoot.import']({ text: text.slice(0, 100) })).toMatchObject({
      ok: false,
      fault: { reason: 'broken' },
    })
    expect(batches).toHaveLength(1)
    expect(await calls['shoot.export']({ shootId: 'x' })).toMatchObject({ fault: { reason: 'gone' } })
  })
})
