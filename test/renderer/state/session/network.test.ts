/** One clock asks how the map's servers answer, whoever wants to know; the sources are asked once for the settings they hang on. */
import { put } from '#test/help/put.ts'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'

const asked: string[] = []
let offline = false
vi.mock('#renderer/host/host.ts', () => ({
  ask: (name: string, input: unknown) => {
    asked.push(name)
    if (name === 'tiles.health') return Promise.resolve({ ok: true, value: { offline } })
    if (name === 'settings.set')
      return Promise.resolve({ ok: true, value: { ...settings.peek(), ...(input as object) } })
    return Promise.resolve({ ok: true, value: { sources: [], prefix: '/tiles' } })
  },
}))

class FakeWindow extends EventTarget {}
const page = new FakeWindow()
vi.stubGlobal('matchMedia', () => Object.assign(new FakeWindow(), { matches: false }))
vi.stubGlobal('document', { visibilityState: 'visible' })
vi.stubGlobal('navigator', { onLine: true })
vi.stubGlobal('window', page)
vi.stubGlobal('addEventListener', page.addEventListener.bind(page))
vi.stubGlobal('removeEventListener', page.removeEventListener.bind(page))

const { changeSettings, settings } = await import('#renderer/state/library/settings.ts')
const { followHealth, offline: told } = await import('#renderer/state/session/network.ts')
const { watchNetwork } = await import('#renderer/view/map/watch-network.ts')
const { missingTiles } = await import('#renderer/view/map/missing-tiles.ts')
const { readTileSources, tileSources } = await import('#renderer/state/session/tile-sources.ts')

function times(name: string): number {
  return asked.filter((one) => one === name).length
}

beforeEach(() => {
  vi.useFakeTimers()
  asked.length = 0
  offline = false
  put(missingTiles, 0)
  put(settings, { ...settings.peek(), mapSource: 'open-source' })
})
afterEach(() => vi.useRealTimers())

test('in a minute with tiles missing it is asked with the first of them and then by one clock', async () => {
  let back = 0
  const stops = [followHealth(), watchNetwork(() => (back += 1))]
  offline = true
  put(missingTiles, 1)
  put(missingTiles, 5)
  await vi.advanceTimersByTimeAsync(60_000)
  // The first missing tile, the first look after a start, and every fifteen seconds.
  expect(times('tiles.health')).toBe(1 + 1 + 4)
  expect(told.value).toBe(true)
  offline = false
  await vi.advanceTimersByTimeAsync(15_000)
  expect(told.value).toBe(false)
  expect(back).toBe(1)
  for (const stop of stops) stop()
  await vi.advanceTimersByTimeAsync(60_000)
  expect(times('tiles.health')).toBe(7)
})

test('nothing is asked, and nothing called offline, while no server is in use', async () => {
  const stops = [followHealth(), watchNetwork(() => {})]
  put(settings, { ...settings.peek(), mapSource: 'sketch' })
  offline = true
  put(missingTiles, 1)
  await vi.advanceTimersByTimeAsync(60_000)
  expect(times('tiles.health')).toBe(0)
  expect(told.value).toBe(false)
  for (const stop of stops) stop()
})

test('the sources are asked once, however many maps want them and whatever else of the settings changes', async () => {
  await Promise.all([readTileSources(), readTileSources()])
  await changeSettings({ lastSpotId: 'another' })
  await readTileSources()
  expect(times('tiles.sources')).toBe(1)
  expect(tileSources.value?.prefix).toBe('/tiles')
  await changeSettings({ templates: { some: 'https://example.org/{z}/{x}/{y}' } })
  await readTileSources()
  expect(times('tiles.sources')).toBe(2)
})
