/** The loopback host in a real browser: the key leaves the address, other windows work, nothing else may run or load. */
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { chromium } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { BROWSER_FLAGS } from './one-browser.ts'
import { newContext, type Opened, open } from './open.ts'
import { words } from '#renderer/words/en.ts'
import { findWholeBrowser } from '#test/help/browser.ts'
import { temporaryData, tokenFor } from '#test/help/host.ts'
import { boardReady } from './board.ts'

let opened: Opened

beforeAll(async () => {
  opened = await open({ host: 'browser' })
})

afterAll(() => opened.close())

/** Troubles that the test itself provoked. */
function provoked(): string[] {
  return opened.troubles.splice(0)
}

describe('the key', () => {
  test('is gone from address and history once the page has it, and a reload keeps it', async () => {
    const { page, host } = opened
    const address = (): Promise<string> => page.evaluate(() => location.href)
    await page.waitForFunction(() => location.hash === '')
    expect(await address()).toBe(`${host?.origin}/`)
    await page.reload()
    expect(await address()).toBe(`${host?.origin}/`)
    expect(await shootCount()).toBe(1)
  })

  test('is in no cookie and no lasting storage', async () => {
    const { page, context, host } = opened
    expect(await context.cookies()).toEqual([])
    const kept = await page.evaluate(() => JSON.stringify(Object.entries(localStorage)) + document.cookie)
    expect(kept).not.toContain(host?.token)
  })

  test('is not in the history that the browser writes, and what is there opens nothing', async () => {
    const profile = await temporaryData()
    const context = await chromium.launchPersistentContext(profile.folder, {
      executablePath: findWholeBrowser(),
      args: BROWSER_FLAGS,
    })
    const page = await context.newPage()
    const address = (await opened.host?.address()) ?? ''
    await page.goto(address)
    await boardReady(page)
    await context.close()
    const history = new Database(join(profile.folder, 'Default', 'History'), { readonly: true })
    const visited = history.prepare<[], { url: string }>('SELECT url FROM urls').all()
    history.close()
    const addresses = visited.map(({ url }) => url)
    expect(addresses.some((url) => url.startsWith(opened.host?.origin ?? 'none'))).toBe(true)
    expect(addresses.join('\n')).not.toContain(opened.host?.token)
    for (const url of addresses.filter((one) => one.includes('#')))
      await expect(tokenFor(url)).rejects.toThrow('used up')
    await profile.remove()
  })

  test('used up leaves a page that says so and what to do', async () => {
    const address = (await opened.host?.address()) ?? ''
    await tokenFor(address)
    const page = await opened.context.newPage()
    await page.goto(address)
    await page.getByRole('heading', { name: words.board.trouble.noKey }).waitFor()
    await page.getByRole('alert').filter({ hasText: words.board.trouble.noKeyWhat }).waitFor()
    await page.close()
    expect(provoked().filter((trouble) => !trouble.startsWith('console: Failed to load resource'))).toEqual([])
  })

  test('is not had by a page opened without it', async () => {
    const stranger = await newContext()
    const page = await stranger.newPage()
    await page.goto(`${opened.host?.origin}/`)
    const status = await page.evaluate(async () => {
      const headers = { 'content-type': 'application/json', authorization: 'Bearer ' }
      return (await fetch('/api/library.shoots', { method: 'POST', headers, body: '{}' })).status
    })
    expect(status).toBe(401)
    await stranger.close()
  })

  test('lets a second window work beside the first', async () => {
    const second = await opened.another()
    await second.waitForFunction(() => location.hash === '')
    expect(await shootCount(second)).toBe(1)
    await second.close()
  })
})

describe('the content policy', () => {
  test('runs no script written into the page, as an element or as a handler', async () => {
    const ran = await opened.page.evaluate(() => {
      const script = document.createElement('script')
      script.textContent = 'window.ranInline = true'
      document.head.append(script)
      const image = document.createElement('div')
      image.innerHTML = '<button onclick="window.ranHandler = true">x</button>'
      image.querySelector('button')?.click()
      return 'ranInline' in window || 'ranHandler' in window
    })
    expect(ran).toBe(false)
    expect(provoked().join('\n')).toContain('Content Security Policy')
  })

  test('loads nothing from elsewhere and cannot be framed', async () => {
    const outcome = await opened.page.evaluate(async () => {
      const fetched = await fetch('https://example.org/').then(
        () => 'fetched',
        () => 'refused',
      )
      const frame = document.createElement('iframe')
      frame.src = location.href
      document.body.append(frame)
      await new Promise((done) => frame.addEventListener('load', done))
      const inside = frame.contentDocument?.querySelector('script') ? 'framed' : 'empty'
      frame.remove()
      return [fetched, inside]
    })
    expect(outcome).toEqual(['refused', 'empty'])
    const troubles = provoked()
    expect(troubles.join('\n')).toContain('Content Security Policy')
    // Stopped by the policy in the page, before the test's own block of everything outside could see it.
    expect(troubles.filter((trouble) => trouble.startsWith('left the program'))).toEqual([])
  })
})

test('another site cannot call, embed or read the host', async () => {
  const { host } = opened
  const context = await newContext()
  await context.route('https://other.example/', (route) =>
    route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>other</title>' }),
  )
  const page = await context.newPage()
  await page.goto('https://other.example/')
  const outcome = await page.evaluate(
    async ({ origin, token }) => {
      const attempt = (init: RequestInit): Promise<string> =>
        fetch(`${origin}/api/library.shoots`, init).then(
          (answer) => `${answer.type} ${answer.status}`,
          () => 'refused',
        )
      const headers = { 'content-type': 'application/json', authorization: `Bearer ${token}` }
      const image = new Image()
      const seen = new Promise<string>((done) => {
        image.addEventListener('load', () => done('loaded'))
        image.addEventListener('error', () => done('refused'))
      })
      image.src = `${origin}/icon.png`
      return [
        await attempt({ method: 'POST', headers, body: '{}' }),
        await fetch(`${origin}/`).then(
          () => 'read',
          () => 'refused',
        ),
        await seen,
      ]
    },
    { origin: host?.origin ?? '', token: host?.token ?? '' },
  )
  expect(outcome).toEqual(['refused', 'refused', 'refused'])
  await context.close()
})

/** Asks the library as the page does, by the key the page keeps. */
async function shootCount(page = opened.page): Promise<number> {
  return page.evaluate(async () => {
    const token = Object.values(sessionStorage)[0] as string
    const headers = { 'content-type': 'application/json', authorization: `Bearer ${token}` }
    const answer = await fetch('/api/library.shoots', { method: 'POST', headers, body: '{}' })
    const { value } = (await answer.json()) as { value: { shoots: unknown[] } }
    return value.shoots.length
  })
}
