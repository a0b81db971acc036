/** The settings of a fresh library; a file of its own so that the page has them without the shapes' library. */
import type { Settings } from './settings.ts'

export const DEFAULT_SETTINGS: Settings = {
  units: 'metric',
  theme: 'system',
  paper: 'a4',
  mapSource: 'sketch',
  ownSources: [],
  templates: {},
  groundOrder: [],
  elevationTiles: { on: true, template: '', maxZoom: 15, attribution: '' },
  shelfFolded: null,
  openAnswers: ['lens'],
  lastShootId: null,
  lastSpotId: null,
}
