/** Starts Electron and stays with it: hands it terminal and signals, and tells when it did not come up. */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { readStage, STAGE_VARIABLE, type StartStage } from './start-stage.ts'
import { whyNoShell } from './why-no-shell.ts'

export type ShellEnd =
  | { readonly kind: 'ended'; readonly code: number }
  /** It never came up, or broke down right after: `why` in one phrase. */
  | { readonly kind: 'failed'; readonly why: string }

export interface ShellOptions {
  readonly command: string
  readonly words: readonly string[]
  /** A first start on a slow disk takes its time. */
  readonly hangMs?: number
  /** A shell that breaks down this soon after its window came has not really started. */
  readonly earlyMs?: number
  readonly lookEveryMs?: number
  /** Between asking a hung shell to end and ending it. */
  readonly graceMs?: number
}

const MOST_SAID = 64_000
const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const

export async function runShell(options: ShellOptions): Promise<ShellEnd> {
  const place = mkdtempSync(join(tmpdir(), 'standpoint-start-'))
  try {
    return await started(options, join(place, 'stage'))
  } finally {
    rmSync(place, { recursive: true, force: true })
  }
}

interface Run {
  said: string
  stage: StartStage | null
  shownAt: number
  /** The user ended it from the terminal. */
  wanted: boolean
  hungFor: number | null
}

async function started(options: ShellOptions, stageFile: string): Promise<ShellEnd> {
  const run: Run = { said: '', stage: null, shownAt: Number.POSITIVE_INFINITY, wanted: false, hungFor: null }
  const child = spawn(options.command, options.words, {
    stdio: ['inherit', 'inherit', 'pipe'],
    env: { ...process.env, [STAGE_VARIABLE]: stageFile },
  })
  const stopListening = listen(child, run)
  const stopLooking = follow(child, run, stageFile, options)
  try {
    const [code, signal] = (await once(child, 'exit')) as [number | null, NodeJS.Signals | null]
    look(run, stageFile)
    await heardOut(child)
    if (isRealEnd(run, code, options.earlyMs ?? 10_000)) return { kind: 'ended', code: code ?? 1 }
    return { kind: 'failed', why: whyNoShell({ ...run, code, signal, errno: null }) }
  } catch (error) {
    const errno = error instanceof Error && 'code' in error ? String(error.code) : String(error)
    return { kind: 'failed', why: whyNoShell({ ...run, code: null, signal: null, errno }) }
  } finally {
    stopLooking()
    stopListening()
    // A process of the shell's that lives on must not keep this one waiting for its words.
    child.stderr?.destroy()
  }
}

/** A start that failed is not meant by the user; everything that ends well or late is. */
function isRealEnd(run: Run, code: number | null, earlyMs: number): boolean {
  if (run.wanted || run.stage === 'handed-over') return true
  if (run.hungFor !== null || run.stage === null) return false
  return code === 0 || performance.now() - run.shownAt > earlyMs
}

/** What it says is kept back until its window is there: of a start that fails, one line of ours is enough. */
function listen(child: ChildProcess, run: Run): () => void {
  child.stderr?.on('data', (piece: Buffer) => {
    if (run.stage === 'shown') process.stderr.write(piece)
    else run.said = (run.said + piece.toString()).slice(-MOST_SAID)
  })
  const pass = SIGNALS.map((signal) => {
    const listener = (): void => {
      run.wanted = true
      child.kill(signal)
    }
    process.on(signal, listener)
    return () => process.off(signal, listener)
  })
  return () => {
    for (const stop of pass) stop()
  }
}

function follow(child: ChildProcess, run: Run, stageFile: string, options: ShellOptions): () => void {
  const began = performance.now()
  const hangMs = options.hangMs ?? 45_000
  let kill: NodeJS.Timeout | undefined
  const timer = setInterval(() => {
    look(run, stageFile)
    const late = performance.now() - began > hangMs
    if (run.stage === 'shown' || run.stage === 'handed-over' || run.hungFor !== null || !late) return
    run.hungFor = Math.round(hangMs / 1000)
    child.kill()
    kill = setTimeout(() => child.kill('SIGKILL'), options.graceMs ?? 3_000)
  }, options.lookEveryMs ?? 100)
  return () => {
    clearInterval(timer)
    clearTimeout(kill)
  }
}

function look(run: Run, stageFile: string): void {
  if (run.stage === 'shown') return
  run.stage = readStage(stageFile)
  if (run.stage !== 'shown') return
  run.shownAt = performance.now()
  process.stderr.write(run.said)
}

/** Its error output to the end; processes of its own may hold that open for longer. */
async function heardOut(child: ChildProcess): Promise<void> {
  if (child.stderr === null || child.stderr.closed) return
  await once(child.stderr, 'close', { signal: AbortSignal.timeout(500) }).catch(() => undefined)
}
