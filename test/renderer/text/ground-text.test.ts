/** The ground as words: what shows, what hides, the levels, direct sun from its first to its last minute. */
import { describe, expect, it } from 'vitest'
import type { SightReading } from '#core/plan/ground-reading.ts'
import type { GroundUnder, TiltFigure } from '#core/plan/ground-under.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { civilDayOf } from '#core/time/civil.ts'
import {
  differenceSentence,
  elevationHint,
  hiddenSentence,
  levelSourceAgainst,
  levelSourceText,
  lowerLineName,
  lightTimes,
  obstructionName,
  shownFigure,
  spanClock,
  subjectSightText,
} from '#renderer/text/ground-text.ts'
import { groundWords as say } from '#renderer/words/en-ground.ts'
import { words } from '#renderer/words/en.ts'
import { examplePlan } from '#test/help/plans.ts'

const AT = { lat: 46.9, lon: 10.3 }
const TOWER: Landmark = {
  id: 'tower',
  name: 'Tower',
  kind: 'upright',
  at: AT,
  height: 41,
  width: 6,
  baseElevation: 0,
  baseSlope: null,
  baseAspect: null,
}

function looking(landmark: Landmark, obstructions: Plan['shoot']['obstructions'] = []): Plan {
  return examplePlan({ landmark, shoot: { obstructions } })
}

function sight(parts: Partial<SightReading>): SightReading {
  return {
    distance: 900,
    height: 41,
    hidden: 0,
    share: 1,
    hiddenBy: null,
    ground: 'known',
    ...parts,
  }
}

const RISE = { at: AT, distance: 310, above: 3, obstruction: null }

function plain(text: string | null): string | undefined {
  return text?.replaceAll('\u{a0}', ' ')
}

describe('how much shows', () => {
  it('is all, nothing, a share, or a dash when unknown; never 100 % of what is partly hidden', () => {
    expect(shownFigure(null)).toBe('–')
    expect(shownFigure(1)).toBe(say.all)
    expect(shownFigure(0)).toBe(say.nothing)
    expect(plain(shownFigure(0.844))).toBe('84 %')
    expect(shownFigure(0.997)).toBe(say.nearlyAll)
    expect(plain(shownFigure(0.994))).toBe('99 %')
    expect(plain(shownFigure(0.004))).toBe('0.4 %')
  })
})

describe('what hides', () => {
  it('is the rise so far out, with what it hides from the foot up', () => {
    const said = hiddenSentence(looking(TOWER), sight({ hidden: 12, hiddenBy: RISE }), 0.7, 'metric')
    expect(plain(said)).toBe('The lower 12 m of 41 m are hidden by the rise 310 m out.')
  })

  it('hides all', () => {
    const said = hiddenSentence(looking(TOWER), sight({ hidden: 41, hiddenBy: RISE }), 0, 'imperial')
    expect(plain(said)).toBe('All 135 ft are hidden by the rise 1017 ft out.')
  })

  it('is told by name and height when it is trees or a wall, by number while it has no name', () => {
    const obstructions = [{ id: 'a', name: ' ', line: [AT, AT], height: 8 }]
    const by = { ...RISE, obstruction: 0 }
    const said = (name: string): string | undefined => {
      const plan = looking(
        TOWER,
        obstructions.map((obstruction) => ({ ...obstruction, name })),
      )
      return plain(hiddenSentence(plan, sight({ hidden: 12, hiddenBy: by }), 0.7, 'metric'))
    }
    expect(said('Poplars')).toBe('The lower 12 m of 41 m are hidden by “Poplars” (8 m high) 310 m out.')
    expect(said('')).toContain(`“${say.obstructions.unnamed(1)}”`)
    expect(obstructionName(obstructions, 0)).toBe(say.obstructions.unnamed(1))
  })

  it('of a bridge is told at its middle, of a summit of its upper part', () => {
    const bridge = examplePlan().landmark
    if (bridge === null) throw new Error('the example looks at a bridge')
    const hidden = sight({ hidden: 12, hiddenBy: RISE })
    expect(hiddenSentence(looking(bridge), hidden, 0.7, 'metric')).toMatch(/^At its middle the lower/u)
    expect(hiddenSentence(looking(bridge), sight({}), 0.7, 'metric')).toBe(say.middleShows)
    expect(hiddenSentence(looking(bridge), sight({}), 1, 'metric')).toBe(say.nothingHides)
    const summit: Landmark = { ...TOWER, kind: 'summit' }
    expect(hiddenSentence(looking(summit), hidden, 0.7, 'metric')).toMatch(/^Of its upper/u)
    expect(hiddenSentence(looking(summit), sight({}), 1, 'metric')).toBe(say.nothingHidesTop)
    expect(lowerLineName(looking(summit))).toBe(say.lineToUpper)
    expect(lowerLineName(looking(TOWER))).toBe(say.lineToFoot)
  })

  it('is unknown over unknown ground, not nothing', () => {
    expect(hiddenSentence(looking(TOWER), sight({ hidden: null, share: null }), null, 'metric')).toBe(say.unknownGround)
  })
})

describe('the subject', () => {
  it('shows whole, in part, not at all, or nobody knows', () => {
    const said = (parts: Partial<SightReading>): string | undefined =>
      plain(subjectSightText(looking(TOWER), sight({ height: 1.2, ...parts }), 'metric'))
    const by = { ...RISE, distance: 4 }
    expect(said({})).toBe(say.subjectWhole)
    expect(said({ hidden: 0.4, hiddenBy: by })).toBe('lower 0.4 m of 1.2 m hidden by the rise 4 m out')
    expect(said({ hidden: 1.2, hiddenBy: by })).toBe('hidden by the rise 4 m out')
    expect(said({ hidden: null })).toBeUndefined()
  })
})

describe('levels', () => {
  const read = (value: number): TiltFigure => ({ value, from: 'elevations', read: value })
  const under: GroundUnder = {
    elevation: 90,
    from: 'measured',
    read: 42,
    step: 20,
    source: null,
    sea: false,
    top: null,
    slope: read(12.4),
    aspect: read(135),
  }

  it('say where they come from', () => {
    expect(plain(levelSourceText({ ...under, from: 'elevations' }, 'metric'))).toBe('elevation data, grid 20 m')
    expect(levelSourceText(under, 'metric')).toBe('entered by you')
    expect(levelSourceText({ ...under, from: 'assumed' }, 'metric')).toBe('assumed level')
  })

  it('tell under their field what the elevations say, or that nobody knows', () => {
    expect(plain(elevationHint({ ...under, from: 'elevations' }, 'metric'))).toBe('Elevation data: 42 m')
    expect(plain(elevationHint(under, 'metric'))).toContain('Elevation data: 42 m. Clear the field')
    expect(elevationHint({ ...under, read: null }, 'metric')).toBe(words.answers.where.unknownHint)
    expect(elevationHint(undefined, 'metric')).toBe(words.answers.where.unknownHint)
  })

  it('of a summit tell its top, which is what the elevations have', () => {
    const horn: GroundUnder = {
      ...under,
      from: 'elevations',
      elevation: 2562,
      read: 2562,
      top: { elevation: 2962, read: 2962 },
    }
    expect(plain(levelSourceText(horn, 'metric'))).toMatch(/top at 2962 m \(elevation data, grid 20 m\)/u)
    expect(plain(elevationHint(horn, 'metric'))).toMatch(/2562 m.*2962 m/u)
    const entered: GroundUnder = { ...horn, from: 'measured', elevation: 1800, top: { elevation: 2200, read: 2962 } }
    expect(plain(levelSourceAgainst(entered, 'metric'))).toMatch(/^entered by you.*2200 m.*2962 m/u)
    expect(plain(differenceSentence('Horn', entered, 'metric'))).toMatch(/2200 m.*2962 m.*clear the base/u)
    expect(plain(elevationHint(entered, 'metric'))).toMatch(/2962 m.*2562 m.*Clear the field/u)
    expect(differenceSentence('Horn', horn, 'metric')).toBeNull()
  })

  it('of the sea say that its surface is assumed', () => {
    const shore: GroundUnder = { ...under, from: 'elevations', elevation: 0, read: 0, sea: true }
    expect(levelSourceText(shore, 'metric')).toMatch(/^assumed at sea level/u)
    expect(elevationHint(shore, 'metric')).toMatch(/^Assumed at sea level/u)
    expect(levelSourceText({ ...shore, from: 'measured' }, 'metric')).toBe('entered by you')
  })

  it('are asked about when measured far from what the elevations say, as a receiver’s height may be', () => {
    const said = differenceSentence('Standpoint', under, 'metric')
    expect(said).toContain('ellipsoid')
    expect(plain(said)).toMatch(/you entered 90 m.*42 m/u)
    expect(differenceSentence('Standpoint', { ...under, read: 85 }, 'metric')).toBeNull()
    expect(differenceSentence('Standpoint', { ...under, read: null }, 'metric')).toBeNull()
    expect(differenceSentence('Standpoint', { ...under, from: 'elevations' }, 'metric')).toBeNull()
  })
})

describe('direct sun', () => {
  const day = civilDayOf(Date.UTC(2026, 5, 14, 12), 'UTC')
  const at = (hour: number, minute: number, second = 0): number =>
    day.start + ((hour * 60 + minute) * 60 + second) * 1_000

  it('is told from its first to its last full minute', () => {
    const times = lightTimes([{ from: at(5, 1, 20), until: at(18, 45, 59) }], day, 'UTC')
    expect(times).toEqual({ first: '05:02', last: '18:45', instead: null, gaps: [], unsure: null })
  })

  it('names what lies behind the ground meanwhile, as long as it lasts', () => {
    const spans = [
      { from: at(5, 1), until: at(7, 30, 40) },
      { from: at(8, 2, 10), until: at(18, 45) },
    ]
    const [gap] = lightTimes(spans, day, 'UTC').gaps
    expect(gap === undefined ? null : spanClock(gap, 'UTC')).toBe('07:30–08:03')
  })

  it('never comes, lasts all day, or is unknown', () => {
    expect(lightTimes([], day, 'UTC').instead).toBe(say.light.never)
    expect(lightTimes([{ from: day.start, until: day.end }], day, 'UTC').instead).toBe(say.light.allDay)
    expect(lightTimes(null, day, 'UTC').instead).toBe(say.light.unknown)
  })

  it('that crosses midnight says so', () => {
    const spans = [
      { from: day.start, until: at(1, 0) },
      { from: at(3, 0), until: day.end },
    ]
    const times = lightTimes(spans, day, 'UTC')
    expect([times.first, times.last]).toEqual([say.light.fromMidnight, say.light.pastMidnight])
    expect(times.gaps).toHaveLength(1)
  })
})
