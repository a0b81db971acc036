/** The floors of the house from the ground up, and the imports that run against them. */
import { dirname, posix } from 'node:path'

/** Rooms that share a line stand side by side: neither imports the other. */
export const FLOORS: Readonly<Record<'core' | 'renderer', readonly (readonly string[])[]>> = {
  core: [
    ['core'],
    ['core/units'],
    ['core/geo', 'core/time', 'core/optics'],
    ['core/scene', 'core/ground'],
    ['core/frame', 'core/light'],
    ['core/record'],
    ['core/exchange', 'core/plan'],
    ['core/scan'],
    ['core/tolerance'],
    ['core/sheet'],
  ],
  renderer: [
    ['renderer/words', 'renderer/job'],
    ['renderer/host'],
    ['renderer/text'],
    ['renderer/state/library'],
    ['renderer/state/plan'],
    ['renderer/state/session'],
    ['renderer/state/act'],
    ['renderer/part'],
    ['renderer/view/sketch', 'renderer/view/profile', 'renderer/view/lens-picture'],
    ['renderer/view/ground', 'renderer/view/lens-view'],
    ['renderer/view/drawing'],
    ['renderer/view/hand', 'renderer/view/still-map', 'renderer/view/base'],
    ['renderer/view/overlay', 'renderer/view/close-plan'],
    ['renderer/view/map'],
    [
      'renderer/panel/answers',
      'renderer/panel/day-strip',
      'renderer/panel/scan',
      'renderer/panel/shelf',
      'renderer/panel/spot',
      'renderer/page/compare',
      'renderer/page/days',
      'renderer/page/settings',
      'renderer/page/sheet',
      'renderer/page/shoot',
    ],
    ['renderer/shell'],
    ['renderer'],
  ],
}

/** Folders within a room that are no room of their own. */
const WITHIN: Readonly<Record<string, string>> = { 'core/scene/solid': 'core/scene' }

/** Static and dynamic imports, exports from elsewhere, and workers named by their address. */
const IMPORT =
  /^(?:import|export)\b[^'"`;=()]*?\bfrom '([^']+)'|^import '([^']+)'|\bimport\('([^']+)'\)|new URL\('([^']+)', import\.meta\.url\)/gmu

export interface Arrow {
  readonly from: string
  readonly to: string
}

/** What the file at `path` imports from the house, paths from the top. */
export function arrowsOf(path: string, text: string): Arrow[] {
  return [...text.matchAll(IMPORT)].flatMap((match) => {
    const name = match.slice(1).find((part) => part !== undefined) ?? ''
    if (name.startsWith('#')) return [{ from: path, to: name.slice(1) }]
    return name.startsWith('.') ? [{ from: path, to: posix.join(posix.dirname(path), name) }] : []
  })
}

export function roomOf(path: string): string {
  const folder = dirname(path)
  return WITHIN[folder] ?? folder
}

/** The arrows that run up a floor or aside into a neighbouring room, as "from -> to". */
export function upward(floors: readonly (readonly string[])[], arrows: readonly Arrow[]): string[] {
  const floor = new Map(floors.flatMap((rooms, level) => rooms.map((room) => [room, level] as const)))
  return arrows
    .filter(({ from, to }) => floor.has(roomOf(to)) && roomOf(from) !== roomOf(to))
    .filter(({ from, to }) => (floor.get(roomOf(to)) ?? 0) >= (floor.get(roomOf(from)) ?? -1))
    .map(({ from, to }) => `${from} -> ${to}`)
}
