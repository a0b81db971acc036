/** What the sheet says in words: settings, the day of sun and moon, how far off one may be, the file's name, the code to scan. */
import { describe, expect, test } from 'vitest'
import type { MoonDay, SunDay } from '#core/light/day-events.ts'
import type { Crop } from '#core/frame/crop.ts'
import { assess } from '#core/plan/assess.ts'
import type { Assessment } from '#core/plan/assess.ts'
import { qrPath } from '#renderer/page/sheet/qr-code.tsx'
import { fileNameOf } from '#renderer/host/download.ts'
import { dayLight } from '#core/plan/day-light.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { lightRows, moonDayText, sunDayText, zoneText } from '#renderer/page/sheet/sheet-light.tsx'
import { accessText, permissionTexts } from '#renderer/page/sheet/access-texts.ts'
import { settingRows } from '#renderer/page/sheet/sheet-settings.tsx'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { type PlanParts, ZOOM, examplePlan } from '#test/help/plans.ts'

const at = (hour: number, minute = 0): number => Date.UTC(2026, 5, 14, hour, minute)

function settings(
  parts: PlanParts = {},
  change: (found: Assessment) => Assessment = (found) => found,
  crop: Crop | null = null,
) {
  const plan = examplePlan(parts)
  const rows = settingRows({ plan, assessment: change(assess(plan)), units: 'metric', crop })
  return new Map(rows.map(([name, value]) => [name, value.replaceAll('\u{a0}', ' ')]))
}

/** The focal length stays as given, and the fills follow. */
const HELD: PlanParts = { spot: { hold: 'focal-length' } }

describe('what to set', () => {
  test('stands in the order in which one sets a camera up', () => {
    expect([...settings().keys()]).toEqual([
      sheetWords.lens,
      sheetWords.focal,
      sheetWords.aperture,
      sheetWords.focus,
      sheetWords.sharp,
      sheetWords.exposure,
      sheetWords.held,
      sheetWords.camera,
      sheetWords.subjectFills,
      sheetWords.landmarkFills,
    ])
    expect([...settings({ landmark: null }).keys()]).not.toContain(sheetWords.landmarkFills)
  })

  test('names the lens, and says so when there is none', () => {
    expect(settings().get(sheetWords.lens)).toBe(ZOOM.name)
    expect(settings({ lenses: [] }).get(sheetWords.lens)).toBe(sheetWords.noLens)
    expect(settings({ lenses: [{ ...ZOOM, name: ' ' }] }).get(sheetWords.lens)).toMatch(/^\d+–\d+ mm f\/\d/u)
    expect(settings({}, (found) => ({ ...found, lens: null })).get(sheetWords.lens)).toBe(sheetWords.unknown)
  })

  test('tells focal length, how the frame is held, and the crop where one is chosen', () => {
    const lying = settings({ ...HELD, shot: { focalLength: 35 } })
    expect(lying.get(sheetWords.focal)).toBe('35 mm')
    expect(lying.get(sheetWords.held)).toBe('landscape, whole frame')
    const upright = settings({ ...HELD, shot: { focalLength: 35, orientation: 'upright' } })
    expect([upright.get(sheetWords.focal), upright.get(sheetWords.held)]).toEqual(['35 mm', 'portrait, whole frame'])
    const cropped = settings({}, (found) => found, { wide: 16, high: 9 })
    expect(cropped.get(sheetWords.held)).toBe('landscape, crop 16:9')
    expect(settings({}, (found) => ({ ...found, focalLength: null })).get(sheetWords.focal)).toBe(sheetWords.unknown)
  })

  test('says of what nothing is known where nothing is framed, and leaves no row blank', () => {
    const none = settings({}, (found) => ({ ...found, sharp: null, view: null, subject: null, landmark: null }))
    const { aperture, focus, sharp, camera, subjectFills, landmarkFills } = sheetWords
    for (const name of [aperture, focus, sharp, camera, subjectFills, landmarkFills])
      expect(none.get(name), name).toBe(sheetWords.unknown)
    for (const [name, value] of none) expect(value, name).not.toMatch(/NaN|null|undefined|^\s*$/u)
  })

  test('expects an exposure for the aperture taken, and says so where none is published', () => {
    const told = (seconds: number | null): string | undefined =>
      settings({ ...HELD, shot: { focalLength: 35, aperture: 8 } }, (found) => ({
        ...found,
        light: { ...found.light, exposure: { ...found.light.exposure, seconds } },
      })).get(sheetWords.exposure)
    expect(told(1 / 250)).toMatch(/^1\/250 s at f\/8, ISO \d+ \(.+; meter it\)$/u)
    expect(told(null)).toBe(lightWords.estimate.unknown)
  })

  test('focuses where it was asked to', () => {
    const focus = (on: 'near' | 'feature') =>
      settings({ shot: { focus: { on, behindFront: 0.6 } } }).get(sheetWords.focus)
    expect(focus('near')).toContain(sheetWords.focusOn.near)
    expect(focus('feature')).toContain('0.6 m behind the front')
  })

  test('is sharp from a distance to another, or to infinity', () => {
    expect(settings({ ...HELD, distance: 5, shot: { focalLength: 50, aperture: 5.6 } }).get(sheetWords.sharp)).toMatch(
      / m to [\d.]+ m$/,
    )
    expect(settings({ ...HELD, distance: 9, shot: { focalLength: 24, aperture: 16 } }).get(sheetWords.sharp)).toMatch(
      / m to infinity$/,
    )
  })

  test.each([
    [0.04, 'level'],
    [-0.04, 'level'],
    [3.26, 'tilted 3.3° up'],
    [-3.26, 'tilted 3.3° down'],
  ])('a pitch of %d degrees is %s', (pitch, text) => {
    const held = settings({}, (found) => ({
      ...found,
      view: found.view === null ? null : { ...found.view, pitch, bearing: 40 },
    }))
    // In the middle of the South Atlantic the needle points well off: the magnetic bearing is another one.
    const [, magnetic, tilt] =
      /^040\.0° true \((\d{3}\.\d)° magnetic\), (.+)$/u.exec(held.get(sheetWords.camera) ?? '') ?? []
    expect(tilt).toBe(text)
    expect(Math.abs(Number(magnetic) - 40)).toBeGreaterThan(1)
  })
})

describe('the sun’s day', () => {
  const twilights = [
    { kind: 'nautical', side: 'dawn', instant: at(3) },
    { kind: 'civil', side: 'dawn', instant: at(4) },
    { kind: 'civil', side: 'dusk', instant: at(21) },
  ] as const
  const day = (part: Partial<SunDay>): string[] =>
    sunDayText({ state: 'rises-and-sets', rise: [], set: [], twilights: [], ...part } as unknown as SunDay, 'UTC')

  test('runs from first light to last light', () => {
    expect(day({ rise: [at(4, 41)], set: [at(20, 34)], twilights })).toEqual([
      sheetWords.light.dawn('04:00'),
      sheetWords.light.sunTimes('04:41', '20:34'),
      sheetWords.light.dusk('21:00'),
    ])
  })

  test('that sets before it rises tells both apart, and one that only rises tells that', () => {
    expect(day({ rise: [at(23)], set: [at(1)] })).toEqual([
      sheetWords.light.rises('23:00'),
      sheetWords.light.sets('01:00'),
    ])
    expect(day({ rise: [at(1), at(23)], set: [at(20)] })).toEqual([
      sheetWords.light.rises('01:00, 23:00'),
      sheetWords.light.sets('20:00'),
    ])
    expect(day({ rise: [at(2)] })).toEqual([sheetWords.light.rises('02:00')])
  })

  test('without rise and set says whether it is up or down', () => {
    expect(day({ state: 'up-all-day' })).toEqual([sheetWords.light.upAllDay])
    expect(day({ state: 'down-all-day' })).toEqual([sheetWords.light.downAllDay])
  })
})

test('the moon’s day: up, down, or what it does', () => {
  const day = (part: Partial<MoonDay>): string[] =>
    moonDayText({ state: 'rises-and-sets', rise: [], set: [], ...part } as unknown as MoonDay, 'UTC')
  expect(day({ state: 'up-all-day' })).toEqual([sheetWords.light.moonUp])
  expect(day({ state: 'down-all-day' })).toEqual([sheetWords.light.moonDown])
  expect(day({ rise: [at(22, 5)] })).toEqual([sheetWords.light.moonRises('22:05')])
  expect(day({ rise: [at(22)], set: [at(3)] })).toEqual([
    sheetWords.light.moonRises('22:00'),
    sheetWords.light.moonSets('03:00'),
  ])
})

describe('the name of a saved file', () => {
  test.each([
    ['Track below Hallow Brae', 'Track below Hallow Brae.html'],
    ['a/b\\c:d*e?f"g<h>i|j', 'a b c d e f g h i j.html'],
    ['  ../../etc\u{0}\n ', '.. .. etc.html'],
    ['', 'Location sheet.html'],
    [' / ', 'Location sheet.html'],
    ['灯台 🚲', '灯台 🚲.html'],
  ])('of %j is %j', (title, name) => {
    expect(fileNameOf(title, '.html')).toBe(name)
  })

  test('is no longer than a disk takes, and ends in no space', () => {
    const name = fileNameOf(`${'x'.repeat(79)} ${'y'.repeat(300)}`, '.html')
    expect(name).toBe(`${'x'.repeat(79)}.html`)
  })
})

test('a code to scan has its quiet zone and the three finders of ISO/IEC 18004', () => {
  const { path, size } = qrPath('geo:46.402969,-33.594539')
  const dark = new Set([...path.matchAll(/M(\d+),(\d+)h1v1h-1z/gu)].map(([, x, y]) => `${x},${y}`))
  const modules = size - 8
  expect((modules - 17) % 4).toBe(0)
  const at = (x: number, y: number): boolean => dark.has(`${x + 4},${y + 4}`)
  // A finder: a dark ring of 7, a light one of 5, a dark middle of 3.
  for (const [left, top] of [
    [0, 0],
    [modules - 7, 0],
    [0, modules - 7],
  ] as const) {
    for (let y = 0; y < 7; y++)
      for (let x = 0; x < 7; x++) {
        const ring = Math.max(Math.abs(x - 3), Math.abs(y - 3))
        expect(at(left + x, top + y), `${left + x} ${top + y}`).toBe(ring !== 2)
      }
  }
  for (const spot of dark) {
    const [x = 0, y = 0] = spot.split(',').map(Number)
    expect(Math.min(x, y)).toBeGreaterThanOrEqual(4)
    expect(Math.max(x, y)).toBeLessThan(size - 4)
  }
})

test('the zone is told by offset and name, and by its name alone where that is its offset', () => {
  expect(zoneText(at(12), 'Etc/GMT+2')).toBe('UTC−2, open sea')
  expect(zoneText(at(12), 'Europe/London')).toBe('UTC+1, Europe/London')
})

test('sun and moon are told by height and true bearing, the moon with its light', () => {
  const plan = examplePlan({ at: { lat: 46.9, lon: 10.3 } })
  const found = assess(plan)
  const told = (up: number): string => {
    const body = { ...found.light.sun, azimuth: 40, apparent: up, altitude: up, behindGround: up > 0 }
    const moon = {
      ...found.light.moon,
      ...body,
      behindGround: false,
      phase: { ...found.light.moon.phase, lit: 0.5, waxing: true },
    }
    const assessment = { ...found, light: { ...found.light, sun: body, moon } }
    const rows = lightRows({ plan, assessment, daylight: dayLight(plan, found, 'UTC'), units: 'metric' })
    return (rows.find(([title]) => title === sheetWords.light.bodies)?.[1] ?? '').replaceAll('\u{a0}', ' ')
  }
  expect(told(12.5)).toBe(
    'sun 12.5° high at 040.0° true, behind the ground · moon 12.5° high at 040.0° true, 50 % lit, waxing',
  )
  expect(told(-3)).toBe(
    'sun 3.0° below the horizon at 040.0° true · moon 3.0° below the horizon at 040.0° true, 50 % lit, waxing',
  )
})

describe('access and permission', () => {
  const nothing = { parking: null, walkMinutes: null, surface: ' ' }
  test('say what nobody noted', () => {
    expect(accessText(nothing)).toBe('Walk not noted, surface not noted, parking not noted.')
    expect(accessText({ parking: { lat: 1, lon: 2 }, walkMinutes: 0, surface: 'gravel.' })).toBe(
      '0 min on foot, gravel.',
    )
    expect(permissionTexts({ state: 'to-ask', whom: '', until: null })).toEqual([
      'contact not noted',
      'noted as to ask',
    ])
    expect(permissionTexts({ state: 'granted', whom: 'The farm', until: null })).toEqual([
      'The farm',
      'noted as granted',
      'last day not noted',
    ])
    expect(permissionTexts({ state: 'granted', whom: 'The farm', until: '2027-06-30' }).at(-1)).toBe(
      'valid until 30 Jun 2027',
    )
  })

  test('ask nobody where none is to be asked, and allow nothing themselves', () => {
    expect(permissionTexts({ state: 'not-needed', whom: '', until: null })).toEqual(['noted as not needed'])
  })
})

test('by night the moment says once, and as words of their own, that the sun is down', () => {
  const made = examplePlan({ at: { lat: 46.9, lon: 10.3 } })
  const atHour = (hour: number): string => {
    const plan = { ...made, spot: { ...made.spot, when: Date.UTC(2026, 5, 14, hour) } }
    const assessment = assess(plan)
    const rows = lightRows({ plan, assessment, daylight: dayLight(plan, assessment, 'UTC'), units: 'metric' })
    return rows.find(([title]) => title === sheetWords.light.atTime)?.[1] ?? ''
  }
  expect(
    atHour(0)
      .split(' · ')
      .filter((part) => part.includes(lightWords.sunDown)),
  ).toEqual([lightWords.sunDown])
  expect(atHour(10)).not.toContain(lightWords.sunDown)
  expect(atHour(10)).toContain(lightWords.shadow.toLowerCase())
})
