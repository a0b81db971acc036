/** The conditions offered on the strip: none that is set already, none that another one makes impossible. */
import { describe, expect, test } from 'vitest'
import { NO_WISHES, type LightWishes } from '#core/light/light-wish.ts'
import { newLandmark, newShoot } from '#core/record/new-records.ts'
import { lightOffers } from '#renderer/panel/day-strip/light-offers.ts'
import { chipWords } from '#renderer/words/en-light-chips.ts'

const SHOOT = newShoot('shoot', 'lens', 0)
const TOWER = newLandmark('tower', 'upright', { lat: 47, lon: 9 })

function offers(light: Partial<LightWishes>, landmark: typeof TOWER | null = TOWER) {
  return lightOffers({ ...SHOOT, light: { ...NO_WISHES, ...light } }, landmark)
}

function taken(light: Partial<LightWishes>, text: string): LightWishes | undefined {
  return offers(light).find((offer) => offer.text === text)?.light
}

describe('what is offered', () => {
  test('keeps what is set', () => {
    for (const { light } of offers({ moonUp: true })) expect(light.moonUp).toBe(true)
  })

  test('has nothing of a kind that is set, nor of a landmark where there is none', () => {
    const texts = (light: Partial<LightWishes>, landmark = TOWER as typeof TOWER | null): string[] =>
      offers(light, landmark).map(({ text }) => text)
    expect(texts({})).toHaveLength(9)
    expect(texts({ subject: 'in-shade' })).toHaveLength(7)
    expect(texts({}, null)).toHaveLength(7)
  })

  test('never asks for a sun above and below the horizon at once', () => {
    const golden = taken({}, chipWords.golden)
    expect(golden?.altitude).toEqual({ least: 0, most: 6 })
    const blue = taken(golden ?? {}, chipWords.blue)
    expect(blue).toMatchObject({ altitude: null, soft: 'either' })
    expect(taken({ soft: 'evening' }, chipWords.golden)).toMatchObject({ altitude: golden?.altitude, soft: null })
  })
})
