/** The names of all calls without their shapes, so that the preload checks a name without carrying the validators. */
import type { CallName } from './index.ts'

/** Every name of the contract once: a missing or a foreign one fails to compile. */
const NAMES: { readonly [Name in CallName]: true } = {
  'library.state': true,
  'library.restore': true,
  'library.shoots': true,
  'library.open': true,
  'library.apply': true,
  'library.save': true,
  'library.find': true,
  'settings.get': true,
  'settings.set': true,
  'settings.key': true,
  'tiles.sources': true,
  'tiles.health': true,
  'tiles.again': true,
  'tiles.clear': true,
  'places.find': true,
  'places.zones': true,
  'host.about': true,
  'sheet.pdf': true,
  'shoot.export': true,
  'shoot.import': true,
  'ground.sources': true,
  'ground.remove': true,
  'ground.heights': true,
}

export const CALL_NAMES: readonly string[] = Object.keys(NAMES)
