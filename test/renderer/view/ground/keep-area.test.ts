/** What is shown follows what is wanted: previews under a moving hand, the exact one when it rests, nothing stale in between. */
import { describe, expect, test } from 'vitest'
import type { Hearer } from '#renderer/job/ask-jobs.ts'
import type { AreaJob, AreaUpdate } from '#renderer/view/ground/ground-job.ts'
import { type AreaState, NO_AREA, type WantedArea, keepArea } from '#renderer/view/ground/keep-area.ts'
import type { Masks } from '#renderer/view/ground/masks.ts'

const masks: Masks = {
  raster: { west: 0, north: 0, pixel: 1, columns: 1, rows: 1 },
  veiled: new Uint8ClampedArray(1),
  unknown: null,
}

function eyeAt(east: number): WantedArea {
  const request = { east, north: 0, height: 1, targetHeight: 0, refraction: 0.13, radius: null }
  return { kind: 'exact', ground: 1, request }
}

function sunAt(azimuth: number): WantedArea {
  return { kind: 'shade', ground: 1, sun: { azimuth, altitude: 10 }, refraction: 0.13 }
}

interface Asked {
  readonly job: AreaJob
  readonly hearer: Hearer<AreaUpdate>
  stopped: boolean
}

function outside() {
  const asked: Asked[] = []
  const states: AreaState[] = [NO_AREA]
  const keeper = keepArea({
    ask(job, hearer) {
      const entry: Asked = { job, hearer, stopped: false }
      asked.push(entry)
      return () => {
        entry.stopped = true
      }
    },
    show: (state) => states.push(state),
  })
  const finish = (entry: Asked | undefined): void => {
    if (entry === undefined) throw new Error('nothing was asked')
    entry.hearer.found({ kind: entry.job.kind, masks }, 1)
  }
  return { keeper, asked, finish, now: () => states.at(-1) ?? NO_AREA, last: () => asked.at(-1) }
}

describe('standing still', () => {
  test('the exact one is asked for at once and shown when it is there', () => {
    const { keeper, asked, finish, now } = outside()
    keeper.want(eyeAt(1), false)
    expect(asked.map(({ job }) => job.kind)).toEqual(['exact'])
    asked[0]?.hearer.found({ kind: 'exact', masks: null }, 0.4)
    expect(now()).toMatchObject({ shown: null, share: 0.4 })
    finish(asked[0])
    expect(now()).toMatchObject({ shown: { preview: false }, share: null })
  })

  test('the same question is not asked twice', () => {
    const { keeper, asked, finish } = outside()
    keeper.want(eyeAt(1), false)
    keeper.want(eyeAt(1), false)
    finish(asked[0])
    keeper.want(eyeAt(1), true)
    keeper.want(eyeAt(1), false)
    expect(asked.length).toBe(1)
  })

  test('another question stops the one at work and takes away what answered another', () => {
    const { keeper, asked, finish, now } = outside()
    keeper.want(eyeAt(1), false)
    finish(asked[0])
    keeper.want(eyeAt(2), false)
    expect(now().shown).toBeNull()
    keeper.want(eyeAt(3), false)
    expect(asked.map(({ stopped }) => stopped)).toEqual([false, true, false])
  })

  test('nothing wanted stops the work and shows nothing', () => {
    const { keeper, asked, now } = outside()
    keeper.want(eyeAt(1), false)
    keeper.want(null, false)
    expect(asked[0]?.stopped).toBe(true)
    expect(now()).toEqual(NO_AREA)
  })

  test('a failure is told, and the next question clears it', () => {
    const { keeper, asked, now } = outside()
    keeper.want(eyeAt(1), false)
    asked[0]?.hearer.failed('the worker is lost')
    expect(now()).toMatchObject({ share: null, fault: 'the worker is lost' })
    keeper.want(eyeAt(2), false)
    expect(now().fault).toBeNull()
  })
})

describe('under a moving hand', () => {
  test('one preview at a time, then the latest; none is dropped for want of a pause', () => {
    const { keeper, asked, finish, now } = outside()
    for (const east of [1, 2, 3]) keeper.want(eyeAt(east), true)
    expect(asked.map(({ job }) => job.kind)).toEqual(['preview'])
    finish(asked[0])
    expect(now().shown).toMatchObject({ preview: true, of: eyeAt(1) })
    expect(asked.length).toBe(2)
    finish(asked[1])
    expect(now().shown).toMatchObject({ preview: true, of: eyeAt(3) })
    expect(asked.length).toBe(2)
  })

  test('what was exact is called a preview as soon as the question has moved on', () => {
    const { keeper, asked, finish, now } = outside()
    keeper.want(eyeAt(1), false)
    finish(asked[0])
    keeper.want(eyeAt(1), true)
    expect(now().shown).toMatchObject({ of: eyeAt(1), preview: false })
    keeper.want(eyeAt(2), true)
    expect(now().shown).toMatchObject({ of: eyeAt(1), preview: true })
  })

  test('when it rests the preview stays, still called one, until the exact one is there', () => {
    const { keeper, asked, finish, now, last } = outside()
    keeper.want(eyeAt(1), true)
    finish(asked[0])
    keeper.want(eyeAt(1), false)
    expect(last()?.job.kind).toBe('exact')
    expect(now()).toMatchObject({ shown: { preview: true }, share: 0 })
    finish(last())
    expect(now()).toMatchObject({ shown: { preview: false }, share: null })
  })

  test('taking hold again stops the exact one and goes on with previews', () => {
    const { keeper, asked, now, last } = outside()
    keeper.want(eyeAt(1), false)
    keeper.want(eyeAt(2), true)
    expect(asked[0]?.stopped).toBe(true)
    expect(last()?.job.kind).toBe('preview')
    expect(now().share).toBeNull()
  })

  test('what moves without changing the question leaves the exact one at work', () => {
    const { keeper, asked } = outside()
    keeper.want(eyeAt(1), false)
    keeper.want(eyeAt(1), true)
    expect(asked.map(({ job, stopped }) => [job.kind, stopped])).toEqual([['exact', false]])
  })

  test('the shadow follows the sun without previews, the one before staying meanwhile', () => {
    const { keeper, asked, finish, now } = outside()
    keeper.want(sunAt(100), true)
    finish(asked[0])
    keeper.want(sunAt(101), true)
    keeper.want(sunAt(102), true)
    expect(asked.map(({ job }) => job.kind)).toEqual(['shade', 'shade'])
    expect(now().shown?.of).toEqual(sunAt(100))
    finish(asked[1])
    expect(asked[2]?.job).toEqual(sunAt(102))
  })
})
