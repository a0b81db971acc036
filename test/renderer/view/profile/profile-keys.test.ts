/** Keys along the profile. */
import { describe, expect, it } from 'vitest'
import { keyedPoint } from '#renderer/view/profile/profile-keys.ts'

describe('keys along the profile', () => {
  it('step by a hundredth, ten with Shift, and keep to the line', () => {
    expect(keyedPoint('ArrowRight', false, 300, 1_000)).toBe(310)
    expect(keyedPoint('ArrowLeft', true, 300, 1_000)).toBe(200)
    expect(keyedPoint('PageDown', false, 50, 1_000)).toBe(0)
    expect(keyedPoint('End', false, 50, 1_000)).toBe(1_000)
    expect(keyedPoint('Home', false, 50, 1_000)).toBe(0)
    expect(keyedPoint('Enter', false, 50, 1_000)).toBeNull()
  })
})
