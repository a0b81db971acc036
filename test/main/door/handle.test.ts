/** The door: unknown calls, ill-formed input, faults and bugs all come back as answers. */
import { describe, expect, test } from 'vitest'
import { done, failed } from '#core/result.ts'
import { contract } from '#app/contract/index.ts'
import { CALL_NAMES } from '#app/contract/names.ts'
import { bodyLimit, dispatch } from '#main/door/handle.ts'
import { listeningLog, stubHandlers } from '#test/help/stub-handlers.ts'

const none = stubHandlers({})

describe('dispatch', () => {
  test.each(['no.such', 'constructor', '__proto__', 'toString', '', null, 7, ['library.state'], undefined])(
    'refuses the name %j',
    async (name) => {
      const log = listeningLog()
      expect(await dispatch(none, name, {}, log)).toMatchObject({ ok: false, fault: { reason: 'unknown-call' } })
      expect(log.heard).toEqual([])
    },
  )

  test.each([undefined, null, 'x', [], { text: 'a' }, { text: 'a', limit: 0 }, { text: 'a'.repeat(201), limit: 1 }])(
    'refuses the input %j before the handler',
    async (input) => {
      const answer = await dispatch(none, 'places.find', input, listeningLog())
      expect(answer).toMatchObject({ ok: false, fault: { reason: 'bad-input' } })
    },
  )

  test('says which field does not fit, without its value', async () => {
    const answer = await dispatch(none, 'places.find', { text: 'secret'.repeat(90), limit: 1 }, listeningLog())
    expect(answer).toMatchObject({ fault: { message: expect.stringContaining('text does not fit') } })
    expect(JSON.stringify(answer)).not.toContain('secret')
  })

  test('hands over only the fields of the contract', async () => {
    let seen: unknown
    const handlers = stubHandlers({
      'library.shoots': (input) => {
        seen = input
        return done({ shoots: [] })
      },
    })
    await dispatch(handlers, 'library.shoots', JSON.parse('{"extra":1,"__proto__":{"x":1}}'), listeningLog())
    expect(seen).toEqual({})
  })

  test('passes a fault on as it is', async () => {
    const handlers = stubHandlers({ 'library.shoots': async () => failed('damaged', 'It is damaged.') })
    expect(await dispatch(handlers, 'library.shoots', {}, listeningLog())).toEqual({
      ok: false,
      fault: { reason: 'damaged', message: 'It is damaged.' },
    })
  })

  test.each([
    () => {
      throw new Error('thrown')
    },
    () => Promise.reject(new Error('rejected')),
  ])('turns a bug into a fault and writes it down', async (handler) => {
    const log = listeningLog()
    const answer = await dispatch(stubHandlers({ 'library.shoots': handler }), 'library.shoots', {}, log)
    expect(answer).toMatchObject({ ok: false, fault: { reason: 'bug' } })
    expect(JSON.stringify(answer)).not.toMatch(/thrown|rejected/)
    expect(log.heard).toMatchObject([{ event: 'bug', detail: { call: 'library.shoots' } }])
  })
})

test('the list of names is the contract', () => {
  expect([...CALL_NAMES].toSorted()).toEqual(Object.keys(contract).toSorted())
})

test('only batches and files may be large', () => {
  expect(CALL_NAMES.filter((name) => bodyLimit(name) > 1_000_000).toSorted()).toEqual([
    'library.apply',
    'library.save',
    'shoot.import',
  ])
  expect(bodyLimit('constructor')).toBe(1_000_000)
})
