/** Words of drawn ground: where the subject may stop, where nobody may stand, and how both are drawn and brought in. */
import type { DrawnSort, ShapeFault } from '#core/record/drawn-ground.ts'
import type { KeepOutKind, KeptOut } from '#core/record/keep-out.ts'
import type { DrawnForm, Turn } from '#core/record/stopping-ground.ts'

type PerSort = Readonly<Record<DrawnSort, string>>
type PerForm = Readonly<Record<DrawnForm, string>>

export const stoppingWords = {
  empty: 'Draw a line or an area where the subject could stop; the scan tests every position on it.',
  keepOutsEmpty: 'Draw what neither subject nor camera may stand on, such as a road or a field.',
  caution:
    'The law and whoever is responsible for the ground decide where you may stop and stand. Watch out on and beside roads, rails and water. What you draw here is only what you know.',
  titles: { stopping: 'Places to stop', 'keep-out': 'Keep-outs' } satisfies PerSort,
  count: (title: string, count: number) => (count === 0 ? title : `${title}: ${count}`),
  draw: {
    stopping: { line: 'Draw a line', area: 'Draw an area' },
    'keep-out': { line: 'Draw a keep-out line', area: 'Draw a keep-out area' },
  } satisfies Readonly<Record<DrawnSort, PerForm>>,
  take: 'Pick from the map',
  takeSpoken: {
    stopping: 'Pick from the map, as places to stop',
    'keep-out': 'Pick from the map, as keep-outs',
  } satisfies PerSort,
  file: 'Import a GeoJSON file…',
  fileSpoken: {
    stopping: 'Import a GeoJSON file… as places to stop',
    'keep-out': 'Import a GeoJSON file… as keep-outs',
  } satisfies PerSort,
  nextKind: 'Draw new ones as',
  unnamed: {
    stopping: (number: number) => `Place to stop ${number}`,
    'keep-out': (number: number) => `Keep-out ${number}`,
  } satisfies Readonly<Record<DrawnSort, (number: number) => string>>,
  forms: { line: 'line', area: 'area' } satisfies PerForm,
  name: 'Name',
  turn: 'Which way the subject faces',
  turns: {
    along: 'along the line, as drawn',
    'either-way': 'along the line, either way',
    free: 'any way',
  } satisfies Readonly<Record<Turn, string>>,
  reverse: 'Reverse',
  reverseSpoken: (name: string) => `Reverse the direction of ${name}`,
  kind: 'What it is',
  kinds: {
    carriageway: 'road',
    rail: 'rails',
    water: 'water',
    crops: 'crops',
    fence: 'fence',
    other: 'something else',
  } satisfies Readonly<Record<KeepOutKind, string>>,
  width: 'Width',
  wide: (width: string) => `${width} wide`,
  whom: 'Keeps out',
  whoms: {
    both: 'subject and camera',
    subject: 'the subject',
    camera: 'the camera',
  } satisfies Readonly<Record<KeptOut, string>>,
  noCrossing: 'Cannot be crossed on foot',
  noCrossingShort: 'no crossing',
  pointsHint:
    'On the map: drag its points, or a small one between two to add one. Double-click or Delete removes one; click it once to cut the line there.',
  showShort: 'Show',
  removeShort: 'Remove',
  show: (name: string) => `Show ${name} on the map`,
  remove: (name: string) => `Remove ${name}`,
  removed: (name: string) => `Removed “${name}”.`,
  full: (most: number) => `There are ${most} already; remove one first.`,
  /** On the map: "Layby, line, 120 m, along the line, either way". */
  whole: (name: string, form: string, size: string, more: string) => `${name}, ${form}, ${size}, ${more}`,
  chooseHint: 'Enter shows its points, Delete removes it',
  point: (name: string, number: number, count: number) =>
    `Point ${number} of ${count} of ${name}, arrow keys move it, Delete removes it`,
  leg: (name: string, number: number) => `Leg ${number} of ${name}, Enter adds a point`,
  pointOf: (number: number, count: number) => `Point ${number} of ${count}`,
  cutBefore: 'Cut off before it',
  cutBeyond: 'Cut off beyond it',
  takeAway: 'Remove it',
  pointsFew: { line: 'A line needs two points.', area: 'An area needs three corners.' } satisfies PerForm,
  /** While drawing. */
  begin: {
    line: 'Click where the line starts.',
    area: 'Click where the first corner is.',
  } satisfies PerForm,
  sofar: (count: number, size: string | null) =>
    `${count === 1 ? '1 point' : `${count} points`}${size === null ? '' : `, ${size}`}.`,
  endHint: {
    line: 'Double-click or Enter finishes, Backspace undoes the last point, Escape cancels.',
    area: 'Double-click, Enter or a click on the first corner finishes, Backspace undoes the last corner, Escape cancels.',
  } satisfies PerForm,
  keysHint: 'Arrow keys move the map under the cross-hair, with Shift farther; Space sets a point, Enter finishes.',
  finish: 'Finish',
  takeBack: 'Undo the last',
  giveUp: 'Cancel',
  faults: {
    'too-few': {
      line: 'A line needs two points apart from each other.',
      area: 'An area needs three corners apart from each other.',
    },
    'too-many': {
      line: 'A line can’t have more than 5,000 points.',
      area: 'An area can’t have more than 5,000 corners.',
    },
    'no-size': {
      line: 'The line is too short to stand on.',
      area: 'The corners are all in one line and enclose nothing.',
    },
    'crosses-itself': {
      line: 'The line crosses itself.',
      area: 'The outline crosses itself. Move or undo a corner so that no side crosses another.',
    },
  } satisfies Readonly<Record<ShapeFault, PerForm>>,
  notKept: 'The change was undone.',
  /** While picking from the map. */
  pressWay: {
    stopping:
      'Click a road, track, path or quay to pick the stretch between its junctions, as far as the map shows it.',
    'keep-out': 'Click a road, stream, lake, field or house to pick it, as far as the map shows it.',
  } satisfies PerSort,
  keysTake: 'Arrow keys move the map under the cross-hair, with Shift farther; Space picks what is there.',
  nothingThere: 'Nothing to pick there. Click closer to a road or path, or zoom in.',
  enough: 'Done',
  /** Names of what is picked, by the sketch map's words. */
  taken: {
    road: 'Road',
    minor: 'Minor road',
    bridge: 'Bridge',
    track: 'Track',
    path: 'Path',
    quay: 'Quay',
    stream: 'Stream',
    lake: 'Lake',
    field: 'Field',
    building: 'House',
  } as Readonly<Record<string, string>>,
  readFile: (file: string, count: number) => `Imported ${count} from “${file}”.`,
  fileFault: (file: string, message: string) => `“${file}” was not imported. ${message}`,
  tooLarge: (file: string) => `“${file}” is larger than 5 MB. Save only the lines and areas that are needed.`,
  unreadable: (file: string) => `“${file}” can’t be read. Is it still there?`,
  reading: (file: string) => `Reading “${file}”…`,
  stopReading: 'Stop',
  stopReadingSpoken: (file: string) => `Stop reading “${file}”`,
  stoppedReading: (file: string) => `“${file}” was not imported: you stopped it.`,
  tookTooLong: (file: string, seconds: number) =>
    `“${file}” was not imported: reading it took longer than ${seconds} seconds. Save only the lines and areas that are needed.`,
  readingFailed: (file: string) =>
    `“${file}” was not imported: reading it failed. Save only the lines and areas that are needed, and try again.`,
  otherShoot: (file: string) =>
    `“${file}” was not imported: you have opened another shoot. Go back to the first and import it again.`,
  notes: {
    points: (count: number) => (count === 1 ? '1 point was skipped.' : `${count} points were skipped.`),
    empty: (count: number) =>
      count === 1 ? '1 entry without a position was skipped.' : `${count} entries without a position were skipped.`,
    holes: (count: number) =>
      count === 1 ? 'The holes of 1 area were filled.' : `The holes of ${count} areas were filled.`,
    crossing: (count: number) =>
      count === 1
        ? '1 outline that crosses itself was skipped.'
        : `${count} outlines that cross themselves were skipped.`,
    'no-size': (count: number) =>
      count === 1
        ? '1 shape without length or area was skipped.'
        : `${count} shapes without length or area were skipped.`,
    simplified: (count: number, within: string) =>
      `${count === 1 ? '1 had' : `${count} had`} too many points; those within ${within} of the line were dropped.`,
    far: (away: string) => `It is ${away} or more from the spot.`,
  },
  edit: {
    add: { stopping: 'Add a place to stop', 'keep-out': 'Add a keep-out' } satisfies PerSort,
    bring: { stopping: 'Import places to stop', 'keep-out': 'Import keep-outs' } satisfies PerSort,
    change: { stopping: 'Change a place to stop', 'keep-out': 'Change a keep-out' } satisfies PerSort,
    rename: { stopping: 'Rename a place to stop', 'keep-out': 'Rename a keep-out' } satisfies PerSort,
    reverse: 'Reverse a place to stop',
    remove: { stopping: 'Remove a place to stop', 'keep-out': 'Remove a keep-out' } satisfies PerSort,
    movePoint: 'Move a point',
    addPoint: 'Add a point',
    removePoint: 'Remove a point',
    cut: 'Cut off a line',
  },
} as const
