/** A plan: which landmark it looks at, and the levels its things stand at, by whatever of them is known. */
import { assert, double, option, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type KnownLevel,
  footLevel,
  footOfRead,
  knownLevel,
  landmarkOf,
  levelsFrom,
  levelsOf,
  planOf,
} from '#core/plan/plan.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { bridgeAt, examplePlan } from '#test/help/plans.ts'
import { groundOf } from '#test/help/terrain.ts'

const AT = { lat: 46.9, lon: 10.3 }
const GROUND = { terrain: groundOf(41, 10, () => 900, AT), pins: [] }
const NOTHING = { terrain: null, pins: [] }

const measured = (level: number): KnownLevel => ({ level, from: 'measured' })
const UNKNOWN: KnownLevel = { level: null, from: 'assumed' }

function upright(kind: 'upright' | 'summit', baseElevation: number | null): Landmark {
  const rest = { name: '', at: AT, height: 60, width: 10, baseSlope: null, baseAspect: null }
  return { id: 'one', kind, baseElevation, ...rest }
}

describe('the landmark of a spot', () => {
  const landmarks = [upright('upright', 1), { ...upright('upright', 2), id: 'other' }]

  it('is the one of the shoot that it names, or none', () => {
    expect(landmarkOf({ landmarks }, { landmarkId: 'other' })).toBe(landmarks[1])
    expect(landmarkOf({ landmarks }, { landmarkId: 'one' })).toBe(landmarks[0])
    expect(landmarkOf({ landmarks }, { landmarkId: null })).toBeNull()
    expect(landmarkOf({ landmarks }, { landmarkId: 'gone' })).toBeNull()
  })

  it('comes into the plan with the elevations and heights given', () => {
    const { shoot, spot } = examplePlan()
    const pins = [{ at: AT, height: 1, step: 1, source: 'x', sea: false }]
    expect(planOf(shoot, spot, GROUND.terrain, pins)).toEqual({
      shoot,
      spot,
      landmark: shoot.landmarks[0],
      terrain: GROUND.terrain,
      pins,
    })
    expect(planOf(shoot, spot)).toMatchObject({ terrain: null, pins: [] })
  })
})

describe('a level', () => {
  it('is the measured one before the one read, and that before none', () => {
    expect(knownLevel(12, GROUND, AT)).toEqual({ level: 12, from: 'measured' })
    expect(knownLevel(0, GROUND, AT)).toEqual({ level: 0, from: 'measured' })
    expect(knownLevel(null, GROUND, AT)).toEqual({ level: 900, from: 'elevations' })
    expect(knownLevel(null, NOTHING, AT)).toEqual(UNKNOWN)
    expect(knownLevel(null, GROUND, null)).toEqual(UNKNOWN)
    // Far off the window.
    expect(knownLevel(null, GROUND, { lat: 40, lon: 10 })).toEqual(UNKNOWN)
  })

  it('of a landmark’s foot is below the top that is read at a summit, and the very ground under anything else', () => {
    expect(footLevel(upright('upright', null), GROUND)).toEqual({ level: 900, from: 'elevations' })
    expect(footLevel(upright('summit', null), GROUND)).toEqual({ level: 840, from: 'elevations' })
    expect(footOfRead(upright('summit', null), 100)).toBe(40)
    expect(footOfRead(bridgeAt(AT, 0, 5), 100)).toBe(100)
  })

  it('of a landmark’s foot is taken as it was measured, a summit’s too', () => {
    expect(footLevel(upright('upright', 5), GROUND)).toEqual({ level: 5, from: 'measured' })
    expect(footLevel(upright('summit', 5), GROUND)).toEqual({ level: 5, from: 'measured' })
  })

  it('of a foot without ground or landmark is unknown', () => {
    for (const kind of ['upright', 'summit'] as const) expect(footLevel(upright(kind, null), NOTHING)).toEqual(UNKNOWN)
    expect(footLevel(null, GROUND)).toEqual(UNKNOWN)
  })
})

describe('the levels of a plan', () => {
  const levels = (stands: number | null, stops: number | null, foot: number | null, landmark = true) => {
    const known = (level: number | null) => (level === null ? UNKNOWN : measured(level))
    const found = levelsFrom(known(stands), known(stops), known(foot), landmark)
    return [found.standpoint, found.stop, found.landmark, found.landmarkAssumed]
  }

  it('are as known where all are', () => {
    expect(levels(1, 2, 3)).toEqual([1, 2, 3, false])
    expect(levels(0, 0, 0)).toEqual([0, 0, 0, false])
  })

  it('are taken level with what is known where some are not', () => {
    expect(levels(1, null, 3)).toEqual([1, 1, 3, false])
    expect(levels(null, 2, 3)).toEqual([2, 2, 3, false])
    expect(levels(null, null, 3)).toEqual([3, 3, 3, true])
    expect(levels(1, 2, null)).toEqual([1, 2, 1, true])
    expect(levels(null, 2, null)).toEqual([2, 2, 2, true])
    expect(levels(null, null, null)).toEqual([0, 0, 0, true])
  })

  it('assume nothing of a landmark where there is none', () => {
    expect(levels(1, 2, null, false)).toEqual([1, 2, 1, false])
    expect(levels(null, null, null, false)).toEqual([0, 0, 0, false])
  })

  it('of a plan are assumed for a landmark alone that there is', () => {
    const assumed = (landmark: Landmark | null) => levelsOf(examplePlan({ at: AT, landmark })).landmarkAssumed
    expect([assumed(upright('upright', null)), assumed(upright('upright', 5)), assumed(null)]).toEqual([
      true,
      false,
      false,
    ])
  })

  it('keep whence each is known, and never take a known one for another', () => {
    const level = option(double({ min: -400, max: 8000, noNaN: true }))
    assert(
      property(level, level, level, (stands, stops, foot) => {
        const known = (value: number | null, from: KnownLevel['from']): KnownLevel =>
          value === null ? UNKNOWN : { level: value, from }
        const found = levelsFrom(known(stands, 'measured'), known(stops, 'elevations'), known(foot, 'measured'), true)
        expect(found.from).toEqual({
          standpoint: stands === null ? 'assumed' : 'measured',
          stop: stops === null ? 'assumed' : 'elevations',
          landmark: foot === null ? 'assumed' : 'measured',
        })
        if (stands !== null) expect(found.standpoint).toBe(stands)
        if (stops !== null) expect(found.stop).toBe(stops)
        if (foot !== null) expect(found.landmark).toBe(foot)
      }),
    )
  })
})
