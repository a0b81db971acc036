/** The thread that reads elevation files: ended when it hangs, takes too much memory or breaks, and the next task gets a new one. */
import { afterEach, describe, expect, test } from 'vitest'
import { openReader, type Reader } from '#main/ground/reader.ts'

/** A thread that does what the archive's name says. */
const STAND_IN = `
const { parentPort } = require('node:worker_threads')
let count = 0
parentPort.on('message', ({ id, task }) => {
  const answer = (answer) => parentPort.postMessage({ id, say: 'done', answer })
  count += 1
  if (task.archive === 'hang') for (;;);
  if (task.archive === 'silence') return
  if (task.archive === 'heap') { const all = []; for (;;) all.push(new Array(1000).fill(Math.random())) }
  if (task.archive === 'list') { const all = []; for (;;) all.push(1) }
  if (task.archive === 'samples') { const all = []; for (;;) all.push(new Uint8Array(1e6).fill(1)) }
  if (task.archive === 'throw') throw new Error('bug')
  if (task.archive === 'exit') process.exit(3)
  if (task.archive === 'slow') {
    let left = 12
    const step = () => {
      parentPort.postMessage({ id, say: 'alive' })
      if (left-- > 0) setTimeout(step, 350)
      else answer({ entries: [], fault: null, count })
    }
    return step()
  }
  answer({ entries: [], fault: null, count })
})
`

const readers: Reader[] = []
afterEach(async () => {
  await Promise.all(readers.splice(0).map((reader) => reader.close()))
})

function start(code = async () => STAND_IN, quietMs = 3_000): Reader {
  const reader = openReader(code, quietMs)
  readers.push(reader)
  return reader
}

const ask = (reader: Reader, archive: string) =>
  reader.ask('unpack', { archive, folder: '', prefix: '', largest: 0, most: 0 }, `${archive}.zip`)

describe('a task', () => {
  test.each([
    ['hang', 'too-long', /hang\.zip was not read.*did not come to an end.*Download it again/],
    ['silence', 'too-long', /silence\.zip was not read, because/],
    ['throw', 'broke', /throw\.zip cannot be read/],
    ['exit', 'broke', /exit\.zip cannot be read/],
  ])(
    'that does %s ends in a sentence, and those that wait are done by a new thread',
    async (what, reason, sentence) => {
      const reader = start()
      const [good, bad, after, last] = await Promise.all(['a', what, 'b', 'c'].map((archive) => ask(reader, archive)))
      expect(good).toMatchObject({ ok: true, value: { count: 1 } })
      expect(bad).toMatchObject({ ok: false, fault: { reason } })
      expect(bad?.ok === false ? bad.fault.message : '').toMatch(sentence)
      expect([after, last]).toMatchObject([
        { ok: true, value: { count: 1 } },
        { ok: true, value: { count: 2 } },
      ])
    },
  )

  test.each(['heap', 'list', 'samples'])('that fills the memory (%s) is ended before the program is', async (what) => {
    const reader = start(undefined, 60_000)
    const answer = await ask(reader, what)
    expect(answer).toMatchObject({ ok: false, fault: { reason: 'too-much-memory' } })
    expect(await ask(reader, 'a')).toMatchObject({ ok: true })
  })

  test('that takes long but shows signs of life is waited for', async () => {
    expect(await ask(start(), 'slow')).toMatchObject({ ok: true })
  })

  test('is told not to have been done when the thread’s code is missing', async () => {
    const reader = start(async () => {
      throw new Error('no such file')
    })
    expect(await ask(reader, 'a')).toMatchObject({ ok: false, fault: { reason: 'broke' } })
    expect(await ask(reader, 'b')).toMatchObject({ ok: false, fault: { reason: 'broke' } })
  })
})

test('closing answers all that wait, and what comes after', async () => {
  const reader = start()
  const asked = ['hang', 'a'].map((archive) => ask(reader, archive))
  await reader.close()
  const reasons = (await Promise.all([...asked, ask(reader, 'b')])).map((one) => (one.ok ? '' : one.fault.reason))
  expect(reasons).toEqual(['ended', 'ended', 'ended'])
})
