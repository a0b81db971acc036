/** The ground's routes as a host's test mounts them: one byte for a window, and of a file its name and how much of it came. */
import type { GroundPort } from '#main/serve.ts'

export const GROUND_PORT: GroundPort = {
  window: async () => ({ status: 200, type: 'application/octet-stream', body: new Uint8Array([1]), headers: {} }),
  file: async (query, body) => {
    let bytes = 0
    for await (const part of body) bytes += part.byteLength
    const told = JSON.stringify({ name: query.get('name'), bytes })
    return { status: 200, type: 'application/json', body: new TextEncoder().encode(told), headers: {} }
  },
}
