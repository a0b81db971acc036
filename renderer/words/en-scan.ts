/** Words of the scan's panel: its three questions, and what is tried out on the board. */
export const scanWords = {
  scan: 'Scan',
  scanHint: 'Draw where the subject may stop, say what the picture should be, and let every place be computed',
  panel: 'The scan',
  whereMayItStop: 'Where may it stop?',
  whatPicture: 'What should the picture be?',
  whereAlong: 'Where along this track?',
  tryOut: {
    open: (name: string) => `Try “${name}”`,
    leave: 'Back to my spot',
    leaveTo: (name: string) => `Back to “${name}”`,
    keep: 'Keep on the shelf',
    note: (name: string) => `Trying out “${name}”. Your own spot is untouched.`,
    kept: (name: string) => `Kept as “${name}” and picked for side by side.`,
    keptNotPicked: (name: string) => `Kept as “${name}”. Four spots are picked for side by side already.`,
    keptWithEdit: (name: string) => `Your change has put “${name}” on the shelf.`,
  },
} as const
