/** A sheet fills its page: print and pictures get smaller until it fits, pictures grow into what is left, never below what can be read. */
import { describe, expect, test } from 'vitest'
import { fitPage } from '#renderer/page/sheet/fit-page.ts'

/** A sheet whose words take so many millimetres at full print and whose pictures take so many at full width; the tightest drops some. */
function sheetOf(words: number, pictures: number, dropped = 0) {
  const tried: string[] = []
  const style = new Map<string, string>()
  const dataset: Record<string, string> = {}
  const element = {
    dataset,
    style: {
      setProperty: (name: string, value: string) => {
        style.set(name, value)
        if (name === 'zoom') tried.push(value)
      },
    },
    getBoundingClientRect: () => {
      const size = Number(style.get('zoom'))
      const kept = dataset['tight'] !== undefined ? words - dropped : words
      const high = ((kept * size + pictures * Number(style.get('--pictures'))) * 96) / 25.4
      return { height: Math.max(high, Number.parseFloat(style.get('min-height') ?? '0') * size) }
    },
  }
  return {
    element: element as unknown as HTMLElement,
    size: () => Number(style.get('zoom')),
    pictures: () => Number(style.get('--pictures')),
    tight: () => dataset['tight'] ?? '',
    millimetres: () => (element.getBoundingClientRect().height * 25.4) / 96,
    tried,
  }
}

/** Between its margins of 10 mm a page is so high, of which a printer's own line breaks may take two lines. */
const PAGE = { a4: 277, letter: 259.4 }
const SPARE = 10

describe('a sheet', () => {
  test('that fits keeps its print, and its pictures are as wide as they can be', () => {
    const sheet = sheetOf(140, 110)
    fitPage(sheet.element, 'a4')
    expect([sheet.size(), sheet.pictures(), sheet.tight()]).toEqual([1, 1, ''])
  })

  test('just too high gives up a little print first', () => {
    const sheet = sheetOf(165, 115)
    fitPage(sheet.element, 'a4')
    expect(sheet.size()).toBe(0.94)
    expect(sheet.pictures()).toBeGreaterThanOrEqual(0.95)
  })

  test('on letter paper has less room: 11 in less its margins, against 297 mm', () => {
    const [a4, letter] = [sheetOf(165, 115), sheetOf(165, 115)]
    fitPage(a4.element, 'a4')
    fitPage(letter.element, 'letter')
    expect(letter.size() * letter.pictures()).toBeLessThan(a4.size() * a4.pictures())
  })

  test.each(['a4', 'letter'] as const)('fills its page of %s and never more than it, whatever is on it', (paper) => {
    for (let words = 120; words <= 240; words += 10) {
      const sheet = sheetOf(words, 110, 30)
      fitPage(sheet.element, paper)
      expect(sheet.millimetres(), `${words}`).toBeLessThanOrEqual(PAGE[paper] - 5)
      expect(sheet.millimetres(), `${words}`).toBeGreaterThan(PAGE[paper] - SPARE - 8)
    }
  })

  test('grows its pictures into the room that is left by the smaller print', () => {
    const sheet = sheetOf(190, 110)
    fitPage(sheet.element, 'a4')
    const before = sheet.pictures()
    sheet.element.style.setProperty('--pictures', (before + 0.03).toFixed(2))
    expect(before).toBeGreaterThan(0.7)
    expect(sheet.millimetres()).toBeGreaterThan(PAGE.a4 - SPARE)
  })

  test('fuller still leaves out what the board tells as well', () => {
    const sheet = sheetOf(275, 100, 45)
    fitPage(sheet.element, 'a4')
    expect(sheet.tight()).toBe('most')
    expect(sheet.size()).toBeGreaterThanOrEqual(0.82)
  })

  test('that cannot be read any more takes a second page at full size', () => {
    const sheet = sheetOf(400, 110, 30)
    fitPage(sheet.element, 'a4')
    expect([sheet.size(), sheet.tight()]).toEqual([1, ''])
    expect(Math.min(...sheet.tried.map(Number))).toBeGreaterThanOrEqual(0.82)
  })

  test('with little on it is not torn apart over the whole page', () => {
    const sheet = sheetOf(60, 110)
    fitPage(sheet.element, 'a4')
    expect(sheet.millimetres()).toBeLessThan(60 + 110 + 41)
  })

  test('is fitted again: what an earlier fit had set is no reason to stay small', () => {
    const sheet = sheetOf(140, 110)
    sheet.element.dataset['tight'] = 'most'
    sheet.element.style.setProperty('min-height', '5000px')
    fitPage(sheet.element, 'a4')
    expect([sheet.size(), sheet.pictures(), sheet.tight()]).toEqual([1, 1, ''])
  })
})
