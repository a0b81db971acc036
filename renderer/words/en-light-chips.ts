/** Words of the light conditions on the day strip's left: each a chip, and those that are offered ready-made. */
export const chipWords = {
  conditions: 'Light conditions',
  add: 'Light',
  addLabel: 'Add a light condition',
  change: (name: string) => `${name}. Change`,
  off: (name: string) => `Remove: ${name}`,
  golden: 'Golden hour, sun 0° to 6° high',
  blue: 'Blue hour, sun down to 6° below the horizon',
  more: 'Hours, heights and more …',
  moon: (lit: string) => `moon ${lit} lit`,
  moonBar: 'moon',
} as const
