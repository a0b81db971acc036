/** Words of the scan as it is run: its cost, its progress, what has changed since. */
import { listed } from './en-list.ts'

export const scanRunWords = {
  noSpot: 'A scan starts from the open spot. Add a spot first.',
  noGround: 'Draw above where the subject may stop; how long the scan will take then shows here.',
  cost: (places: string, combinations: string) => `${places}, ${combinations}`,
  places: (count: number, text: string) => (count === 1 ? '1 position' : `${text} positions`),
  combinations: (count: number, text: string) => (count === 1 ? '1 combination' : `${text} combinations`),
  million: (figure: string) => `${figure} million`,
  billion: (figure: string) => `${figure} billion`,
  takes: (time: string) => `about ${time} on this computer`,
  takesBetween: (least: string, most: string) => `perhaps ${least} to ${most} on this computer`,
  time: {
    moment: 'a moment',
    seconds: (count: number) => `${count} s`,
    minutes: (count: number) => `${count} min`,
    hours: (hours: number, minutes: number) => (minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`),
  },
  daysTried: (tried: number, wished: number) =>
    `${tried} of the ${wished} days are tested, evenly spread. A day close by has nearly the same light.`,
  again: 'How finely?',
  look: 'Detail',
  fineness: { coarser: 'coarse', usual: 'normal', finer: 'fine' },
  placeStep: 'A position every',
  tooMany: (every: string, places: string, time: string) => `A position every ${every} would be ${places}, ${time}.`,
  takeCoarser: (every: string) => `Every ${every} instead`,
  reading: 'Loading elevation data.',
  groundCell: (cell: string) => `The line is so long that its elevation data is read every ${cell}.`,
  start: 'Start the scan',
  startAgain: 'Scan again',
  stop: 'Stop',
  phases: {
    looking: 'Testing',
    polishing: 'Fine-tuning the best',
    explaining: 'Finding out what rules everything out',
  },
  progress: 'Progress of the scan',
  shareLeft: (share: string, left: string) => `${share}, about ${left} left`,
  soFar: (count: number, text: string) =>
    count === 1 ? '1 position meets every must so far.' : `${text} positions meet every must so far.`,
  stopped: (share: string, found: boolean) =>
    `Stopped at ${share}. ${found ? 'What was found so far is below.' : 'Nothing was found so far.'}`,
  failed: (why: string) =>
    `The scan stopped with a problem: ${why}. Start it again; if that happens again, choose less detail.`,
  stale: (changes: readonly string[]) => `Found before you changed ${listed(changes)}.`,
  changes: {
    ground: 'the places to stop',
    wishes: 'the musts and preferences',
    light: 'the light conditions',
    plan: 'subject, landmarks or bag',
    shot: 'the spot it started from',
    elevations: 'the elevation data',
  },
  setOutFrom: (name: string) => `It started from “${name}”: its frame, its landmark and its day.`,
} as const
