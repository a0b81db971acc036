/** Lines as path text: joined in order, closed when asked, to a tenth of a pixel. */
import { describe, expect, it } from 'vitest'
import { linePath } from '#renderer/text/path-text.ts'

describe('linePath', () => {
  it('writes tenths of a pixel', () => {
    expect(
      linePath(
        [
          { x: 1.234, y: 2 },
          { x: 3, y: -4.06 },
        ],
        true,
      ),
    ).toBe('M1.2,2L3,-4.1Z')
    expect(linePath([], true)).toBe('')
  })
})
