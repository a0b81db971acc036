/** `npm start`: builds what is stale, then starts Electron where its binary can be had and comes up, else the loopback host. */
import { messageOf } from '#core/message-of.ts'
import { spawn } from 'node:child_process'
import { mkdirSync, statSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { buildParts } from './build.ts'
import { electronBinary, fetchElectron } from './electron-binary.ts'
import { runShell } from './run-shell.ts'

const ROOT = resolve(import.meta.dirname, '..')
const FAILED_STAMP = join(ROOT, 'out/stamps/electron-not-had')
/** How long a failed download is remembered, so that each start without a network does not wait for it again. */
const REMEMBERED_MS = 12 * 3_600_000

const HELP = `npm start -- [options] [shoot file]
  --browser   use the loopback host and the default browser, also where Electron is installed
  --no-open   with the loopback host: print the address only
The environment variable STANDPOINT_DATA names another folder for the library.
`

function say(line: string): void {
  process.stdout.write(`${line}\n`)
}

async function start(): Promise<void> {
  const { values, positionals } = parseArgs({
    options: { browser: { type: 'boolean' }, 'no-open': { type: 'boolean' }, help: { type: 'boolean' } },
    allowPositionals: true,
  })
  if (values.help) return say(HELP)
  process.chdir(ROOT)
  const built = await buildParts('stale').catch((error: unknown) => {
    process.stderr.write(`The build failed.\n${messageOf(error)}\n`)
    process.exit(1)
  })
  if (built.length > 0) say(`Built ${built.join(', ')}.`)
  if (!values.browser && !values['no-open']) {
    const why = await shellFailed(positionals.map((path) => resolve(process.env['INIT_CWD'] ?? '.', path)))
    if (why === null) return
    say(`${why} Using the browser instead.`)
  }
  run(process.execPath, [join(ROOT, 'out/web/web.js'), ...(values['no-open'] ? ['--no-open'] : [])])
}

/** Runs the shell to its end; when it does not come up, answers with a sentence why. Its sandbox is never switched off. */
async function shellFailed(files: readonly string[]): Promise<string | null> {
  const electron = await electronHad()
  if (electron === null)
    return "Electron's binary is not installed and could not be fetched (npx install-electron does it)."
  const end = await runShell({ command: electron, words: [ROOT, ...files] })
  if (end.kind === 'failed') return `Electron could not start: ${end.why}.`
  process.exitCode = end.code
  return null
}

async function electronHad(): Promise<string | null> {
  const here = electronBinary()
  if (here !== null) return here
  const failedAt = statSync(FAILED_STAMP, { throwIfNoEntry: false })?.mtimeMs ?? 0
  if (Date.now() - failedAt < REMEMBERED_MS) return null
  const fetched = await fetchElectron(say)
  if (fetched === null) {
    mkdirSync(join(ROOT, 'out/stamps'), { recursive: true })
    writeFileSync(FAILED_STAMP, '')
  }
  return fetched
}

/** Hands terminal and signals to the program, and ends as it ends. */
function run(command: string, words: readonly string[]): void {
  const child = spawn(command, words, { stdio: 'inherit' })
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => child.kill(signal))
  child.on('error', (error) => {
    say(`Could not start ${command}: ${error.message}`)
    process.exitCode = 1
  })
  child.on('exit', (code) => {
    process.exitCode = code ?? 1
  })
}

await start()
