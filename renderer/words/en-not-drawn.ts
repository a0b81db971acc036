/** Words for a part of the page that could not be drawn. */
export const notDrawnWords = {
  label: (part: string) => `${part}: not drawn`,
  sentence: (part: string, reason: string) =>
    `${part} could not be drawn: ${reason.trim().replace(/\.$/u, '')}. Your saved work is not affected.`,
  otherSpot: 'Open another spot',
  otherShoot: 'Open another shoot',
  again: 'Try again',
  parts: {
    page: 'This page',
    window: 'The window',
    shelf: 'The shelf',
    spot: 'This spot',
    map: 'The map',
    onMap: 'What is drawn over the map',
    lensView: 'The view through the lens',
    beside: 'What stands beside the map',
    answer: 'This answer',
    dayStrip: 'The day strip',
    section: 'This section',
  },
} as const
