/** Waits for what comes by itself, as long as a busy machine may take for it; what comes is seen at once. */
import { vi } from 'vitest'

/** Milliseconds. */
const PATIENCE = 30_000

/** Until it throws no longer: gives back what it answers then, else throws what it threw last. */
export async function eventually<Value>(look: () => Value | Promise<Value>, patience = PATIENCE): Promise<Value> {
  return vi.waitFor(look, { timeout: patience })
}
