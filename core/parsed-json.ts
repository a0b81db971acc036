/** Text from outside as JSON: what it holds, or that it holds none; and the fault that it may tell. */
import type { Fault } from './result.ts'

/** Undefined, which JSON cannot say, when the text is none. */
export function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

/** The fault that an answer tells in JSON; null when it tells none. */
export function faultInJson(text: string): Fault | null {
  const fault = parsedJson(text)
  if (typeof fault !== 'object' || fault === null || !('reason' in fault) || !('message' in fault)) return null
  return { reason: String(fault.reason), message: String(fault.message) }
}
