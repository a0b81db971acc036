/** Words of drawn ground: where the subject may stop, where nobody may stand, and how both are drawn and brought in. */
import type { DrawnSort, ShapeFault } from '#core/record/drawn-ground.ts'
import type { KeepOutKind, KeptOut } from '#core/record/keep-out.ts'
import type { DrawnForm, Turn } from '#core/record/stopping-ground.ts'

type PerSort = Readonly<Record<DrawnSort, string>>
type PerForm = Readonly<Record<DrawnForm, string>>

export const stoppingWords = {
  empty: 'Draw a line or an area where the subject could stop; the scan looks at every place on it.',
  keepOutsEmpty: 'Draw what neither subject nor camera may stand on, such as a carriageway or a field.',
  caution:
    'Whoever is responsible for the ground and the law of the place decide where one may stop and stand; on and beside roads, rails and water look out for yourselves. What is drawn here is only what you know of it.',
  titles: { stopping: 'Stopping ground', 'keep-out': 'Keep-outs' } satisfies PerSort,
  count: (title: string, count: number) => (count === 0 ? title : `${title}: ${count}`),
  draw: {
    stopping: { line: 'Draw a line', area: 'Draw an area' },
    'keep-out': { line: 'Draw a keep-out line', area: 'Draw a keep-out area' },
  } satisfies Readonly<Record<DrawnSort, PerForm>>,
  take: 'Take from the map',
  takeSpoken: {
    stopping: 'Take from the map as stopping ground',
    'keep-out': 'Take from the map as keep-outs',
  } satisfies PerSort,
  file: 'Bring in from a GeoJSON file…',
  fileSpoken: {
    stopping: 'Bring in from a GeoJSON file… as stopping ground',
    'keep-out': 'Bring in from a GeoJSON file… as keep-outs',
  } satisfies PerSort,
  nextKind: 'New ones are',
  unnamed: {
    stopping: (number: number) => `Stopping ground ${number}`,
    'keep-out': (number: number) => `Keep-out ${number}`,
  } satisfies Readonly<Record<DrawnSort, (number: number) => string>>,
  forms: { line: 'line', area: 'area' } satisfies PerForm,
  name: 'Name',
  turn: 'How it stands there',
  turns: {
    along: 'along it, as drawn',
    'either-way': 'along it, either way',
    free: 'any heading',
  } satisfies Readonly<Record<Turn, string>>,
  reverse: 'Reverse',
  reverseSpoken: (name: string) => `Reverse the direction of ${name}`,
  kind: 'What it is',
  kinds: {
    carriageway: 'carriageway',
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
  noCrossing: 'Nobody can step across',
  noCrossingShort: 'not crossed',
  pointsHint:
    'On the map: drag its points, or a small one between two to add one. A double press or Delete takes one away; pressed once, it can be cut at.',
  showShort: 'Show',
  removeShort: 'Remove',
  show: (name: string) => `Show ${name} on the map`,
  remove: (name: string) => `Remove ${name}`,
  removed: (name: string) => `Removed “${name}”.`,
  full: (most: number) => `There are ${most} already; remove one first.`,
  /** On the map: "Layby, line, 120 m, along it either way". */
  whole: (name: string, form: string, size: string, more: string) => `${name}, ${form}, ${size}, ${more}`,
  chooseHint: 'Enter shows its points, Delete removes it',
  point: (name: string, number: number, count: number) =>
    `Point ${number} of ${count} of ${name}, arrow keys move it, Delete takes it away`,
  leg: (name: string, number: number) => `Leg ${number} of ${name}, Enter adds a point`,
  pointOf: (number: number, count: number) => `Point ${number} of ${count}`,
  cutBefore: 'Cut off before it',
  cutBeyond: 'Cut off beyond it',
  takeAway: 'Take it away',
  pointsFew: { line: 'A line needs two points.', area: 'An area needs three corners.' } satisfies PerForm,
  /** While drawing. */
  begin: {
    line: 'Press where the line begins.',
    area: 'Press where the first corner lies.',
  } satisfies PerForm,
  sofar: (count: number, size: string | null) =>
    `${count === 1 ? '1 point' : `${count} points`}${size === null ? '' : `, ${size}`}.`,
  endHint: {
    line: 'Double press or Enter ends, Backspace takes the last point back, Escape gives up.',
    area: 'Double press, Enter or a press on the first corner ends, Backspace takes the last back, Escape gives up.',
  } satisfies PerForm,
  keysHint: 'Arrow keys move the map under the cross-hair, with Shift farther; Space sets a point, Enter ends.',
  finish: 'Finish',
  takeBack: 'Take the last back',
  giveUp: 'Give up',
  faults: {
    'too-few': {
      line: 'A line needs two points that lie apart.',
      area: 'An area needs three corners that lie apart.',
    },
    'too-many': {
      line: 'A line can’t have more than 5,000 points.',
      area: 'An area can’t have more than 5,000 corners.',
    },
    'no-size': {
      line: 'The line is too short to stand on.',
      area: 'The corners lie in one line and enclose nothing.',
    },
    'crosses-itself': {
      line: 'The line crosses itself.',
      area: 'The outline crosses itself. Move or take back a corner so that no side crosses another.',
    },
  } satisfies Readonly<Record<ShapeFault, PerForm>>,
  notKept: 'It was put back as it was.',
  /** While taking from the map. */
  pressWay: {
    stopping:
      'Press a road, track, path or quay: the stretch between its junctions is taken, as far as the map shows it.',
    'keep-out': 'Press a road, stream, lake, field or house: it is taken as far as the map shows it.',
  } satisfies PerSort,
  keysTake: 'Arrow keys move the map under the cross-hair, with Shift farther; Space takes what lies there.',
  nothingThere: 'There is nothing to take over there. Press closer to a way, or move the map nearer.',
  enough: 'That’s all',
  /** Names of what is taken over, by the sketch map's words. */
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
  readFile: (file: string, count: number) =>
    count === 1 ? `Brought in one from “${file}”.` : `Brought in ${count} from “${file}”.`,
  fileFault: (file: string, message: string) => `“${file}” was not brought in. ${message}`,
  tooLarge: (file: string) => `“${file}” is larger than 5 MB. Save only the lines and areas that are needed.`,
  unreadable: (file: string) => `“${file}” can’t be read. Is it still there?`,
  reading: (file: string) => `Reading “${file}”…`,
  stopReading: 'Stop',
  stopReadingSpoken: (file: string) => `Stop reading “${file}”`,
  stoppedReading: (file: string) => `“${file}” was not brought in: you stopped it.`,
  tookTooLong: (file: string, seconds: number) =>
    `“${file}” was not brought in: reading it took longer than ${seconds} seconds. Save only the lines and areas that are needed.`,
  readingFailed: (file: string) =>
    `“${file}” was not brought in: reading it failed. Save only the lines and areas that are needed, and try again.`,
  otherShoot: (file: string) =>
    `“${file}” was not brought in: another shoot has been opened meanwhile. Go back to the first and bring it in again.`,
  notes: {
    points: (count: number) => (count === 1 ? '1 point was left out.' : `${count} points were left out.`),
    empty: (count: number) =>
      count === 1 ? '1 entry without a place was left out.' : `${count} entries without a place were left out.`,
    holes: (count: number) =>
      count === 1 ? 'The holes of 1 area were filled.' : `The holes of ${count} areas were filled.`,
    crossing: (count: number) =>
      count === 1
        ? '1 outline that crosses itself was left out.'
        : `${count} outlines that cross themselves were left out.`,
    'no-size': (count: number) =>
      count === 1 ? '1 without length or area was left out.' : `${count} without length or area were left out.`,
    simplified: (count: number, within: string) =>
      `${count === 1 ? '1 had' : `${count} had`} too many points; those within ${within} of the line were dropped.`,
    far: (away: string) => `It lies ${away} or more from the spot.`,
  },
  edit: {
    add: { stopping: 'Add stopping ground', 'keep-out': 'Add a keep-out' } satisfies PerSort,
    bring: { stopping: 'Bring in stopping ground', 'keep-out': 'Bring in keep-outs' } satisfies PerSort,
    change: { stopping: 'Change stopping ground', 'keep-out': 'Change a keep-out' } satisfies PerSort,
    rename: { stopping: 'Rename stopping ground', 'keep-out': 'Rename a keep-out' } satisfies PerSort,
    reverse: 'Reverse stopping ground',
    remove: { stopping: 'Remove stopping ground', 'keep-out': 'Remove a keep-out' } satisfies PerSort,
    movePoint: 'Move a point',
    addPoint: 'Add a point',
    removePoint: 'Take a point away',
    cut: 'Cut a line off',
  },
} as const
