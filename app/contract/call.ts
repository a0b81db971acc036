/** How one call of the contract is told: its name, the shape of its request and of its answer. */
import type { z } from 'zod'
import type { Result } from '#core/result.ts'

export interface Call<Input extends z.ZodType = z.ZodType, Output extends z.ZodType = z.ZodType> {
  readonly input: Input
  readonly output: Output
}

export function call<Input extends z.ZodType, Output extends z.ZodType>(
  input: Input,
  output: Output,
): Call<Input, Output> {
  return { input, output }
}

/** What a call comes back as, over IPC and HTTP alike: faults travel as data. */
export type Answer<Value> = Result<Value>
