/** The reading of a file beside the page: one answer whichever way it ends, and the worker gone after it. */
import { describe, expect, test } from 'vitest'
import { readDrawnGeojson } from '#core/exchange/drawn-geojson.ts'
import { type GeojsonWorker, readBeside } from '#renderer/state/act/geojson-reading.ts'

const ASK = { text: '{"type":"LineString","coordinates":[[10,50],[10.001,50]]}', near: null, most: 5 }

/** A worker whose answers are given by hand. */
function standIn() {
  const ears = new Map<string, (event: { data?: unknown }) => void>()
  const seen: { asked: unknown[]; ended: number } = { asked: [], ended: 0 }
  const worker = {
    addEventListener: (kind: string, ear: (event: { data?: unknown }) => void) => void ears.set(kind, ear),
    postMessage: (ask: unknown) => void seen.asked.push(ask),
    terminate: () => void (seen.ended += 1),
  }
  return {
    seen,
    open: () => worker as unknown as GeojsonWorker,
    say: (kind: string, data?: unknown) => ears.get(kind)?.({ data }),
  }
}

describe('a reading', () => {
  test('gives what the worker found', async () => {
    const { seen, open, say } = standIn()
    const { outcome } = readBeside(ASK, open)
    expect(seen.asked).toEqual([ASK])
    const found = readDrawnGeojson(ASK.text, ASK.near, ASK.most)
    say('message', found)
    expect(await outcome).toEqual(found)
    expect(seen.ended).toBe(1)
  })

  test('that is stopped stays stopped, whatever comes after', async () => {
    const { seen, open, say } = standIn()
    const { outcome, stop } = readBeside(ASK, open)
    stop()
    say('message', readDrawnGeojson(ASK.text, null, 5))
    expect(await outcome).toBe('stopped')
    expect(seen.ended).toBeGreaterThan(0)
  })

  test('whose worker is lost is told', async () => {
    const { open, say } = standIn()
    const { outcome } = readBeside(ASK, open)
    say('error')
    expect(await outcome).toBe('lost')
  })

  test('that takes too long is ended', async () => {
    const { seen, open } = standIn()
    expect(await readBeside(ASK, open, 0.01).outcome).toBe('too-long')
    expect(seen.ended).toBe(1)
  })
})
