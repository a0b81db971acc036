/** `npm start` as a user gives it: one address on the terminal, a browser with a way in that shows no key, a clean end. */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { chmod, mkdir, readFile, writeFile } from 'node:fs/promises'
import { delimiter, join, resolve } from 'node:path'
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { eventually } from '#test/help/eventually.ts'
import { temporaryData, tokenFor } from '#test/help/host.ts'

const START = resolve(import.meta.dirname, '../../app/start.ts')

interface Started {
  readonly child: ChildProcess
  readonly said: () => string
  readonly address: () => string
}

async function start(words: readonly string[], environment: Readonly<Record<string, string>>): Promise<Started> {
  const child = spawn(process.execPath, [START, ...words], {
    env: { ...process.env, ...environment },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  let said = ''
  child.stdout.on('data', (piece: Buffer) => {
    said += piece.toString()
  })
  const address = (): string => /http:\/\/127\.0\.0\.1:\d+\/#k=[\w-]+/.exec(said)?.[0] ?? ''
  await eventually(() => expect(address()).not.toBe(''), 60_000)
  return { child, said: () => said, address }
}

async function end(child: ChildProcess): Promise<number | null> {
  const gone = once(child, 'exit')
  child.kill('SIGTERM')
  const [code] = (await gone) as [number | null]
  return code
}

/** Everything every process of this machine shows on its command line. */
function commandLines(): string {
  const read = (pid: string): string => {
    try {
      return readFileSync(`/proc/${pid}/cmdline`, 'latin1')
    } catch {
      return ''
    }
  }
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .map(read)
    .join('\n')
}

describe.skipIf(process.platform !== 'linux')('npm start', () => {
  test('with --no-open prints the address and opens nothing', async () => {
    const data = await temporaryData()
    const { child, address } = await start(['--no-open'], { STANDPOINT_DATA: data.folder })
    const page = await fetch(new URL('/', address()))
    expect([page.status, page.headers.get('content-type')]).toEqual([200, 'text/html; charset=utf-8'])
    expect(await end(child)).toBe(0)
    await expect(fetch(new URL('/', address()))).rejects.toThrow('fetch failed')
    await data.remove()
  })

  test('with --browser opens it by a way in that works once and shows no token in any command line', async () => {
    const data = await temporaryData()
    const tools = join(data.folder, 'tools')
    const seen = join(data.folder, 'seen')
    await mkdir(tools)
    // Stands for the system's opener: writes down what it was told and stays, as a browser would.
    await writeFile(
      join(tools, 'xdg-open'),
      `#!/bin/sh\nprintf '%s\\n' "$@" > '${seen}.part' && mv '${seen}.part' '${seen}'\ntail -f /dev/null --pid=$PPID\n`,
    )
    await chmod(join(tools, 'xdg-open'), 0o755)
    const path = `${tools}${delimiter}${process.env['PATH'] ?? ''}`
    const { child, address } = await start(['--browser'], { STANDPOINT_DATA: data.folder, PATH: path })
    const told = await eventually(() => readFile(seen, 'utf8'))
    const key = address().split('#k=')[1] ?? 'none'
    const token = await tokenFor(address())
    expect(told.trim().split('\n')).toHaveLength(1)
    const lines = commandLines()
    expect(lines).toContain(told.trim())
    for (const secret of [key, token]) {
      expect(told).not.toContain(secret)
      expect(lines).not.toContain(secret)
    }
    const first = await fetch(told.trim(), { redirect: 'manual' })
    const location = first.headers.get('location') ?? ''
    expect([first.status, location]).toEqual([303, expect.stringMatching(/^\/#k=/)])
    expect(await tokenFor(new URL(location, told.trim()).href)).toBe(token)
    expect((await fetch(told.trim(), { redirect: 'manual' })).status).toBe(410)
    expect(await end(child)).toBe(0)
    await data.remove()
  })

  // The stand-in's words are those of Electron on a machine without a display.
  test('with an Electron that cannot start says why in one line and opens the browser', async () => {
    const data = await temporaryData()
    const tools = join(data.folder, 'tools')
    await mkdir(tools)
    await writeFile(join(tools, 'xdg-open'), '#!/bin/sh\n')
    await writeFile(
      join(tools, 'electron'),
      '#!/bin/sh\necho "[1:ERROR:ozone_platform_x11.cc(245)] Missing X server or \\$DISPLAY" >&2\nexit 1\n',
    )
    for (const name of ['xdg-open', 'electron']) await chmod(join(tools, name), 0o755)
    const { child, said, address } = await start([], {
      STANDPOINT_DATA: join(data.folder, 'library'),
      PATH: `${tools}${delimiter}${process.env['PATH'] ?? ''}`,
      ELECTRON_OVERRIDE_DIST_PATH: tools,
    })
    const told = said()
      .split('\n')
      .filter((line) => line.includes('Electron'))
    expect(told).toEqual(['Electron could not start: there is no display for its window. Using the browser instead.'])
    expect((await fetch(new URL('/', address()))).status).toBe(200)
    expect(await end(child)).toBe(0)
    await data.remove()
  })
})
