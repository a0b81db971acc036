/** Words of the page's shell: header, shelf, notices, places, trouble with the library, settings and help. */
import { MOST_COMPARED } from '#core/plan/compare.ts'
import { numberWord } from './en-list.ts'

const plural = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`

/** A way into a record, such as `landmarks.0.baseElevation`, in words: "landmarks 1, base elevation". */
const fieldName = (field: string): string =>
  field
    .replace(/^(?:shoot|spots\.\d+)\./u, '')
    .replaceAll(/\.(\d+)/gu, (_part, at: string) => ` ${Number(at) + 1}`)
    .replaceAll('.', ', ')
    .replaceAll(/([a-z])([A-Z])/gu, (_pair, end: string, start: string) => `${end} ${start.toLowerCase()}`)
/** By the reason word: what stands in the way of a backup, and what to do. */
const BACKUP_FAULTS: Readonly<Record<string, string>> = {
  'disk-full': 'the disk is full. Make room on it.',
  'read-only': 'the folder “backups” beside the library may not be written. Allow writing to it.',
  unavailable:
    'the folder “backups” beside the library cannot be used. Check that it is a folder on a disk that works.',
  damaged: 'the library or the disk is damaged. Check the disk.',
  busy: 'another window was writing all the time.',
  bug: 'the log in the data folder says why.',
}

export const boardWords = {
  program: 'Standpoint',
  unknown: 'unknown',
  undo: 'Undo',
  redo: 'Redo',
  undoWhat: (label: string) => `Undo: ${label}`,
  redoWhat: (label: string) => `Redo: ${label}`,
  nothingToUndo: 'Nothing to undo',
  nothingToRedo: 'Nothing to redo',
  sideBySide: 'Side by side',
  sideBySideCount: (count: number) => `Side by side (${count})`,
  sideBySideHint: `Pick two to ${numberWord(MOST_COMPARED)} spots on the shelf first.`,
  settings: 'Settings',
  help: 'Help',
  back: 'Back to the board',
  saving: 'Saving…',
  notLoaded: 'This page did not load. Restart Standpoint; your work is saved.',
  offline: 'Offline',
  offlineHint: 'The map server cannot be reached. Stored map tiles are shown; everything else works.',
  dismiss: 'Dismiss',
  notices: 'Messages',
  untitledShoot: 'Untitled shoot',
  untitledSpot: 'Untitled spot',
  map: 'Map',
  answers: 'Answers',
  shelf: {
    title: 'Shelf',
    find: (count: number) => `Find in ${plural(count, 'spot', 'spots')}`,
    clear: 'Clear the search',
    thisShoot: 'This shoot',
    nearHere: 'Also near here',
    found: (shown: number, total: number) =>
      shown < total ? `Found ${total}, the first ${shown} shown` : `Found ${total}`,
    foundNothing: (text: string) =>
      `No spot has “${text.slice(0, 60)}” in its name, notes, access, permission or hazards. Try fewer letters.`,
    anotherShoot: (name: string) => `in ${name}`,
    add: 'Add a spot',
    addHint: 'At the middle of the map',
    empty: 'No spot yet. The first is laid to suit the landmark; without one it comes to the middle of the map.',
    noShoot: 'No shoot yet. Make one to start.',
    moveUp: 'Move up',
    moveDown: 'Move down',
    duplicate: 'Duplicate and open',
    remove: 'Delete',
    pick: 'Put side by side',
    pickFull: `${numberWord(MOST_COMPARED).replace(/^./u, (first) => first.toUpperCase())} spots are picked. Unpick one first.`,
    actions: (name: string) => `Actions for ${name}`,
    moveHint: 'Alt and the arrow keys move it',
    stars: (count: number) => plural(count, 'star', 'stars'),
    copyName: (name: string) => `${name}, copy`,
    keptName: (name: string) => `${name}, saved`,
    kept: (name: string) => `Saved a copy as “${name}”. The spot you had open stays open.`,
    deleted: (name: string) => `Deleted “${name}”.`,
  },
  edit: {
    addSpot: 'Add a spot',
    deleteSpot: 'Delete the spot',
    duplicateSpot: 'Duplicate the spot',
    keepSpot: 'Save a copy of the spot',
    orderSpots: 'Reorder the shelf',
  },
  place: {
    label: 'Go to a place',
    placeholder: 'Place or coordinates',
    people: (count: number) => (count > 0 ? `${count.toLocaleString('en')} people` : ''),
    none: (text: string) =>
      `No town is called “${text.slice(0, 60)}”. Try fewer letters, or type coordinates such as 46.4030, -33.5945.`,
    coordinates: 'Coordinates',
    swapped: 'Latitude and longitude swapped',
  },
  trouble: {
    title: 'The library could not be opened',
    damaged: 'The library is damaged',
    newer: 'The library is from a newer Standpoint',
    unavailable: 'The library cannot be reached',
    noHost: 'The program does not answer',
    noKey: 'This window has no key',
    noKeyWhat:
      'An address from the terminal opens the library in one window, once. Open the last address that the terminal shows.',
    readOnly: 'The library can only be read: changes are not saved.',
    backups: 'Good backups, newest first',
    noBackups: 'There is no good backup.',
    backupLine: (saved: string, spots: number) => `${saved}, ${plural(spots, 'spot', 'spots')}`,
    backupAhead: (saved: string, spots: number) =>
      `${saved}, ${plural(spots, 'spot', 'spots')}: dated in the future, by a clock that was wrong`,
    backupNotMade: (reason: string) =>
      `Today’s backup of the library could not be made: ${BACKUP_FAULTS[reason] ?? BACKUP_FAULTS['bug']} Your changes are saved all the same; the backup is tried again every hour.`,
    restore: 'Restore this backup',
    restoreNewest: 'Restore the newest backup',
    restored: (keptAs: string) => `Restored. The damaged library is kept as ${keptAs}.`,
    again: 'Try again',
    back: 'Back without restoring',
    showBackups: 'Show the backups',
    backupsTitle: 'Backups of the library',
    brokenSpots: (names: readonly string[]) =>
      names.length === 1
        ? `The record of the spot “${names[0]}” is broken within the library file, so it is left out here. Everything else is whole; a backup may still have the spot.`
        : `The records of ${names.length} spots are broken within the library file, so they are left out here: ${names.slice(0, 5).join(', ')}${names.length > 5 ? ' and others' : ''}. Everything else is whole; a backup may still have them.`,
    kept: 'Restoring keeps the present file beside the library under another name; nothing is thrown away.',
  },
  settingsPage: {
    units: 'Units',
    metric: 'Metres',
    imperial: 'Feet and miles',
    theme: 'Light or dark',
    themes: { system: 'Match the system', light: 'Light', dark: 'Dark' },
    paper: 'Paper of the location sheet',
    papers: { a4: 'A4', letter: 'Letter' },
    mapSource: 'Map',
    sketch: 'Sketch map',
    sketchHint: 'Drawn by Standpoint itself; needs no network.',
    needsKey: 'Needs a key of your own.',
    address: 'Use another address',
    addressHint: 'Leave empty for the usual address.',
    key: 'Key',
    keyHint: 'Stored apart from the settings and never shown again.',
    keySave: 'Save the key',
    keyForget: 'Delete the key',
    keyKept: {
      stored: 'The key is saved.',
      session: 'The key lasts until you close Standpoint: this computer has no secure storage.',
      none: 'No key is saved.',
    },
    own: 'Your own map sources',
    ownAdd: 'Add a map source',
    ownRemove: (name: string) => `Remove ${name}`,
    ownRemoved: (name: string) => `Removed the map source “${name}”.`,
    ownName: 'Name',
    ownTemplate: 'Address of a tile',
    ownTemplateHint: 'https address with {z}, {x} and {y}; {key} where a key goes.',
    ownZoom: 'Highest zoom level',
    ownAttribution: 'Credit line',
    ownAttributionLink: 'Web page of the credit',
    ownTerms: 'Use it as its provider allows; Standpoint fetches only what is on the map and names its source.',
    badTemplate:
      'The address must begin with https:// and contain {z}, {x} and {y}, such as https://tiles.example.org/{z}/{x}/{y}.png.',
    badZoom: 'The highest zoom level is a whole number from 0 to 24.',
    badName: 'Give it a name of 1 to 200 characters.',
    badLink: 'The page must begin with https://, or be left empty.',
    tooLong: (most: number) => `At most ${most} characters.`,
    tilesKept: 'Map tiles stored on this computer',
    clearTiles: 'Delete them',
    cleared: (megabytes: string) => `Deleted the stored map tiles: ${megabytes} MB freed.`,
    version: (version: string) => `Standpoint ${version}`,
  },
  files: {
    opened: (name: string, spots: number) => `Added the shoot “${name}” with ${plural(spots, 'spot', 'spots')}.`,
    mended: (figures: readonly { readonly field: string; readonly now: number }[]) =>
      `${plural(figures.length, 'figure was', 'figures were')} out of range and set to the nearest possible: ${figures
        .slice(0, 3)
        .map(({ field, now }) => `${fieldName(field)} ${now}`)
        .join('; ')}${figures.length > 3 ? '; and more' : ''}. Check what was meant.`,
    unreadable: (name: string) => `The file ${name} could not be read. Choose a shoot file that Standpoint has saved.`,
    open: 'Open a shoot file…',
    save: 'Save the shoot as a file…',
    noShoot: 'There is no shoot to save yet. Make one first.',
  },
  helpPage: {
    title: 'Help',
    how: 'How to start',
    steps: [
      'Move the map to the place: drag it, or type a town or coordinates at the top.',
      'Add a spot. Drag the subject to where it stops and the kite to where you stand; for exact placing use the close plan, the small plan in the corner of the map.',
      'Under “Subject and bag” enter the size of your subject, what stands behind it, your camera and lenses.',
      'Read the answers on the right. Choose what must not change; the rest follows. All bearings are from true north, unless they say magnetic.',
      `Collect several spots on the shelf, put two to ${numberWord(MOST_COMPARED)} side by side, and take the location sheet along.`,
    ],
    keys: 'Keys',
    key: 'Key',
    does: 'What it does',
    more: [
      ['Arrow keys', 'Move the selected thing on the map by 1 m'],
      ['Shift + arrow keys', 'Move it by 10 m'],
      ['Alt + Up, Alt + Down', 'Move the spot up or down the shelf'],
      ['Space, Enter, Backspace', 'While drawing on the map: set a point, finish, undo the last point'],
      ['Escape', 'Undo typing in a field, cancel a drag, or go back to the board'],
    ],
    cautions: 'Before you go',
    licences: 'Licences',
    licencesWhat: 'Standpoint is built on the work of many people. These are the licences in full.',
    licencesNotRead: 'The licences could not be read. They are beside the installed program as LICENCES.txt.',
    licenceOwn: 'Standpoint itself: MIT',
    licencesData: (count: number) => `Data and what runs underneath (${count})`,
    licencesSoftware: (count: number) => `Software and type (${count})`,
    licenceLine: (name: string, licence: string) => `${name}: ${licence}`,
  },
} as const
