/** Words for what stands in the way of a scan. */
import { listed } from './en-list.ts'

function quoted(parts: readonly string[]): string {
  return listed(parts.map((part) => `“${part}”`))
}

export const scanTroubleWords = {
  ground: (number: number) => `Ground ${number}`,
  groundNamed: (name: string) => `“${name.slice(0, 60)}”`,
  'no-ground': 'No stopping ground is drawn. Draw a line or an area in which the subject may stop.',
  'empty-bag': 'No lens is in the bag. Put one in under “Subject and bag”.',
  'hours-empty': 'The hours begin when they end. Change them above, or take the whole day.',
  'no-parking':
    'Nearness to parking is wished, but no spot of this shoot has a parking point. Set one under “How does one get there?”, or drop the wish.',
  'line-too-short': (where: string, length: string) =>
    `${where} is a line of ${length}: too short to stop on. Draw it longer, or remove it.`,
  'area-too-few-corners': (where: string, corners: number) =>
    `${where} has ${corners} corners, and an area needs three. Add corners, or remove it.`,
  'area-crosses-itself': (where: string) =>
    `${where}: its outline crosses itself, so what is inside cannot be told. Move the corners apart.`,
  'area-empty': (where: string) => `${where} is an area without any room in it. Move its corners apart, or remove it.`,
  'wholly-kept-out': (where: string) =>
    `${where} lies wholly within keep-outs: nothing can stop there. Move one of the two.`,
  'ground-without-elevation': (where: string) =>
    `${where}: elevations are missing for it, so what is hidden there cannot be told. Add elevations under “Settings”, or take it with that doubt.`,
  'no-landmark': (demands: readonly string[]) =>
    `This spot has no landmark, and ${quoted(demands)} ask${demands.length === 1 ? 's' : ''} for one. Choose one under “Where exactly?”, or drop the wish.`,
  'band-upside-down': (name: string) => `“${name}”: its least is above its most. Change one of the two.`,
  'contradictory-light': (one: string, other: string) =>
    `“${one}” and “${other}” cannot be met together by any sun. Drop one of the two light wishes.`,
  'contradictory-demands': (demands: readonly string[], needed: string) =>
    `${quoted(demands)} together need ${needed} of the frame. Lower one of them, or make it a wish.`,
  'days-backwards': (from: string, until: string) =>
    `The first day, ${from}, comes after the last, ${until}. Change one of the two.`,
  'no-such-day': (from: string, until: string) =>
    `${from} or ${until} does not exist in the calendar of the place. Choose another.`,
  'too-many': (places: string, pictures: string) =>
    `${places} looked at this finely make ${pictures} pictures, more than anybody would wait for. Look more coarsely, or draw less ground.`,
} as const
