/** Beside a still map stand the makers of what it shows, and of nothing else. */
import { expect, test } from 'vitest'
import { elevationCredits } from '#renderer/view/sketch/painted-credits.ts'
import { stillCredits } from '#renderer/view/still-map/still-credits.ts'
import { examplePlan } from '#test/help/plans.ts'

const [width, height] = [400, 262]
const onIsland = examplePlan({ at: { lat: 46.4, lon: -33.6 } })
const elsewhere = examplePlan({ at: { lat: 46.9, lon: 10.9 } })

test('the invented island is named where it is shown alone', () => {
  expect(stillCredits(null, onIsland, width, height).join()).toMatch(/Orlavay.*Natural Earth/u)
  expect(stillCredits(null, elsewhere, width, height)).toEqual(['Coast and borders: Natural Earth (public domain)'])
})

test('tiles are their source’s', () => {
  const source = { attribution: '© Somebody' }
  expect(stillCredits(source, onIsland, width, height)).toEqual(['© Somebody'])
  expect(stillCredits({ attribution: '' }, onIsland, width, height)).toEqual([])
})

test('elevations are named by who is owed, else by the file’s own name, each once', () => {
  const part = { id: 'file', name: 'valley.tif', resolution: 10, share: 0.5, attribution: '' }
  const tiles = { ...part, id: 'web', attribution: 'Survey of the valley' }
  expect(elevationCredits([part, tiles, { ...tiles, id: 'other' }])).toEqual([
    'Ground: valley.tif',
    'Survey of the valley',
  ])
  expect(elevationCredits([{ ...part, id: 'demo' }]).join()).toContain('Orlavay')
})
