/** Words of the scan's panel: its three questions, and what is tried out on the board. */
export const scanWords = {
  scan: 'Scan',
  scanHint: 'Draw where the subject may stop, say what the picture should be, and have every position tested',
  panel: 'The scan',
  whereMayItStop: 'Where may it stop?',
  whatPicture: 'What should the picture be?',
  whereAlong: 'Where along this line?',
  tryOut: {
    open: (name: string) => `Try “${name}”`,
    leave: 'Back to my spot',
    leaveTo: (name: string) => `Back to “${name}”`,
    keep: 'Save to the shelf',
    note: (name: string) => `Trying out “${name}”. Your own spot is untouched.`,
    kept: (name: string) => `Saved as “${name}” and picked for side by side.`,
    keptNotPicked: (name: string) => `Saved as “${name}”. Four spots are picked for side by side already.`,
    keptWithEdit: (name: string) => `You changed “${name}”, so it is now on the shelf.`,
  },
} as const
