/** Messages that ask for something leave once it is done; the others stay until they are dismissed. */
import { signal } from '@preact/signals'
import { beforeEach, expect, test } from 'vitest'
import { dismiss, notices, tell, tellUntil } from '#renderer/state/library/notices.ts'

const ASKED = 'Pick two first.'
const texts = (): string[] => notices.value.map(({ text }) => text)

beforeEach(() => {
  for (const { id } of notices.value) dismiss(id)
})

test('what is asked for stays until there is enough, and leaves alone', () => {
  const picked = signal(0)
  tell('fault', 'Something else.')
  tellUntil(() => picked.value >= 2, ASKED)
  picked.value = 1
  expect(texts()).toEqual(['Something else.', ASKED])
  picked.value = 2
  expect(texts()).toEqual(['Something else.'])
})

test('once gone it does not come back, nor take with it what says the same again', async () => {
  const picked = signal(0)
  tellUntil(() => picked.value >= 2, ASKED)
  picked.value = 2
  await Promise.resolve()
  picked.value = 0
  expect(texts()).toEqual([])
  tell('fault', ASKED)
  picked.value = 2
  expect(texts()).toEqual([ASKED])
})

test('asked again while it stands, it stands once, and leaves all the same', () => {
  const picked = signal(0)
  for (let times = 0; times < 3; times++) tellUntil(() => picked.value >= 2, ASKED)
  expect(texts()).toEqual([ASKED])
  picked.value = 2
  expect(texts()).toEqual([])
})

test('dismissed by hand it is gone', () => {
  const picked = signal(0)
  tellUntil(() => picked.value >= 2, ASKED)
  const [notice] = notices.value
  if (notice === undefined) throw new Error('it is told')
  dismiss(notice.id)
  expect(texts()).toEqual([])
  picked.value = 2
  expect(texts()).toEqual([])
})
