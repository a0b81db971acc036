/** The shell's start, before stand-ins for Electron that fail in each way it is known to fail: one phrase says which. */
import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { runShell, type ShellEnd, type ShellOptions } from '#app/run-shell.ts'
import { eventually } from '#test/help/eventually.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'standpoint-shell-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

/** A program of so many lines of shell, in the place of Electron's. */
function standIn(...lines: readonly string[]): string {
  const path = join(folder, 'electron')
  writeFileSync(path, ['#!/bin/sh', ...lines, ''].join('\n'))
  chmodSync(path, 0o755)
  return path
}

function run(command: string, more: Partial<ShellOptions> = {}): Promise<ShellEnd> {
  return runShell({ command, words: ['.'], lookEveryMs: 5, ...more })
}

const saying = (line: string) => `echo ${JSON.stringify(line).replaceAll('$', '\\$')} >&2`
const TELL = (stage: string) => `printf ${stage} > "$STANDPOINT_START_STAGE"`

// The wording of Electron, Chromium and the system's loader, from memory of their sources.
describe.skipIf(process.platform === 'win32')('a shell that does not come up is told with why', () => {
  test.each([
    [
      'no display',
      [
        saying('[1:ERROR:ozone_platform_x11.cc(245)] Missing X server or $DISPLAY'),
        saying('[1:ERROR:env.cc(257)] The platform failed to initialize.  Exiting.'),
        'exit 1',
      ],
      /no display/,
    ],
    [
      'run as root',
      [
        saying(
          '[1:FATAL:electron_main_delegate.cc(288)] Running as root without --no-sandbox is not supported. See https://crbug.com/638180.',
        ),
        'kill -TRAP $$',
      ],
      /root.*ordinary user/,
    ],
    [
      'a sandbox helper that is not set up',
      [
        saying(
          '[1:FATAL:setuid_sandbox_host.cc(163)] The SUID sandbox helper binary was found, but is not configured correctly. Rather than run without sandboxing I am aborting now.',
        ),
        'kill -TRAP $$',
      ],
      /refuses its sandbox/,
    ],
    [
      'no sandbox at all',
      [saying('[1:FATAL:zygote_host_impl_linux.cc(128)] No usable sandbox! Update your kernel'), 'exit 133'],
      /refuses its sandbox/,
    ],
    [
      'a library that is missing',
      [
        saying(
          'electron: error while loading shared libraries: libnss3.so: cannot open shared object file: No such file or directory',
        ),
        'exit 127',
      ],
      /lacks the library libnss3\.so/,
    ],
    [
      'an end within a moment',
      [saying('first'), saying('Segmentation fault'), 'exit 139'],
      /code 139 while starting, saying “Segmentation fault”/,
    ],
    ['an end without a word', ['exit 3'], /code 3 while starting$/],
    ['an end that looks well, but no window ever came', ['exit 0'], /code 0 while starting/],
    ['an end by the system', ['kill -KILL $$'], /ended by SIGKILL/],
    ['a break-down right after its window came', [TELL('shown'), 'sleep 0.05', 'exit 5'], /code 5/],
  ] as const)('%s', async (_, lines, why) => {
    expect(await run(standIn(...lines))).toEqual({ kind: 'failed', why: expect.stringMatching(why) })
  })

  test('one that hangs without a window is ended, also when it does not want to', async () => {
    const pid = join(folder, 'pid')
    const program = standIn(`echo $$ > ${pid}`, "trap '' TERM", 'while :; do sleep 0.05; done')
    const end = await run(program, { hangMs: 300, graceMs: 100 })
    expect(end).toEqual({ kind: 'failed', why: 'its window had not come after 0 seconds' })
    expect(() => process.kill(Number(readFileSync(pid, 'utf8')), 0)).toThrow('ESRCH')
  })

  test('one with a window that never shows is given up too', async () => {
    const end = await run(standIn(TELL('window'), 'exec sleep 60'), { hangMs: 300 })
    expect(end.kind).toBe('failed')
  })

  test('one that may not be run, or is made for another machine, or is not there', async () => {
    const program = standIn('exit 0')
    chmodSync(program, 0o644)
    expect(await run(program)).toMatchObject({ why: expect.stringContaining('may not be run') })
    writeFileSync(program, Buffer.from('\u007fELF of some other kind of machine'))
    chmodSync(program, 0o755)
    expect((await run(program)).kind).toBe('failed')
    expect(await run(join(folder, 'none'))).toMatchObject({ why: expect.stringContaining('not there') })
  })
})

describe.skipIf(process.platform === 'win32')('a shell that comes up', () => {
  test('is left alone and its end is the end', async () => {
    const program = standIn(TELL('window'), TELL('shown'), 'sleep 0.6', 'exit 0')
    expect(await run(program, { hangMs: 300 })).toEqual({ kind: 'ended', code: 0 })
  })

  test('and fails long after has started all the same', async () => {
    expect(await run(standIn(TELL('shown'), 'sleep 0.3', 'exit 7'), { earlyMs: 50 })).toEqual({
      kind: 'ended',
      code: 7,
    })
  })

  test('may be closed before its page is there', async () => {
    expect(await run(standIn(TELL('window'), 'sleep 0.1', 'exit 0'))).toEqual({ kind: 'ended', code: 0 })
  })

  test('as a second one hands over to the first and ends', async () => {
    expect(await run(standIn(TELL('handed-over'), 'exit 0'))).toEqual({ kind: 'ended', code: 0 })
  })

  test('is ended from the terminal without being started again', async () => {
    const up = join(folder, 'up')
    const ending = run(standIn(`trap 'exit 130' INT`, `touch ${up}`, 'while :; do sleep 0.05; done'))
    await eventually(() => expect(existsSync(up)).toBe(true))
    process.emit('SIGINT')
    expect(await ending).toEqual({ kind: 'ended', code: 130 })
  })

  test('is given the words it was started with, and never one against its sandbox', async () => {
    const words = join(folder, 'words')
    await run(standIn(`echo "$@" > ${words}`, TELL('handed-over')))
    expect(readFileSync(words, 'utf8').trim()).toBe('.')
  })
})
