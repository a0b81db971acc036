/** When what opens over the page closes by itself: once the focus is neither in it nor on its button. */
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { focusLeft } from '#renderer/part/focus-left.ts'

/** As much of an element of the page as is asked for. */
class Element {
  readonly within: readonly Element[]
  constructor(...within: Element[]) {
    this.within = within
  }
  contains(other: unknown): boolean {
    return other === this || this.within.some((one) => one.contains(other))
  }
}

beforeAll(() => {
  vi.stubGlobal('Node', Element)
})
afterAll(() => {
  vi.unstubAllGlobals()
})

const item = new Element()
const box = new Element(new Element(item))

function left(to: unknown, from: unknown = box): boolean {
  return focusLeft({ relatedTarget: to as EventTarget | null }, from as Node | null)
}

test('not while it moves within', () => {
  expect(left(item)).toBe(false)
  expect(left(box)).toBe(false)
})

test('once it is elsewhere, nowhere, or the box is gone', () => {
  expect(left(new Element())).toBe(true)
  expect(left(null)).toBe(true)
  expect(left(item, null)).toBe(true)
})
