/** A form may be filled in any order: figures that belong together wait for one another, are told, and none is lost. */
import type { Locator } from 'playwright-core'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import type { Lens } from '#core/optics/lens.ts'
import type { SpanForm, SpanLandmark } from '#core/scene/landmark.ts'
import { endToEnd } from '#core/scene/span-line.ts'
import { SUBJECT_PRESETS } from '#core/scene/subject.ts'
import { lensRange } from '#renderer/text/names.ts'
import { formWords } from '#renderer/words/en-forms.ts'
import { words } from '#renderer/words/en.ts'
import { boardReady, savedShoot, soon } from './board.ts'
import { type Opened, open } from './open.ts'
import { askForPage } from './pages.ts'

const say = words.shoot

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
  await askForPage(opened.page, 'shoot')
  await opened.page.getByRole('heading', { name: say.subject }).waitFor()
})
afterAll(() => opened.close())

async function lenses(): Promise<readonly Lens[]> {
  return (await savedShoot(opened.host, 'demo')).shoot.bag.lenses
}

/** The card of the lens added last. */
function lastCard(): Locator {
  return opened.page.getByRole('group', { name: / mm f\//u }).last()
}

function field(within: Locator, label: string): Locator {
  return within.getByRole('textbox', { name: new RegExp(`^${label.replaceAll('.', String.raw`\.`)}`, 'u') })
}

async function type(within: Locator, label: string, text: string): Promise<void> {
  await field(within, label).fill(text)
  await field(within, label).press('Tab')
}

/** Waits until the lens added last is so in the library. */
function becomes(part: Partial<Lens>): Promise<void> {
  return expect.poll(async () => (await lenses()).at(-1), { timeout: 30_000, interval: 50 }).toMatchObject(part)
}

describe('a new lens', () => {
  beforeEach(async () => {
    const count = (await lenses()).length
    const entry = opened.page.getByRole('textbox', { name: formWords.lens.label })
    await entry.fill('24-70/2.8')
    await entry.press('Enter')
    await soon(async () => (await lenses()).length === count + 1)
    await becomes({ focalMin: 24, focalMax: 70 })
  })

  test.each([
    ['70', '200'],
    ['100', '400'],
    ['14', '20'],
    ['24', '105'],
  ])('becomes %s to %s whichever end is typed first', async (short, long) => {
    const wanted = { focalMin: Number(short), focalMax: Number(long) }
    await type(lastCard(), say.focalMin, short)
    await type(lastCard(), say.focalMax, long)
    await becomes(wanted)
    // Back by the other end first.
    await type(lastCard(), say.focalMax, '70')
    await type(lastCard(), say.focalMin, '24')
    await becomes({ focalMin: 24, focalMax: 70 })
    await type(lastCard(), say.focalMax, long)
    await type(lastCard(), say.focalMin, short)
    await becomes(wanted)
    expect((await lastCard().locator('.refusal').allInnerTexts()).join('')).toBe('')
  })

  test('takes both widest openings once the smallest has been typed', async () => {
    await type(lastCard(), say.widestAtMin, '32')
    await type(lastCard(), say.widestAtMax, '45')
    await lastCard().getByText(say.field.widestAboveSmallest).first().waitFor()
    await type(lastCard(), say.smallest, '64')
    await becomes({ widestAtMin: 32, widestAtMax: 45, smallest: 64 })
  })

  test('keeps an end that does not fit, told beside it, while one looks at the board and comes back', async () => {
    const { page } = opened
    await type(lastCard(), say.focalMin, '100')
    await lastCard().getByText(say.field.shortAboveLong).waitFor()
    expect((await lenses()).at(-1)).toMatchObject({ focalMin: 24, focalMax: 70 })
    await page.getByRole('button', { name: words.board.back }).click()
    await boardReady(page)
    await askForPage(page, 'shoot')
    await lastCard().getByText(say.field.shortAboveLong).waitFor()
    expect(await field(lastCard(), say.focalMin).inputValue()).toBe('100')
    await type(lastCard(), say.focalMax, '400')
    await becomes({ focalMin: 100, focalMax: 400 })
  })

  test('called fixed by mistake has its long end back', async () => {
    const kind = (name: string): Promise<void> => lastCard().locator('.segment label', { hasText: name }).click()
    await kind(say.prime)
    await becomes({ focalMin: 24, focalMax: 24 })
    await kind(say.zoom)
    await becomes({ focalMin: 24, focalMax: 70 })
    expect(lensRange((await lenses()).at(-1) as Lens)).toBe('24–70 mm f/2.8')
  })
})

/** The fold of what is seldom changed, opened if it is closed. */
async function finePoints(): Promise<Locator> {
  const form = opened.page.getByRole('region', { name: say.camera })
  const fold = form.locator('details')
  if ((await fold.getAttribute('open')) === null) await fold.locator('summary').click()
  await field(form, say.longSide).waitFor()
  return form
}

test('a sensor of one’s own size leads to its sides', async () => {
  const form = opened.page.getByRole('region', { name: say.camera })
  expect(await field(form, say.longSide).count()).toBe(0)
  await form.getByRole('combobox', { name: say.format }).selectOption('own')
  await expect.poll(() => field(form, say.longSide).evaluate((side) => side === document.activeElement)).toBe(true)
})

test('both sides of a smaller sensor and of a larger one, the long side first and last', async () => {
  const form = await finePoints()
  const sides = async (): Promise<readonly number[]> => {
    const { camera } = (await savedShoot(opened.host, 'demo')).shoot.bag
    return [camera.sensorWidth, camera.sensorHeight]
  }
  for (const [first, second] of [
    ['long', 'short'],
    ['short', 'long'],
  ] as const) {
    for (const [long, short] of [
      ['17.3', '13'],
      ['53.4', '40'],
    ] as const) {
      const side = (which: 'long' | 'short'): Promise<void> =>
        which === 'long' ? type(form, say.longSide, long) : type(form, say.shortSide, short)
      await side(first)
      await side(second)
      await expect.poll(sides, { timeout: 30_000 }).toEqual([Number(long), Number(short)])
    }
  }
})

test('shutter times past one another, either first', async () => {
  const form = await finePoints()
  await type(form, formWords.camera.slowestShutter, '0.002')
  await type(form, formWords.camera.fastestShutter, '8000')
  await expect.poll(async () => (await savedShoot(opened.host, 'demo')).shoot.bag.camera.slowestShutter).toBe(0.002)
  await type(form, formWords.camera.fastestShutter, '100')
  await form.getByText(say.shutterOrder).waitFor()
  await type(form, formWords.camera.slowestShutter, '30')
  await expect
    .poll(async () => (await savedShoot(opened.host, 'demo')).shoot.bag.camera)
    .toMatchObject({ fastestShutter: 0.01, slowestShutter: 30 })
})

describe('a span', () => {
  const made = formWords.landmark
  const span = async () => (await savedShoot(opened.host, 'demo')).shoot.landmarks.at(-1) as SpanLandmark
  const spanBecomes = (part: Partial<SpanLandmark>): Promise<void> =>
    expect.poll(span, { timeout: 30_000, interval: 50 }).toMatchObject(part)
  const card = (form: SpanForm): Locator => opened.page.getByRole('group', { name: say.spanForms[form] }).last()
  const take = (before: SpanForm, after: SpanForm): Promise<readonly string[]> =>
    card(before).getByRole('combobox', { name: say.form }).selectOption({ label: say.spanForms[after] })

  test('holds a deck above the towers until they are higher', async () => {
    const { page } = opened
    await page.getByRole('combobox', { name: say.edit.addLandmark }).selectOption({ label: say.landmarkKinds.span })
    await page.getByRole('button', { name: say.addLandmark, exact: true }).click()
    const form = card('suspension')
    await type(form, made.deck, '180')
    await form.getByText(made.deckAboveTop.suspension).waitFor()
    await type(form, made.height.suspension, '240')
    await spanBecomes({ deckHeight: 180, height: 240 })
  })

  test('as a wall has no deck to stand in the way of its height; as a bridge it has its deck again', async () => {
    await take('suspension', 'wall')
    await spanBecomes({ form: 'wall', deckHeight: 180 })
    expect(await field(card('wall'), made.deck).count()).toBe(0)
    await take('wall', 'suspension')
    await spanBecomes({ form: 'suspension', deckHeight: 180, height: 240 })
    await type(card('suspension'), made.height.suspension, '12')
    await card('suspension').getByText(made.topBelowDeck.suspension).waitFor()
    // What waited for a lower deck waits for nothing any more.
    await take('suspension', 'wall')
    await spanBecomes({ form: 'wall', deckHeight: 180, height: 12 })
  })

  test('takes length and bearing as typed, from its first point', async () => {
    const first = (await span()).line[0]
    await type(card('wall'), made.length, '340')
    await expect.poll(async () => Math.round(endToEnd((await span()).line).distance * 100) / 100).toBe(340)
    await type(card('wall'), made.bearing, '94')
    await expect.poll(async () => Math.round((endToEnd((await span()).line).bearing ?? 0) * 100) / 100).toBe(94)
    expect(Math.round(endToEnd((await span()).line).distance * 100) / 100).toBe(340)
    expect((await span()).line[0]).toEqual(first)
    await opened.page.keyboard.press('Control+Z')
    await expect.poll(async () => Math.round(endToEnd((await span()).line).bearing ?? 0)).toBe(90)
  })
})

test('a subject shortened by mistake has its places again, and what was typed outlives another kind', async () => {
  const form = opened.page.getByRole('region', { name: say.subject })
  const subject = async () => (await savedShoot(opened.host, 'demo')).shoot.subject
  const before = await subject()
  expect(before.features.length).toBeGreaterThan(0)
  await type(form, say.length, '0.25')
  await expect.poll(async () => (await subject()).features.at(-1)?.behindFront).toBe(0.25)
  await type(form, say.length, '2.6')
  await expect.poll(async () => (await subject()).features).toEqual(before.features)
  await form.getByRole('combobox', { name: say.subjectKind }).selectOption({ label: say.subjectKinds.van })
  await expect.poll(subject).toMatchObject({ kind: 'van', length: 2.6, width: SUBJECT_PRESETS.van.width })
  await form.getByRole('button', { name: /^Usual size/u }).click()
  await expect.poll(subject).toMatchObject(SUBJECT_PRESETS.van)
})
