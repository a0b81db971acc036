/** Words of the scan as it is run: its cost, its progress, what has changed since. */
import { listed } from './en-list.ts'

export const scanRunWords = {
  noSpot: 'A scan sets out from the spot on the board. Add a spot first.',
  noGround:
    'Nothing is drawn yet in which the subject may stop. Draw a line or an area above, and the scan tells here what it would cost.',
  cost: (places: string, combinations: string) => `${places}, ${combinations}`,
  places: (count: number, text: string) => (count === 1 ? '1 place' : `${text} places`),
  combinations: (count: number, text: string) => (count === 1 ? '1 combination' : `${text} combinations`),
  million: (figure: string) => `${figure} million`,
  billion: (figure: string) => `${figure} thousand million`,
  takes: (time: string) => `about ${time} on this machine`,
  takesBetween: (least: string, most: string) => `perhaps ${least} to ${most} on this machine`,
  time: {
    moment: 'a moment',
    seconds: (count: number) => `${count} s`,
    minutes: (count: number) => `${count} min`,
    hours: (hours: number, minutes: number) => (minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`),
  },
  daysTried: (tried: number, wished: number) =>
    `${tried} of the ${wished} days are looked at, evenly over them. Another day near by has nearly the same light.`,
  again: 'Finer or coarser',
  look: 'Look',
  fineness: { coarser: 'coarser', usual: 'usual', finer: 'finer' },
  placeStep: 'A place every',
  tooMany: (every: string, places: string, time: string) => `A place every ${every} would be ${places}, ${time}.`,
  takeCoarser: (every: string) => `Every ${every} instead`,
  reading: 'Elevations are on their way.',
  groundCell: (cell: string) => `The ground is so long that its elevations are read every ${cell}.`,
  start: 'Start the scan',
  startAgain: 'Scan again',
  stop: 'Stop',
  phases: {
    looking: 'Looking',
    polishing: 'Refining the best',
    explaining: 'Finding out what stands in the way',
  },
  progress: 'Progress of the scan',
  shareLeft: (share: string, left: string) => `${share}, about ${left} left`,
  soFar: (count: number, text: string) =>
    count === 1 ? '1 place meets every must so far.' : `${text} places meet every must so far.`,
  stopped: (share: string, found: boolean) =>
    `Stopped at ${share}. ${found ? 'What was found until then stands below.' : 'Nothing was found until then.'}`,
  failed: (why: string) => `The scan broke off: ${why}. Start it again; if it breaks off again, look more coarsely.`,
  stale: (changes: readonly string[]) => `Found before a change to ${listed(changes)}.`,
  changes: {
    ground: 'the ground drawn',
    wishes: 'the wishes',
    light: 'the light wished',
    plan: 'subject, landmarks or bag',
    shot: 'the spot that it set out from',
    elevations: 'the elevations',
  },
  setOutFrom: (name: string) => `It set out from “${name}”: from its frame, its landmark and its day.`,
} as const
