/** A spot's card: how far, which lens, and what is still to be asked or watched for. */
import { describe, expect, test } from 'vitest'
import { assess } from '#core/plan/assess.ts'
import { figuresOf, hintOf } from '#renderer/panel/shelf/spot-text.ts'
import { words } from '#renderer/words/en.ts'
import { examplePlan } from '#test/help/plans.ts'

const plain = (text: string): string => text.replaceAll('\u{a0}', ' ')

describe('the figures', () => {
  const held = { spot: { hold: 'focal-length' }, shot: { focalLength: 35 } } as const
  test('are the way to the landmark and the lens', () => {
    expect(plain(figuresOf(assess(examplePlan(held)), 'metric'))).toBe('600 m · 35 mm')
    expect(plain(figuresOf(assess(examplePlan(held)), 'imperial'))).toBe('1969 ft · 35 mm')
  })

  test('are the way to the subject where there is no landmark', () => {
    expect(plain(figuresOf(assess(examplePlan({ ...held, landmark: null, distance: 7 })), 'metric'))).toBe(
      '7 m · 35 mm',
    )
  })

  test('leave out a lens that is not known', () => {
    expect(plain(figuresOf({ ...assess(examplePlan()), focalLength: null }, 'metric'))).toBe('600 m')
  })
})

describe('the hint', () => {
  const hint = (state: 'not-needed' | 'to-ask' | 'asked' | 'granted' | 'refused', ...hazards: ('rail' | 'water')[]) =>
    hintOf({ ...examplePlan().spot, permission: { state, whom: '', until: null }, hazards })
  const { permissionHints, hazards } = words.spot

  test('is of a permission that is open or refused, not of one that is granted or not needed', () => {
    expect(hint('to-ask')).toBe(permissionHints['to-ask'])
    expect(hint('asked')).toBe(permissionHints.asked)
    expect(hint('refused')).toBe(permissionHints.refused)
    for (const text of [hint('to-ask'), hint('asked'), hint('refused')]) expect(text).not.toBe('')
    expect([hint('not-needed'), hint('granted')]).toEqual(['', ''])
  })

  test('names the hazards, after the permission', () => {
    expect(hint('granted', 'rail', 'water')).toBe(`${hazards.rail} · ${hazards.water}`)
    expect(hint('refused', 'water')).toBe(`${permissionHints.refused} · ${hazards.water}`)
  })
})
