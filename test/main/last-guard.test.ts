/** The last guard: faults nobody caught are written down, answered and told once; a flood of them ends the program in words. */
import { EventEmitter } from 'node:events'
import { expect, test } from 'vitest'
import { guardLast } from '#main/last-guard.ts'
import { listeningLog } from '#test/help/stub-handlers.ts'

function guarded() {
  const on = new EventEmitter()
  const log = listeningLog()
  const said: string[] = []
  const seen = { failed: 0, ended: 0, time: 0 }
  guardLast({
    on,
    log,
    say: (line) => said.push(line),
    answerFailed: () => {
      seen.failed += 1
    },
    end: () => {
      seen.ended += 1
    },
    now: () => seen.time,
  })
  return { on, log, said, seen }
}

test.each(['uncaughtException', 'unhandledRejection'])(
  'an %s is written down, answered, and told; the program goes on',
  (name) => {
    const { on, log, said, seen } = guarded()
    const error = new Error('a stream broke off')
    on.emit(name, error)
    expect(log.heard.map((one) => one.detail)).toEqual([{ error }])
    expect(seen).toEqual({ failed: 1, ended: 0, time: 0 })
    expect(said).toEqual([expect.stringMatching(/log.*goes on\.$/)])
  },
)

test('a fault now and then never ends it', () => {
  const { on, seen } = guarded()
  for (let fault = 0; fault < 500; fault += 1) {
    seen.time += 10_000
    on.emit('uncaughtException', new Error('x'))
  }
  expect([seen.failed, seen.ended]).toEqual([500, 0])
})

test('a flood ends it, in words', () => {
  const { on, said, seen } = guarded()
  for (let fault = 0; fault < 20; fault += 1) on.emit('uncaughtException', new Error('x'))
  expect(seen.ended).toBe(1)
  expect(said).toHaveLength(2)
  expect(said[1]).toMatch(/start it again\.$/)
})
