/** The key of the loopback host: its way in is open for a minute, once, and the newest alone. */
import { expect, test } from 'vitest'
import { makeGate } from '#main/door/gate.ts'

const MINUTE = 60_000

test('the way in closes after a minute, used or not', () => {
  const gate = makeGate()
  const path = gate.makeWayIn(1_000)
  expect(gate.enter(path, 1_000 + MINUTE + 1)).toBe('closed')
  expect(gate.enter(path, 1_000 + MINUTE)).toBe('let-in')
  // Long after, as when a browser brings back its tabs: no thief, and the token stays in force.
  const token = gate.token()
  expect(gate.enter(path, 1_000 + MINUTE + 1)).toBe('closed')
  expect(gate.token()).toBe(token)
})

test('a new way in closes the one before', () => {
  const gate = makeGate()
  const first = gate.makeWayIn(0)
  const second = gate.makeWayIn(0)
  expect(gate.enter(first, 0)).toBe('closed')
  expect(gate.enter(second, 0)).toBe('let-in')
})

test('without one there is no way in', () => {
  expect(makeGate().enter('/open/', 0)).toBe('closed')
})
