/** A Result is how the outside world's failures travel: as data with a reason word, never as an exception. */

export interface Fault<Reason extends string = string> {
  /** Machine-readable reason word; the screen turns it into a sentence. */
  readonly reason: Reason
  /** What, where and what to do, in plain English. */
  readonly message: string
}

export type Result<Value, Reason extends string = string> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly fault: Fault<Reason> }

export function done<Value>(value: Value): { readonly ok: true; readonly value: Value } {
  return { ok: true, value }
}

export function failed<Reason extends string>(
  reason: Reason,
  message: string,
): { readonly ok: false; readonly fault: Fault<Reason> } {
  return { ok: false, fault: { reason, message } }
}
