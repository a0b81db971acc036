/** Several workers over one list of tasks: everything is done whatever their number and order, and a stop is heard by all. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { FromWorker, ToWorker } from '#renderer/job/messages.ts'
import { type TaskPool, openPool } from '#renderer/job/task-pool.ts'

interface Job {
  readonly kind: 'count'
  readonly to: number
}
interface Update {
  readonly kind: 'count'
  readonly reached: number
}

/** Workers that count on when they are told to, in whatever order. */
function fakeWorkers(size: number) {
  const workers: {
    readonly hear: (message: FromWorker<Job, Update>) => void
    readonly lost: (message: string) => void
    at: { id: number; to: number; reached: number } | null
    ended: boolean
  }[] = []
  const pool: TaskPool<Job, Update> = openPool(size, (ears) => {
    const worker = { ...ears, at: null, ended: false } as (typeof workers)[number]
    workers.push(worker)
    return {
      send(message: ToWorker<Job>) {
        if (message.say === 'do') worker.at = { id: message.id, to: message.job.to, reached: 0 }
        else if (worker.at?.id === message.id) worker.at = null
      },
      end() {
        worker.ended = true
      },
    }
  })
  const step = (index: number): void => {
    const worker = workers[index]
    const { at } = worker ?? {}
    if (worker === undefined || at === null || at === undefined) return
    at.reached += 1
    if (at.reached >= at.to) worker.at = null
    worker.hear({
      say: 'found',
      id: at.id,
      share: at.reached / at.to,
      update: { kind: 'count', reached: at.reached },
    })
  }
  return { pool, workers, step }
}

function heard() {
  const found: [number, number][] = []
  const told: { done: number; failed: string[]; shares: readonly number[] } = { done: 0, failed: [], shares: [] }
  return {
    found,
    told,
    hearer: {
      found(task: number, update: Update, shares: readonly number[]) {
        found.push([task, update.reached])
        told.shares = [...shares]
      },
      done() {
        told.done += 1
      },
      failed(message: string) {
        told.failed.push(message)
      },
    },
  }
}

const tasksOf = (counts: readonly number[]): Job[] => counts.map((to) => ({ kind: 'count', to }))

test('every step of every task is heard once, and the end once, with one worker as with four, in any order of work', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 4 }),
      fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 9 }),
      fc.infiniteStream(fc.integer({ min: 0, max: 3 })),
      (size, counts, order) => {
        const { pool, step } = fakeWorkers(size)
        const { found, told, hearer } = heard()
        pool.run(tasksOf(counts), hearer)
        for (let turn = 0; told.done === 0 && turn < 2_000; turn++) step((order.next().value ?? 0) % size)
        const wanted = counts.flatMap((to, task) => Array.from({ length: to }, (_, index) => [task, index + 1]))
        expect(found.toSorted((one, other) => one[0] - other[0] || one[1] - other[1])).toEqual(wanted)
        expect(told).toEqual({ done: 1, failed: [], shares: counts.map(() => 1) })
      },
    ),
  )
})

test('no worker is idle while tasks are left', () => {
  const { pool, workers, step } = fakeWorkers(2)
  pool.run(tasksOf([1, 9, 1, 1]), heard().hearer)
  step(0)
  step(0)
  expect(workers.map(({ at }) => at?.to)).toEqual([1, 9])
  step(0)
  expect(workers.map(({ at }) => at?.to)).toEqual([undefined, 9])
})

test('after a stop nothing is heard and every worker has left its task', () => {
  const { pool, workers, step } = fakeWorkers(3)
  const { found, told, hearer } = heard()
  const stop = pool.run(tasksOf([3, 3, 3, 3]), hearer)
  step(0)
  const [left] = workers
  const late = left?.at?.id ?? 0
  stop()
  expect(workers.every(({ at }) => at === null)).toBe(true)
  left?.hear({ say: 'found', id: late, share: 1, update: { kind: 'count', reached: 3 } })
  for (const index of [0, 1, 2]) step(index)
  expect(found).toEqual([[0, 1]])
  expect(told.done).toBe(0)
})

test('another list takes the place of the one at work', () => {
  const { pool, step } = fakeWorkers(1)
  const first = heard()
  const second = heard()
  pool.run(tasksOf([2]), first.hearer)
  pool.run(tasksOf([2]), second.hearer)
  step(0)
  step(0)
  expect(first.found).toEqual([])
  expect(second.told.done).toBe(1)
})

test('a task that fails stops the others and says why', () => {
  const { pool, workers, step } = fakeWorkers(2)
  const { found, told, hearer } = heard()
  pool.run(tasksOf([5, 5, 5]), hearer)
  workers[1]?.lost('out of memory')
  expect(told.failed).toEqual(['out of memory'])
  step(0)
  expect(found).toEqual([])
  expect(told.done).toBe(0)
})

test('no task at all is done at once', () => {
  const { told, hearer } = heard()
  fakeWorkers(2).pool.run([], hearer)
  expect(told.done).toBe(1)
})
