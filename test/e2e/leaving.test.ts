/** Leaving quickly: whatever the screen showed as done is saved, however slow saving is and however the page is left. */
import { chromium, type Locator, type Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import type { Spot } from '#core/record/spot.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { words } from '#renderer/words/en.ts'
import { findWholeBrowser } from '#test/help/browser.ts'
import { type SlowSaves, slowSaves } from '#test/help/slow-saves.ts'
import { boardReady, closePlan, dragBy, savedShoot } from './board.ts'
import { launchOptions } from './one-browser.ts'
import { type Opened, open } from './open.ts'
import { about, card, savedNames } from './shelf.ts'

const { shelf } = words.board
/** A few in every run. `STANDPOINT_LEAVINGS=500` tries as many as that, `STANDPOINT_LEAVINGS=50,450` the last fifty of them. */
const [LEAVINGS = 12, BEGIN = 0] = (process.env['STANDPOINT_LEAVINGS'] ?? '12').split(',').map(Number)

/** How the page goes: `tab` closes it from outside, the others from within at the very millisecond. */
const WAYS = ['reload', 'elsewhere', 'tab'] as const
interface Leaving {
  readonly way: (typeof WAYS)[number]
  /** Milliseconds from the act to the leaving. */
  readonly after: number
}

interface Library {
  readonly spots: readonly Spot[]
}
/** Does something on the board and goes. Returns what the library must then say. */
type Act = (page: Page, leaving: Leaving, before: Spot, number: number) => Promise<(now: Library) => boolean>

/** Runs in the page: the act, then the leaving, with nothing between them but the wait. */
async function doAndLeave<Argument>(
  on: Locator,
  leaving: Leaving,
  act: (thing: HTMLElement, argument: Argument) => void,
  argument: Argument,
): Promise<void> {
  const { way, after } = leaving
  // As text: the act crosses over with its argument, and both are done in one turn of the page.
  const leave = { reload: 'location.reload()', elsewhere: "location.assign('about:blank')", tab: 'undefined' }[way]
  const script = `(() => {
    (${act.toString()})(globalThis.thing, ${JSON.stringify(argument)})
    globalThis.isLeft = true
    const go = () => ${leave}
    if (${after} === 0) go()
    else return new Promise((resolve) => setTimeout(() => { resolve(); go() }, ${after}))
  })()`
  await on.evaluate((thing) => Object.assign(globalThis, { thing }))
  // The answer of a page that is gone does not come.
  await on
    .page()
    .evaluate(script)
    .catch((error: unknown) => {
      if (!/destroyed|closed|navigat|detached|garbage collected/i.test(String(error))) throw error
    })
}

const press = (thing: HTMLElement): void => thing.click()
const type = (thing: HTMLElement, text: string): void => {
  thing.focus()
  ;(thing as HTMLInputElement).select()
  document.execCommand('insertText', false, text)
}
const keys = (thing: HTMLElement, list: [key: string, altKey: boolean][]): void => {
  thing.focus()
  for (const [key, altKey] of list)
    thing.dispatchEvent(new KeyboardEvent('keydown', { key, altKey, bubbles: true, cancelable: true }))
}

const star = (page: Page, count: number): Locator =>
  about(page).getByRole('radio', { name: shelf.stars(count), exact: true })
const first = (now: Library, before: Spot): Spot | undefined => now.spots.find(({ id }) => id === before.id)
const otherStars = (before: Spot, number: number): number => 1 + ((before.stars + (number % 3)) % 5)

const ACTS: Readonly<Record<string, Act>> = {
  'a star': async (page, leaving, before, number) => {
    const stars = otherStars(before, number)
    await doAndLeave(star(page, stars), leaving, press, null)
    return (now) => first(now, before)?.stars === stars
  },
  'a name being typed': async (page, leaving, before, number) => {
    const name = `Left at once ${number}`
    const field = about(page).getByRole('textbox', { name: words.spot.name, exact: true })
    await doAndLeave(field, leaving, type, name)
    return (now) => first(now, before)?.name === name
  },
  'notes being typed': async (page, leaving, before, number) => {
    const notes = `Written last, ${number}. ${'Ask at the gate. '.repeat(number % 40)}end`
    await doAndLeave(about(page).getByRole('textbox', { name: words.spot.notes }), leaving, type, notes)
    return (now) => first(now, before)?.notes === notes
  },
  'steps by keys': async (page, leaving, before) => {
    const thing = closePlan(page).getByRole('button', { name: /^Standpoint/ })
    await doAndLeave(
      thing,
      leaving,
      keys,
      Array.from({ length: 3 }, () => ['ArrowUp', false] as [string, boolean]),
    )
    return (now) => {
      const at = first(now, before)?.standpoint.at
      return at !== undefined && Math.abs(geodesicDistance(at, before.standpoint.at) - 0.3) < 0.01
    }
  },
  'minutes by keys': async (page, leaving, before) => {
    const line = page.getByRole('slider', { name: stripWords.line })
    await doAndLeave(line, leaving, keys, [
      ['ArrowRight', false],
      ['ArrowRight', false],
    ] as [string, boolean][])
    return (now) => (first(now, before)?.when ?? 0) > before.when
  },
  'a drag': async (page, leaving, before) => {
    await dragBy(page, closePlan(page).getByRole('button', { name: /^Standpoint/ }), 12, -9)
    await doAndLeave(page.locator('body'), leaving, () => {}, null)
    return (now) => {
      const at = first(now, before)?.standpoint.at
      return at !== undefined && geodesicDistance(at, before.standpoint.at) > 0.2
    }
  },
  'the order of the shelf': async (page, leaving, before) => {
    const down = await card(page, before.name)
      .locator('xpath=ancestor::li')
      .evaluate((item) => item.nextElementSibling !== null)
    await doAndLeave(card(page, before.name), leaving, keys, [[down ? 'ArrowDown' : 'ArrowUp', true]] as [
      string,
      boolean,
    ][])
    return (now) => first(now, before)?.rank !== before.rank
  },
  undo: async (page, leaving, before, number) => {
    const stars = otherStars(before, number)
    await star(page, stars).evaluate(press)
    await expect
      .poll(async () => (await savedSpots()).find(({ id }) => id === before.id)?.stars, { timeout: 30_000 })
      .toBe(stars)
    const undo = page.getByRole('button', { name: words.board.undoWhat(words.spot.edit.stars) })
    await doAndLeave(undo, leaving, press, null)
    return (now) => first(now, before)?.stars === before.stars
  },
  'many at once': async (page, leaving, before, number) => {
    const stars = otherStars(before, number)
    const act = (thing: HTMLElement, last: number): void => {
      const all = [...document.querySelectorAll<HTMLInputElement>('.stars input')]
      for (let round = 0; round < 8; round++) all[round % 6]?.click()
      all[last]?.click()
      const status = thing as HTMLSelectElement
      status.value = status.value === 'idea' ? 'visited' : 'idea'
      status.dispatchEvent(new Event('change', { bubbles: true }))
    }
    const status = before.status === 'idea' ? 'visited' : 'idea'
    await doAndLeave(about(page).getByRole('combobox', { name: words.spot.status }), leaving, act, stars)
    return (now) => first(now, before)?.status === status
  },
  'a copy': async (page, leaving, before) => {
    const name = shelf.copyName(before.name)
    const count = (await savedNames(opened.host)).filter((one) => one === name).length
    const button = page.getByRole('button', { name: `${shelf.duplicate}: ${before.name}`, exact: true }).first()
    await doAndLeave(button, leaving, press, null)
    return ({ spots }) => spots.filter((spot) => spot.name === name).length === count + 1
  },
}

let opened: Opened
let slow: SlowSaves
beforeAll(async () => {
  opened = await open({ host: 'browser', answers: ['spot'] })
  await boardReady(opened.page)
  await opened.page.close()
  slow = await slowSaves(opened.host as NonNullable<Opened['host']>)
})
afterAll(async () => {
  await slow.close()
  await opened.close()
})

async function savedSpots(): Promise<readonly Spot[]> {
  return (await savedShoot(opened.host, 'demo')).spots
}

/** The spot on the board, as the library has it. */
async function onBoard(page: Page): Promise<Spot> {
  const name = await about(page).getByRole('textbox', { name: words.spot.name, exact: true }).inputValue()
  const spot = (await savedSpots()).find((one) => one.name === name)
  if (spot === undefined) throw new Error(`the spot “${name}” on the board is not saved`)
  return spot
}

async function becomesTrue(check: (now: Library) => boolean, patience: number): Promise<boolean> {
  return expect
    .poll(async () => check({ spots: await savedSpots() }), { timeout: patience, interval: 20 })
    .toBe(true)
    .then(
      () => true,
      () => false,
    )
}

describe('an edit and a leaving right after it', () => {
  test(
    `${LEAVINGS} times, saving slowed by 0, 100 and 250 ms: none is lost`,
    async () => {
      // A whole browser, which lets a page that is closed send its last; and calls that nobody looks into: what holds them up while the page
      // goes would be the test's own.
      const browser = await chromium.launch({ ...launchOptions(), executablePath: findWholeBrowser() })
      onTestFinished(() => browser.close())
      const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, timezoneId: 'UTC' })
      const questions: string[] = []
      context.on('dialog', (dialog) => {
        questions.push(dialog.type())
        void dialog.accept()
      })
      const lost: string[] = []
      const names = Object.keys(ACTS)
      let page = await context.newPage()
      for (let number = BEGIN; number < BEGIN + LEAVINGS; number++) {
        const name = names[number % names.length] ?? ''
        // Coprime steps, so that every act meets every wait, slowness and way.
        const leaving = {
          way: WAYS[number % 3] ?? 'reload',
          after: number % 4 === 0 ? 0 : (number * 37) % 300,
        } as const
        slow.slow(0)
        if (!page.url().startsWith('http')) await page.goto(await slow.address())
        await boardReady(page)
        const before = await onBoard(page)
        const slowed = [0, 100, 250][Math.floor(number / 3) % 3] ?? 0
        slow.slow(slowed)
        const check = await (ACTS[name] as Act)(page, leaving, before, number)
        if (leaving.way === 'tab') {
          // As the user closes a tab: the page is asked first, and may be busy.
          const gone = page.waitForEvent('close')
          await page.close({ runBeforeUnload: true })
          await gone
          page = await context.newPage()
        }
        if (!(await becomesTrue(check, 5_000)))
          lost.push(
            `${number}: ${name}, left by ${leaving.way} after ${leaving.after} ms, saving slowed by ${slowed} ms`,
          )
        // The page that was left is gone, and the next one is there.
        if (leaving.way === 'elsewhere') await page.waitForURL('about:blank')
        else await page.waitForFunction('globalThis.isLeft !== true')
      }
      expect(lost).toEqual([])
      expect(questions).toEqual([])
      await context.close()
    },
    60_000 + LEAVINGS * 15_000,
  )
})
