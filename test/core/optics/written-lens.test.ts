/** Lenses as photographers write them: a table of spellings, every lens read back from every one of them, and what is refused with a sentence. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Lens } from '#core/optics/lens.ts'
import { type WrittenLens, readLens } from '#core/optics/written-lens.ts'
import { lensAsWritten } from '#core/record/new-records.ts'
import { lensRange } from '#renderer/text/names.ts'

/** Focal lengths and f-numbers read; else the reason word. */
function read(text: string): readonly (readonly number[] | null)[] | string {
  const lens = readLens(text)
  return lens.ok ? [lens.value.focal, lens.value.widest] : lens.fault.reason
}

describe('a lens on one line', () => {
  test.each([
    ['70-200/2.8', [70, 200], [2.8, 2.8]],
    ['70-200 f/2.8', [70, 200], [2.8, 2.8]],
    ['24-70mm f2.8', [24, 70], [2.8, 2.8]],
    ['24mm-70mm, F/2,8', [24, 70], [2.8, 2.8]],
    ['50/1.8', [50, 50], [1.8, 1.8]],
    ['50 1.4', [50, 50], [1.4, 1.4]],
    ['50mm/1,4', [50, 50], [1.4, 1.4]],
    ['50f1.4', [50, 50], [1.4, 1.4]],
    ['1,4/50', [50, 50], [1.4, 1.4]],
    ['2.8/24-70', [24, 70], [2.8, 2.8]],
    ['4-5.6 70-300', [70, 300], [4, 5.6]],
    ['1:1.4/50', [50, 50], [1.4, 1.4]],
    ['1:1,4 f=50mm', [50, 50], [1.4, 1.4]],
    ['f/2.8 70-200', [70, 200], [2.8, 2.8]],
    ['100-400/4.5-5.6', [100, 400], [4.5, 5.6]],
    ['18–55 mm 1:3.5–5.6', [18, 55], [3.5, 5.6]],
    ['18—55 1：3,5‑5,6', [18, 55], [3.5, 5.6]],
    ['18-55 f/3.5-f/5.6', [18, 55], [3.5, 5.6]],
    ['70 to 300 mm ƒ/4 to 5.6', [70, 300], [4, 5.6]],
    ['１００−４００／４．５−５．６', [100, 400], [4.5, 5.6]],
    ['200-70/2.8', [70, 200], [2.8, 2.8]],
    ['300-70/5.6-4', [70, 300], [4, 5.6]],
    ['85', [85, 85], null],
    ['85 mm', [85, 85], null],
    ['200-70', [70, 200], null],
    ['8/3.5', [8, 8], [3.5, 3.5]],
    ['2.5 mm', [2.5, 2.5], null],
    ['4,2 mm f/1,8', [4.2, 4.2], [1.8, 1.8]],
    ['500/8', [500, 500], [8, 8]],
    ['8/500', [500, 500], [8, 8]],
    ['50 @ .95', [50, 50], [0.95, 0.95]],
    ['50-50/2-2', [50, 50], [2, 2]],
  ])('%s', (text, focal, widest) => expect(read(text)).toEqual([focal, widest]))
})

describe('what can be no lens, or two', () => {
  test.each([
    ['', 'empty'],
    [' \u{200b}', 'empty'],
    ['portrait lens', 'unreadable'],
    ['70-', 'unreadable'],
    ['-200', 'unreadable'],
    ['70-200/', 'unreadable'],
    ['70-200 f/', 'unreadable'],
    ['70-135-200', 'unreadable'],
    ['24 70 2.8', 'unreadable'],
    ['70-200/2.8 f/4', 'unreadable'],
    ['f/2.8 f/4', 'unreadable'],
    ['50mm 85mm', 'unreadable'],
    ['f/50mm', 'unreadable'],
    ['50//1.4', 'unreadable'],
    ['50 1.4.2', 'unreadable'],
    ['50 1e3', 'unreadable'],
    ['5'.repeat(90), 'unreadable'],
    ['1,200/8', 'ambiguous'],
    ['f/2.8', 'no-focal-length'],
    ['1:2.8', 'no-focal-length'],
    ['1.4', 'no-focal-length'],
    ['70 200', 'two-readings'],
    ['8 16', 'two-readings'],
    ['50/1.4-2', 'prime-with-two'],
    ['0/2', 'out-of-range'],
    ['0 mm', 'out-of-range'],
    ['20000/8', 'out-of-range'],
    ['50 f/0.1', 'out-of-range'],
    ['50 f/200', 'out-of-range'],
  ])('%s is refused: %s', (text, reason) => {
    const lens = readLens(text)
    expect(lens.ok ? lens.value : lens.fault.reason).toBe(reason)
    expect(lens.ok ? '' : lens.fault.message).toMatch(/\.$/u)
  })

  test('the sentence gives an example to write, and of a long text only the beginning', () => {
    const lens = readLens('a lens from the attic that nobody has looked at for twenty years')
    expect(lens.ok ? '' : lens.fault.message).toBe(
      '"a lens from the attic that nobody has lo…" cannot be read as a lens. Write focal length and maximum aperture, such as 70-200/2.8 or 50/1.4.',
    )
  })
})

const tenths = (least: number, most: number): fc.Arbitrary<number> =>
  fc.integer({ min: least * 10, max: most * 10 }).map((count) => count / 10)

function written(focal: fc.Arbitrary<number>, fNumber: fc.Arbitrary<number>): fc.Arbitrary<WrittenLens> {
  const ends = (one: number, other: number): [number, number] => [Math.min(one, other), Math.max(one, other)]
  return fc.tuple(focal, focal, fNumber, fNumber, fc.boolean()).map(([one, other, wide, narrow, zoom]) => ({
    focal: zoom ? ends(one, other) : ([one, one] as const),
    widest: zoom && one !== other ? ends(wide, narrow) : ([wide, wide] as const),
  }))
}

/** How somebody writes: signs, blanks and the order of two ends are of no account. */
const manner = fc.record({
  comma: fc.boolean(),
  dash: fc.constantFrom('-', '–', '—', '−', '‑', ' - ', ' – ', ' to '),
  turned: fc.boolean(),
  both: fc.boolean(),
  mm: fc.constantFrom('mm', ' mm', 'MM', ' millimetres'),
  mark: fc.constantFrom('f/', 'f', 'F/', 'F', 'ƒ/', 'f:', '1:', 'f / ', '1 : '),
  between: fc.constantFrom(' ', ', ', '/', '  ', ' / ', '\u{a0}'),
  wideFirst: fc.boolean(),
  wide: fc.boolean(),
})
type Manner = typeof manner extends fc.Arbitrary<infer Made> ? Made : never

/** Two ends, or one where both are alike; `both` writes alike ends twice all the same. */
function endsText(ends: readonly [number, number], how: Manner, each: (text: string) => string): string {
  const texts = ends.map((end) => each(how.comma ? String(end).replace('.', ',') : String(end)))
  const wanted = ends[0] === ends[1] && !how.both ? texts.slice(0, 1) : how.turned ? texts.toReversed() : texts
  return wanted.join(how.dash)
}

/** The same characters full-width, as they come from some keyboards. */
function fullWidth(text: string): string {
  return text.replace(/[!-~]/gu, (sign) => String.fromCodePoint((sign.codePointAt(0) ?? 0) + 0xfee0))
}

/** Read back from a text, as typed on such a keyboard. */
function readBack(text: string, how: Manner): unknown {
  return readLens(how.wide ? fullWidth(text) : text)
}

describe('every lens is read back', () => {
  const any = written(tenths(0.5, 10_000), tenths(0.5, 128))

  test('with f/ or 1: before its aperture, the focal length first or last', () => {
    fc.assert(
      fc.property(any, manner, fc.boolean(), (lens, how, unit) => {
        const focal = endsText(lens.focal, how, (text) => (unit ? text + how.mm : text))
        const widest = endsText(lens.widest ?? lens.focal, how, (text) => how.mark + text)
        const parts = how.wideFirst ? [widest, focal] : [focal, widest]
        expect(readBack(parts.join(how.between), how)).toEqual({ ok: true, value: lens })
      }),
    )
  })

  test('with mm behind its focal length and a bare aperture', () => {
    fc.assert(
      fc.property(any, manner, (lens, how) => {
        const focal = endsText(lens.focal, how, (text) => text) + how.mm
        const widest = endsText(lens.widest ?? lens.focal, how, (text) => text)
        const parts = how.wideFirst ? [widest, focal] : [focal, widest]
        expect(readBack(parts.join(how.between), how)).toEqual({ ok: true, value: lens })
      }),
    )
  })

  test('by numbers alone, where it is wider open than its focal length is long', () => {
    fc.assert(
      fc.property(written(tenths(11, 10_000), tenths(0.5, 11)), manner, (lens, how) => {
        const [focal, widest] = [lens.focal, lens.widest ?? lens.focal].map((ends) =>
          endsText(ends, how, (text) => text),
        )
        expect(readBack(`${focal}${how.between}${widest}`, how)).toEqual({ ok: true, value: lens })
      }),
    )
  })

  test('by numbers alone, the aperture first, where the focal length is four times as large', () => {
    fc.assert(
      fc.property(written(tenths(44, 10_000), tenths(0.5, 11)), manner, (lens, how) => {
        const [focal, widest] = [lens.focal, lens.widest ?? lens.focal].map((ends) =>
          endsText(ends, how, (text) => text),
        )
        expect(readBack(`${widest}${how.between}${focal}`, how)).toEqual({ ok: true, value: lens })
      }),
    )
  })

  test('from the way the page itself writes it', () => {
    fc.assert(
      fc.property(any, (lens) => {
        expect(readLens(lensRange(lensAsWritten('', lens)))).toEqual({ ok: true, value: lens })
      }),
    )
  })

  test('of any other text it makes a sentence or a lens within the limits, and never throws', () => {
    const signs = fc.constantFrom(...'0123456789.,-/: fm=1@x'.split(''))
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.string({ unit: signs, maxLength: 14 })), (text) => {
        const lens = readLens(text)
        const [short, long] = lens.ok ? lens.value.focal : [1, 1]
        const [wide, narrow] = (lens.ok ? lens.value.widest : null) ?? [1, 1]
        expect(lens.ok || lens.fault.message.length > 20).toBe(true)
        expect(short >= 0.5 && short <= long && long <= 10_000).toBe(true)
        expect(wide >= 0.5 && wide <= narrow && narrow <= 128).toBe(true)
      }),
      { numRuns: 2_000 },
    )
  })
})

describe('the record of a written lens', () => {
  const made = (text: string): Lens | string => {
    const lens = readLens(text)
    return lens.ok ? lensAsWritten('new', lens.value) : lens.fault.message
  }

  test('has what was written, the rest as of a new lens', () => {
    expect(made('300-70/5.6-4')).toMatchObject({
      id: 'new',
      name: '',
      focalMin: 70,
      focalMax: 300,
      widestAtMin: 4,
      widestAtMax: 5.6,
      smallest: 22,
      weight: null,
    })
    expect(made('85')).toMatchObject({ focalMin: 85, focalMax: 85, widestAtMin: 2.8, widestAtMax: 2.8 })
  })

  test('never has a smallest opening wider than its widest', () => {
    expect(made('100 f/128')).toMatchObject({ widestAtMin: 128, widestAtMax: 128, smallest: 128 })
  })
})
