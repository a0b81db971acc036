/** The door both hosts share: finds a call's handler, checks what came in, and turns every outcome into an answer. */
import type { z } from 'zod'
import type { Result } from '#core/result.ts'
import type { Answer } from '#app/contract/call.ts'
import { type CallName, type Contract, contract, type Output } from '#app/contract/index.ts'
import type { Log } from '#main/log.ts'

type Checked<Name extends CallName> = z.output<Contract[Name]['input']>

/** Exactly one handler for every call of the contract; a missing or a foreign one fails to compile. */
export type Handlers = {
  readonly [Name in CallName]: (input: Checked<Name>) => Result<Output<Name>> | Promise<Result<Output<Name>>>
}

const MEGABYTE = 1_000_000
const LARGE: ReadonlySet<string> = new Set<CallName>(['library.apply', 'library.save', 'shoot.import'])

/** Largest body in bytes a host reads for a call: batches and files are large, everything else is small. */
export function bodyLimit(name: string): number {
  return LARGE.has(name) ? 128 * MEGABYTE : MEGABYTE
}

export function isCallName(name: string): name is CallName {
  return Object.hasOwn(contract, name)
}

/** Answers one call. Never rejects: a handler that throws is a bug of ours, logged and told as such. */
export async function dispatch(
  handlers: Handlers,
  name: unknown,
  rawInput: unknown,
  log: Log,
): Promise<Answer<unknown>> {
  if (typeof name !== 'string' || !isCallName(name)) {
    return refuse('unknown-call', 'The page asked for something this version of the program does not offer. Reload it.')
  }
  const parsed = contract[name].input.safeParse(rawInput)
  if (!parsed.success) return refuse('bad-input', inputSentence(name, parsed.error))
  try {
    // The map's type ties each name to its own input; TypeScript cannot follow that through a variable name.
    const handler = handlers[name] as (input: unknown) => Result<unknown> | Promise<Result<unknown>>
    const result = await handler(parsed.data)
    return result.ok ? { ok: true, value: result.value } : refuse(result.fault.reason, result.fault.message)
  } catch (error) {
    log.error('bug', { call: name, error })
    return refuse('bug', `The program failed while doing ${name}. Nothing was half-saved; the log has the details.`)
  }
}

function refuse(reason: string, message: string): Answer<never> {
  return { ok: false, fault: { reason, message } }
}

/** Names the first field that does not fit, without repeating its value. */
function inputSentence(name: CallName, error: z.ZodError): string {
  const issue = error.issues[0]
  const where = issue && issue.path.length > 0 ? issue.path.map(String).join('.') : 'the request'
  return `${name} was not done: ${where} does not fit (${issue?.message ?? 'unknown form'}). Correct it and try again.`
}
