/** What tests of the ground share: the window of cells that the page asked for. */
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { boardReady } from './board.ts'
import type { Opened } from './open.ts'

/** Reloads the board and reads the elevations that its spot asks for, past the page. */
export async function reloadedGround({ page, host }: Opened): Promise<ElevationGrid> {
  if (host === null) throw new Error('the ground is read through the loopback host')
  const [request] = await Promise.all([
    page.waitForRequest((asked) => asked.url().includes('/window?')),
    page.reload().then(() => boardReady(page)),
  ])
  const response = await fetch(request.url(), {
    headers: { authorization: `Bearer ${host.token}`, origin: host.origin },
  })
  if (!response.ok) throw new Error(`the ground answers ${response.status}: ${await response.text()}`)
  const asked = new URL(request.url()).searchParams
  const number = (name: string): number => Number(asked.get(name))
  const [cell, half] = [number('cell'), number('half')]
  return {
    centre: { lat: number('lat'), lon: number('lon') },
    cell,
    columns: 2 * half + 1,
    rows: 2 * half + 1,
    west: -half * cell,
    north: half * cell,
    heights: new Float32Array(await response.arrayBuffer()),
  }
}
