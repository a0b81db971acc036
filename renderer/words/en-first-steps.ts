/** The words of a new user's first minutes: the steps of an empty shoot, the choice of a map on the map, and what is said where there is none. */

export const firstStepsWords = {
  title: 'First steps',
  close: 'Close the first steps',
  closeHint: 'Close (Esc)',
  bringBack: 'Show the first steps',
  steps: {
    subject: 'What is photographed?',
    landmark: 'What stands behind?',
    spot: 'Where to stand?',
  },
  kind: 'Kind',
  length: 'Length',
  width: 'Width',
  height: 'Height',
  /** "Car, 4.4 m" */
  sized: (name: string, size: string) => `${name}, ${size}`,
  skipped: 'skipped',
  theLandmark: 'the landmark',
  next: 'Next',
  skip: 'Skip',
  coordinates: 'Coordinates',
  oneEnd: 'One end, coordinates',
  otherEnd: 'Other end, coordinates',
  placeOnMap: 'Place on the map',
  placeAgain: 'Place again',
  show: 'Show',
  showHint: 'Show it on the map',
  more: 'All its measures…',
  lay: 'Lay the first spot',
  layHint: (name: string) =>
    `On the sunnier side of ${name}, so far away that both fit the frame with a lens in your bag, at a time when the sun is on it.`,
  layFreely: 'In the middle of the map, by daylight. With a landmark it would be laid to suit it.',
  /** Of one that was laid by its landmark. */
  laidLit: (away: string, name: string, when: string) =>
    `Laid ${away} from ${name}, planned for ${when}, when the sun is on it.`,
  laidByDay: (away: string, name: string, when: string) =>
    `Laid ${away} from ${name}, planned for ${when}, by daylight: the sun does not reach it within a week.`,
  pressForEnd: 'Click one end of the bridge or wall.',
  pressForOtherEnd: 'Now click its other end.',
  endsTogether: 'Both ends are at the same place. Choose another place for the second.',
  map: 'Choose a map',
  mapNeedsKey: 'Needs a key: enter it in Settings.',
  mapSettings: 'More in Settings…',
  noMap: 'There is no map of this place yet.',
  noMapNorGround: 'There is no map and no elevation data of this place yet.',
  chooseMap: 'Choose a map',
  addElevation: 'Add elevation data',
  dismiss: 'Dismiss',
} as const
