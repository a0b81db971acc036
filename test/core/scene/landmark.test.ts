/** What a span's form makes of its measures: a deck out of sight is kept, is of no account, and fits again when it comes back. */
import { describe, expect, test } from 'vitest'
import { convexParts } from '#core/scene/convex-parts.ts'
import { SPAN_FORMS, hasDeck, inForm } from '#core/scene/landmark.ts'
import { archCount } from '#core/scene/solid/arches.ts'
import { landmarkSolid } from '#core/scene/solid/landmark-solid.ts'
import { bridgeAt } from '#test/help/plans.ts'

const BRIDGE = bridgeAt({ lat: 46.4, lon: -33.6 }, 40, 800)

describe('a span in another form', () => {
  test.each(SPAN_FORMS)('%s and back loses nothing', (form) => {
    expect(inForm(inForm(BRIDGE, form), 'suspension')).toEqual(BRIDGE)
  })

  test.each(SPAN_FORMS.filter((form) => !hasDeck(form)))(
    '%s stands as it stands, whatever deck it once had',
    (form) => {
      const shape = (deckHeight: number): unknown => {
        const span = { ...BRIDGE, form, deckHeight }
        return [landmarkSolid(span, 0)?.solid, convexParts(span, 0)?.parts]
      }
      expect(shape(0)).toEqual(shape(24))
      expect(shape(500)).toEqual(shape(24))
    },
  )

  test.each(SPAN_FORMS.filter(hasDeck))('made lower while it had no deck, as %s it has none above its top', (form) => {
    const low = { ...inForm(BRIDGE, 'wall'), height: 8 }
    expect(low.deckHeight).toBe(24)
    expect(inForm(low, form).deckHeight).toBe(8)
  })
})

test('a row of arches is drawn with as many as are counted', () => {
  const row = inForm(BRIDGE, 'arches')
  const placed = landmarkSolid(row, 0)
  expect(archCount(row.line, row.height)).toBe(placed?.solid.length)
})
