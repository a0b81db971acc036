/** Page and worker: a newer question of a kind takes the older one's place, what comes late is dropped, kinds take turns. */
import { describe, expect, test } from 'vitest'
import { examplePlan } from '#test/help/plans.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import { assess } from '#core/plan/assess.ts'
import { lightSceneOf } from '#core/plan/day-light.ts'
import type { FacesYearUpdate, Job, Update } from '#renderer/page/days/days-job.ts'
import type { DaysStep } from '#renderer/page/days/days-work.ts'
import { askJobs } from '#renderer/job/ask-jobs.ts'
import type * as messages from '#renderer/job/messages.ts'
import { runJobs } from '#renderer/job/run-jobs.ts'

type FromWorker = messages.FromWorker<Job, Update>
type ToWorker = messages.ToWorker<Job>

const plan = examplePlan()
const scene = lightSceneOf(plan, assess(plan))
const yearJob = (year: number) => ({ kind: 'year', scene, wishes: NO_WISHES, zone: 'UTC', year }) as const
const sidesJob = (year: number) =>
  ({ kind: 'faces-year', at: scene.at, faces: [], skyline: null, zone: 'UTC', year }) as const

const update = (month: number): FacesYearUpdate => ({ kind: 'faces-year', month, hours: [] })

/** Three steps for any job; the year is told in the first of the hours. */
function* threeSteps(job: Job): Generator<DaysStep> {
  const year = job.kind === 'year' || job.kind === 'faces-year' ? job.year : 0
  for (const month of [1, 2, 3])
    yield {
      share: month / 3,
      update:
        job.kind === 'year'
          ? {
              kind: 'year',
              dates: [`${year}-${month}`],
              spans: { counts: new Uint16Array(), edges: new Float64Array() },
            }
          : { kind: 'faces-year', month, hours: [year] },
    }
}

function worker(stepsOf: (job: Job) => Iterator<DaysStep> = threeSteps) {
  const sent: FromWorker[] = []
  const turns: (() => void)[] = []
  const hear = runJobs<Job, Update>({
    stepsOf,
    send: (message) => sent.push(message),
    later: (turn) => turns.push(turn),
  })
  const turn = (): boolean => {
    const next = turns.shift()
    next?.()
    return next !== undefined
  }
  return { sent, hear, turn, waiting: () => turns.length }
}

const ids = (sent: readonly FromWorker[]): number[] => sent.map(({ id }) => id)

describe('the worker', () => {
  test('does a job step by step and then rests', () => {
    const { sent, hear, turn, waiting } = worker()
    hear({ say: 'do', id: 7, job: sidesJob(2026) })
    expect(sent).toEqual([])
    let turns = 0
    while (turn()) turns++
    expect(sent.map((message) => message.say === 'found' && message.share)).toEqual([1 / 3, 2 / 3, 1])
    expect(ids(sent)).toEqual([7, 7, 7])
    expect([turns, waiting()]).toEqual([4, 0])
  })

  test('drops a job when another of its kind comes, and goes on with that', () => {
    const { sent, hear, turn } = worker()
    hear({ say: 'do', id: 1, job: sidesJob(2026) })
    turn()
    hear({ say: 'do', id: 2, job: sidesJob(2027) })
    while (turn());
    expect(ids(sent)).toEqual([1, 2, 2, 2])
  })

  test('gives kinds a step each in turn', () => {
    const { sent, hear, turn, waiting } = worker()
    hear({ say: 'do', id: 1, job: yearJob(2026) })
    hear({ say: 'do', id: 2, job: sidesJob(2026) })
    expect(waiting()).toBe(1)
    while (turn());
    expect(ids(sent)).toEqual([1, 2, 1, 2, 1, 2])
  })

  test('stops what is named and nothing newer', () => {
    const { sent, hear, turn } = worker()
    hear({ say: 'do', id: 1, job: sidesJob(2026) })
    hear({ say: 'do', id: 2, job: sidesJob(2027) })
    hear({ say: 'stop', id: 1, kind: 'faces-year' })
    turn()
    expect(ids(sent)).toEqual([2])
    hear({ say: 'stop', id: 2, kind: 'faces-year' })
    while (turn());
    expect(ids(sent)).toEqual([2])
  })

  test('tells of a failure and goes on with the others', () => {
    const { sent, hear, turn } = worker((job) => {
      if (job.kind === 'year') throw new Error('no sun')
      return threeSteps(job)
    })
    expect(() => hear({ say: 'do', id: 1, job: yearJob(2026) })).not.toThrow()
    hear({ say: 'do', id: 2, job: sidesJob(2026) })
    while (turn());
    expect(sent[0]).toEqual({ say: 'failed', id: 1, kind: 'year', message: 'no sun' })
    expect(ids(sent.slice(1))).toEqual([2, 2, 2])
  })
})

describe('the page', () => {
  function page() {
    const sent: ToWorker[] = []
    const heard: string[] = []
    const asker = askJobs<Job, Update>((message) => sent.push(message))
    const ask = (name: string): (() => void) =>
      asker.ask<'faces-year'>(sidesJob(2026), {
        found: ({ month }, share) => heard.push(`${name} ${month} ${share}`),
        failed: (message) => heard.push(`${name} failed: ${message}`),
      })
    return { sent, heard, asker, ask }
  }

  test('hears what belongs to its latest question alone', () => {
    const { sent, heard, asker, ask } = page()
    ask('first')
    ask('second')
    expect(sent.map((message) => message.id)).toEqual([1, 2])
    asker.hear({ say: 'found', id: 1, share: 0.5, update: update(1) })
    asker.hear({ say: 'found', id: 2, share: 0.5, update: update(2) })
    asker.hear({ say: 'failed', id: 1, kind: 'faces-year', message: 'late' })
    expect(heard).toEqual(['second 2 0.5'])
  })

  test('stops a question once, and hears nothing more of it', () => {
    const { sent, heard, asker, ask } = page()
    const stop = ask('first')
    stop()
    stop()
    asker.hear({ say: 'found', id: 1, share: 0.5, update: update(1) })
    expect(sent.map(({ say }) => say)).toEqual(['do', 'stop'])
    expect(heard).toEqual([])
  })

  test('does not stop what is done, nor a newer question by an older way', () => {
    const { sent, asker, ask } = page()
    const stopFirst = ask('first')
    const stopSecond = ask('second')
    stopFirst()
    asker.hear({ say: 'found', id: 2, share: 1, update: update(12) })
    stopSecond()
    expect(sent.map(({ say }) => say)).toEqual(['do', 'do'])
  })

  test('tells every question at work when the worker is lost', () => {
    const { heard, asker, ask } = page()
    ask('first')
    asker.lost('gone')
    asker.hear({ say: 'found', id: 1, share: 1, update: update(1) })
    expect(heard).toEqual(['first failed: gone'])
  })
})
