/** The picture through the lens is the same from the pen of the screen and from the pen of paper. */
import { resolve } from 'node:path'
import type { BrowserContext, Page } from 'playwright-core'
import { build, type Rolldown } from 'vite'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { SKIES } from '#core/light/exposure.ts'
import { assess } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { SUBJECT_KINDS, SUBJECT_PRESETS } from '#core/scene/subject.ts'
import { pictureOf } from '#renderer/view/lens-picture/picture.ts'
import { strokesOf } from '#renderer/view/lens-picture/strokes.ts'
import { type Strokes } from '#renderer/view/lens-picture/stroke.ts'
import { newContext } from '#test/e2e/open.ts'
import { generator } from '#test/help/generator.ts'
import { bridgeAt, examplePlan } from '#test/help/plans.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'
import type { PenDifference } from './both-pens.ts'

const PLANS = 40
const GROUNDS = [mountains(257, 40), groundOf(129, 40, (east, north) => 300 + east / 40 + 60 * Math.sin(north / 700))]
const FORMS = ['suspension', 'arches', 'girder', 'wall'] as const

/** Plans of every subject, hour, sky and form, on level and on true ground, each drawn from its number alone. */
function planOfNumber(number: number): Plan {
  const random = generator(number + 1)
  const pick = <One>(all: readonly One[]): One => all[Math.floor(random() * all.length)] as One
  const kind = SUBJECT_KINDS[number % SUBJECT_KINDS.length] ?? 'van'
  const at = { lat: 46.9, lon: 10.3 }
  const bearing = random() * 360
  const landmark = { ...bridgeAt(at, bearing, 300 + random() * 900), form: pick(FORMS), baseElevation: null }
  const plan = examplePlan({
    at,
    bearing,
    subject: { kind, name: kind, ...SUBJECT_PRESETS[kind] },
    landmark: number % 9 === 8 ? null : landmark,
    distance: 4 + random() * 9,
    turned: random() * 360,
    shoot: { sky: pick(SKIES) },
    spot: { when: Date.UTC(2026, 5, 14, Math.floor(random() * 24), 10) },
    shot: {
      orientation: pick(['lying', 'upright'] as const),
      aperture: pick([1.4, 2.8, 5.6, 16]),
      placement: { across: random() * 0.4 - 0.2, up: random() * 0.4 - 0.3 },
    },
  })
  const { stop, standpoint } = plan.spot
  const unmeasured = {
    ...plan.spot,
    stop: { ...stop, elevation: null },
    standpoint: { ...standpoint, elevation: null },
  }
  return { ...plan, spot: unmeasured, terrain: number % 2 === 0 ? (GROUNDS[number % 4 === 0 ? 0 : 1] ?? null) : null }
}

function strokesOfNumber(number: number): Strokes {
  const plan = planOfNumber(number)
  const picture = pictureOf(plan, assess(plan), 320)
  if (picture === null) throw new Error(`plan ${number} is not framed`)
  return strokesOf(picture, number % 4 < 2 ? 'screen' : 'paper')
}

let context: BrowserContext
let page: Page

beforeAll(async () => {
  const made = (await build({
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      minify: false,
      lib: { entry: resolve(import.meta.dirname, 'both-pens.ts'), formats: ['iife'], name: 'pens' },
    },
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  })) as Rolldown.RolldownOutput[]
  const [script] = made.flatMap(({ output }) => output.flatMap((file) => (file.type === 'chunk' ? [file.code] : [])))
  context = await newContext()
  page = await context.newPage()
  await page.addScriptTag({ content: script ?? '' })
})

afterAll(() => context.close())

test.each([1, 2])(`both pens draw one picture of ${PLANS} plans at %d device pixels a pixel`, async (pixelRatio) => {
  const found: PenDifference[] = []
  for (let number = 0; number < PLANS; number++) {
    const strokes = strokesOfNumber(number)
    found.push(
      await page.evaluate(
        ([one, ratio]) =>
          (globalThis as unknown as { comparePens: (s: Strokes, r: number) => Promise<PenDifference> }).comparePens(
            one,
            ratio,
          ),
        [strokes, pixelRatio] as const,
      ),
    )
  }
  for (const [number, { mean, far, patch, colours }] of found.entries()) {
    // Edges are smoothed by two rasterisers, so single pixels along them differ; areas, places and tones do not.
    expect({ number, mean }).toEqual({ number, mean: Math.min(mean, 1.2) })
    expect({ number, far }).toEqual({ number, far: Math.min(far, 0.01) })
    expect({ number, patch }).toEqual({ number, patch: Math.min(patch, 26) })
    expect(colours).toBeGreaterThan(20)
  }
})
