/** A full sheet is made smaller until it fits its page: first a little, then its pictures too, never below what can be read. */
import { describe, expect, test } from 'vitest'
import { fitPage } from '#renderer/page/sheet/fit-page.ts'

/** A sheet so many millimetres high at full size; smaller pictures take so much of it away. */
function sheetOf(high: number, pictures = { pictures: 0.9, most: 0.8 }) {
  const tried: string[] = []
  let size = 1
  const dataset: Record<string, string> = {}
  const element = {
    dataset,
    style: {
      setProperty: (name: string, value: string) => {
        expect(name).toBe('zoom')
        size = Number(value)
        tried.push(value)
      },
    },
    getBoundingClientRect: () => {
      const less = dataset['tight'] === 'pictures' ? pictures.pictures : dataset['tight'] === 'most' ? pictures.most : 1
      return { height: (high * size * less * 96) / 25.4 }
    },
  }
  return { element: element as unknown as HTMLElement, size: () => size, tight: () => dataset['tight'] ?? '', tried }
}

describe('a sheet', () => {
  test('that fits is left as it is', () => {
    const sheet = sheetOf(262)
    fitPage(sheet.element, 'a4')
    expect([sheet.size(), sheet.tight()]).toEqual([1, ''])
    expect(sheet.tried).toEqual(['1'])
  })

  test('just too high takes the first size that fits, pictures untouched', () => {
    const sheet = sheetOf(275)
    fitPage(sheet.element, 'a4')
    expect([sheet.size(), sheet.tight()]).toEqual([0.94, ''])
  })

  test('on letter paper has less room: 11 in less its margins, against 297 mm', () => {
    const sheet = sheetOf(262)
    fitPage(sheet.element, 'letter')
    expect([sheet.size(), sheet.tight()]).toEqual([0.91, ''])
  })

  test('that print alone does not help gets smaller pictures, at a print as large as they allow', () => {
    const sheet = sheetOf(305)
    fitPage(sheet.element, 'a4')
    expect([sheet.size(), sheet.tight()]).toEqual([0.94, 'pictures'])
  })

  test('fuller still gets the smallest pictures', () => {
    const sheet = sheetOf(380)
    fitPage(sheet.element, 'a4')
    expect([sheet.size(), sheet.tight()]).toEqual([0.85, 'most'])
  })

  test('that cannot be read any more takes a second page at full size', () => {
    const sheet = sheetOf(500)
    fitPage(sheet.element, 'a4')
    expect([sheet.size(), sheet.tight()]).toEqual([1, ''])
    expect(Math.min(...sheet.tried.map(Number))).toBeGreaterThanOrEqual(0.82)
  })

  test('is fitted again: what an earlier fit had set is no reason to stay small', () => {
    const sheet = sheetOf(262)
    sheet.element.dataset['tight'] = 'most'
    fitPage(sheet.element, 'a4')
    expect([sheet.size(), sheet.tight()]).toEqual([1, ''])
  })
})
