/** The light as words: what is said of lit sides, windows, shutter, cautions. */
import { describe, expect, it } from 'vitest'
import { NO_WISHES } from '#core/light/light-wish.ts'
import { assess } from '#core/plan/assess.ts'
import { dayLight } from '#core/plan/day-light.ts'
import type { Plan } from '#core/plan/plan.ts'
import {
  againstText,
  bodyText,
  landmarkFaceName,
  lightCautions,
  moonPhaseText,
  shortSpanText,
  shutterText,
  sideName,
  spanText,
  thingText,
  windowSentences,
} from '#renderer/text/light-text.ts'
import { wishName } from '#renderer/text/wish-names.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { examplePlan } from '#test/help/plans.ts'

const NOON = Date.UTC(2026, 11, 21, 11, 10)

function at(when: number, parts: Parameters<typeof examplePlan>[0] = {}): Plan {
  return examplePlan({ ...parts, spot: { when, ...parts.spot } })
}

describe('what is said of the moon', () => {
  it('is its lit share at the instant of the reading, by the clock of the place', () => {
    // astronomy-engine: full moon of June 2026 on the 29th at 23:57 UTC.
    const { light } = assess(at(Date.UTC(2026, 5, 25, 12)))
    expect(moonPhaseText(light, 'Europe/Berlin')).toMatch(/^8\d\u{a0}% lit at 14:00, waxing$/u)
    const after = assess(at(Date.UTC(2026, 6, 4, 12))).light
    expect(moonPhaseText(after, 'UTC')).toMatch(/^8\d\u{a0}% lit at 12:00, waning$/u)
  })
})

describe('what is said of a thing', () => {
  it('is that it is in shade when nothing of it is lit', () => {
    expect(thingText({ sides: [], lit: null, main: null })).toBe(lightWords.notInFrame)
    const side = { id: 'left', bearing: 20, upright: true, share: 1, incidence: 120, strike: 'in-shade' } as const
    expect(thingText({ sides: [side], lit: 0, main: side })).toBe(lightWords.strikes['in-shade'])
  })

  it('is the share and how its largest side is struck', () => {
    const side = { id: 'left', bearing: 20, upright: true, share: 0.8, incidence: 71.4, strike: 'raking' } as const
    const text = thingText({ sides: [side], lit: 0.8, main: side })
    expect(text).toContain('80')
    expect(text).toContain('raking at 71°')
  })

  it('names a landmark’s face by the compass, a span’s segments by number', () => {
    const plan = at(NOON)
    const { light } = assess(plan)
    expect(light.landmark?.main?.bearing).toBeGreaterThan(200)
    expect(light.landmark?.main?.bearing).toBeLessThan(240)
    expect(landmarkFaceName(plan, light.landmark ?? { sides: [], lit: null, main: null })).toBe(
      'Bridge, south-west side',
    )
    expect(sideName({ id: 'segment-1-left', bearing: 181 })).toBe('segment 2, south')
    expect(sideName({ id: 'front', bearing: 12 })).toBe('front')
  })
})

describe('a window', () => {
  const start = Date.UTC(2026, 5, 14, 15, 28, 21)

  it('is told inward to the minute, so that it holds at the minutes named', () => {
    expect(spanText({ from: start, until: start + 3_600_000 }, 'UTC')).toBe('15:29–16:28')
    expect(spanText({ from: start + 39_000, until: start + 39_000 + 120_000 }, 'UTC')).toBe('15:29–15:31')
  })

  it('shorter than a minute has one time', () => {
    expect(spanText({ from: start + 10_000, until: start + 20_000 }, 'UTC')).toMatch(/^15:2[89]$/u)
  })
})

describe('why no window is left', () => {
  it('names the two wishes that no sun can meet together', () => {
    const plan = at(NOON, { shoot: { light: { ...NO_WISHES, subject: 'lit', soft: 'evening' } } })
    const [sentence, ...rest] = windowSentences(plan, dayLight(plan, assess(plan), 'UTC'))
    expect(rest).toEqual([])
    expect(sentence).toContain('Cargo bicycle lit')
    expect(sentence).toContain('blue hour, evening')
  })

  it('names the wish that does not hold on the day', () => {
    const plan = at(NOON, { shoot: { light: { ...NO_WISHES, altitude: { least: 85, most: 90 } } } })
    const sentences = windowSentences(plan, dayLight(plan, assess(plan), 'UTC'))
    expect(sentences).toHaveLength(1)
    expect(sentences[0]).toContain('sun 85° to 90° high')
    expect(sentences[0]).toContain('Mon 21 December 2026')
  })

  it('names a height of the sun that has no lower end by its upper end alone', () => {
    const plan = at(NOON, { shoot: { light: { ...NO_WISHES, altitude: { least: -90, most: 40 } } } })
    expect(wishName('altitude', plan)).toBe('sun at most 40° high')
  })

  it('says nothing while a window is left', () => {
    const plan = at(NOON, { shoot: { light: { ...NO_WISHES, altitude: { least: 5, most: 90 } } } })
    expect(windowSentences(plan, dayLight(plan, assess(plan), 'UTC'))).toEqual([])
  })
})

describe('cautions', () => {
  it('warn of the sun in and near the frame with the focal length, and of the dark', () => {
    const plan = at(NOON)
    const { light } = assess(plan)
    const framed = (within: number) =>
      lightCautions({ ...light, sun: { ...light.sun, up: true, inFrame: { at: null, within } } }, 70)
    expect(framed(2)).toEqual([lightWords.sunCaution('70\u{a0}mm')])
    // Its edge reaches in, though its middle does not.
    expect(framed(-0.2)).toEqual([lightWords.sunCaution('70\u{a0}mm')])
    expect(framed(-4.8)).toEqual([lightWords.sunNearCaution('4.8°', '70\u{a0}mm')])
    expect(framed(-6)).toEqual([])
    const night = assess(at(Date.UTC(2026, 5, 14, 0))).light
    expect(lightCautions(night, 70)).toEqual([lightWords.nightCaution])
  })
})

describe('the exposure', () => {
  it('is told by the shutter’s marks, and by seconds beyond them', () => {
    expect(shutterText(1 / 256)).toBe('1/250 s')
    expect(shutterText(120)).toBe('120 s')
    expect(shutterText(1 / 30_000)).toBe('1/30000 s')
  })

  it('says how far it is beyond the camera’s limits', () => {
    // EV 15 at ISO 100 is 18 at ISO 800: f/2.8 wants 2.8² / 2^18 s, six stops shorter than 1/500 s.
    const bright = at(NOON, {
      camera: { fastestShutter: 1 / 500 },
      shoot: { iso: 800 },
      shot: { aperture: 2.8 },
    })
    expect(againstText(assess(bright).light.exposure)).toMatch(/^6(?:\.\d)? stops over/u)
    expect(againstText(assess(at(NOON, { shot: { aperture: 16 } })).light.exposure)).toBeNull()
  })

  it('tells a body below the horizon as below, without air', () => {
    const { sun } = assess(at(Date.UTC(2026, 5, 14, 0))).light
    expect(bodyText(sun)).toContain('below the horizon')
  })
})

describe('a window in few words', () => {
  const span = { from: Date.UTC(2026, 5, 14, 8), until: Date.UTC(2026, 5, 14, 16, 17) }
  const doubt = (way: 'earliest' | 'latest') => ({ metres: 5_000, way })

  it('is its two times where they are sure', () => {
    expect(shortSpanText(span, 'UTC')).toBe('08:00–16:17')
  })
  it('is at most so long where ground may still take from either end', () => {
    expect(shortSpanText({ ...span, fromDoubt: doubt('earliest') }, 'UTC')).toBe('08:00–16:17 at most')
    const both = { ...span, fromDoubt: doubt('earliest'), untilDoubt: doubt('latest') }
    expect(shortSpanText(both, 'UTC')).toBe('08:00–16:17 at most')
  })
  it('is not sure where it may be longer', () => {
    expect(shortSpanText({ ...span, untilDoubt: doubt('earliest') }, 'UTC')).toBe('08:00–16:17, not sure')
  })
})
