/** Words of the window's first row: the shoot's menu and the ways to the pages. */
export const headerWords = {
  pages: 'Pages',
  board: 'Board',
  days: 'Days',
  sheet: 'Sheet',
  daysHint: 'The days of the year on which the light is right, and when sun or moon line up with the landmark',
  needsSpot: 'Add a spot first.',
  shootMenu: (name: string) => `Shoot: ${name}`,
  noShoot: 'No shoot',
  rename: 'Rename the shoot',
  duplicate: 'Duplicate the shoot',
  otherShoots: 'Other shoots',
  allShoots: 'All shoots',
  foldShelf: 'Fold the shelf',
  unfoldShelf: 'Unfold the shelf',
} as const
