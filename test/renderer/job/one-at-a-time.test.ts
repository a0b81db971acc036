/** One job at a time: each ends, and of those wished meanwhile only the last is begun. */
import { expect, test } from 'vitest'
import type { Hearer } from '#renderer/job/ask-jobs.ts'
import { oneAtATime } from '#renderer/job/one-at-a-time.ts'

interface Update {
  readonly kind: 'word'
  readonly text: string
}

function outside() {
  const begun: { job: number; hearer: Hearer<Update>; stopped: boolean }[] = []
  const found: [number, string][] = []
  const jobs = oneAtATime<number, Update>(
    (job, hearer) => {
      const entry = { job, hearer, stopped: false }
      begun.push(entry)
      return () => {
        entry.stopped = true
      }
    },
    (job, { text }) => found.push([job, text]),
  )
  return { jobs, begun, found }
}

test('of those wished while one is at work only the last is begun', () => {
  const { jobs, begun, found } = outside()
  for (const job of [1, 2, 3]) jobs.want(job)
  expect(begun.map(({ job }) => job)).toEqual([1])
  begun[0]?.hearer.found({ kind: 'word', text: 'half' }, 0.5)
  expect(begun.length).toBe(1)
  begun[0]?.hearer.found({ kind: 'word', text: 'whole' }, 1)
  expect(begun.map(({ job }) => job)).toEqual([1, 3])
  begun[1]?.hearer.found({ kind: 'word', text: 'whole' }, 1)
  jobs.want(3)
  expect(begun.length).toBe(2)
  expect(found).toEqual([
    [1, 'half'],
    [1, 'whole'],
    [3, 'whole'],
  ])
})

test('one that fails makes room for the next and is not tried again by itself', () => {
  const { jobs, begun } = outside()
  jobs.want(1)
  begun[0]?.hearer.failed('lost')
  expect(begun.length).toBe(1)
  jobs.want(2)
  expect(begun.map(({ job }) => job)).toEqual([1, 2])
})

test('wanting nothing stops what is at work', () => {
  const { jobs, begun } = outside()
  jobs.want(1)
  jobs.want(2)
  jobs.want(null)
  expect(begun.map(({ stopped }) => stopped)).toEqual([true])
  jobs.want(2)
  expect(begun.map(({ job }) => job)).toEqual([1, 2])
})
