/** How far the elevations are said to reach: no farther than is looked, and toward where they end. */
import { describe, expect, it } from 'vitest'
import { GROUND_REACH } from '#core/ground/rings.ts'
import { reachText, reachesAll } from '#renderer/text/reach-text.ts'
import { groundWords as say } from '#renderer/words/en-ground.ts'

describe('how far the elevations reach', () => {
  const reach = (most: number, least: number) => ({ most, least, leastToward: 180 })

  it('is told no farther than is looked, also toward the corners of the widest window', () => {
    expect(reachText(reach(225_000, 160_000), 'metric')).toBe(say.reach.around('150\u00A0km'))
    expect(reachText(reach(GROUND_REACH, GROUND_REACH), 'metric')).toBe(say.reach.around('150\u00A0km'))
    expect([reachesAll(reach(225_000, 160_000)), reachesAll(reach(225_000, 40_000))]).toEqual([true, false])
  })

  it('is told toward where they end first when they end sooner there', () => {
    expect(reachText(reach(225_000, 40_000), 'metric')).toBe(say.reach.ends('40\u00A0km', 'south', '150\u00A0km'))
    expect(reachText(reach(7_460, 4_120), 'metric')).toBe(say.reach.ends('4.12\u00A0km', 'south', '7.46\u00A0km'))
  })
})
