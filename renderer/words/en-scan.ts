/** Words of the scan: its panel beside the map. */
export const scanWords = {
  scan: 'Scan',
  scanHint: 'Draw where the subject may stop, say what the picture should be, and let every place be computed',
  panel: 'The scan',
  whereMayItStop: 'Where may it stop?',
  whatPicture: 'What should the picture be?',
  whereAlong: 'Where along this track?',
} as const
