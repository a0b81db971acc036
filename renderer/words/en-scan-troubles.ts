/** Words for what stands in the way of a scan. */
import { listed } from './en-list.ts'

function quoted(parts: readonly string[]): string {
  return listed(parts.map((part) => `“${part}”`))
}

export const scanTroubleWords = {
  ground: (number: number) => `Place to stop ${number}`,
  groundNamed: (name: string) => `“${name.slice(0, 60)}”`,
  'no-ground': 'No place to stop is drawn. Draw a line or an area where the subject may stop.',
  'empty-bag': 'No lens is in the bag. Add one under “Subject and bag”.',
  'hours-empty': 'Start and end are the same time. Change them above, or choose the whole day.',
  'no-parking':
    'You want parking close by, but no spot of this shoot has a parking point. Set one under “How do you get there?”, or switch “Near parking” off.',
  'line-too-short': (where: string, length: string) =>
    `${where} is a line of ${length}: too short to stop on. Draw it longer, or remove it.`,
  'area-too-few-corners': (where: string, corners: number) =>
    `${where} has ${corners} corners, and an area needs three. Add corners, or remove it.`,
  'area-crosses-itself': (where: string) =>
    `${where}: its outline crosses itself, so it has no clear inside. Move the corners apart.`,
  'area-empty': (where: string) => `${where} is an area with no room in it. Move its corners apart, or remove it.`,
  'wholly-kept-out': (where: string) =>
    `${where} is completely inside keep-outs: nothing can stop there. Move one of the two.`,
  'ground-without-elevation': (where: string) =>
    `${where} has no elevation data, so what is hidden there is unknown. Add elevation data under “Settings”, or go on without knowing.`,
  'no-landmark': (demands: readonly string[]) =>
    `This spot has no landmark, and ${quoted(demands)} need${demands.length === 1 ? 's' : ''} one. Choose one under “Where exactly?”, or switch ${demands.length === 1 ? 'that' : 'those'} off.`,
  'band-upside-down': (name: string) => `“${name}”: the lower limit is above the upper. Change one of the two.`,
  'contradictory-light': (one: string, other: string) =>
    `No position of the sun gives both “${one}” and “${other}”. Remove one of the two light conditions.`,
  'contradictory-demands': (demands: readonly string[], needed: string) =>
    `${quoted(demands)} together need ${needed} of the frame. Lower one of them, or set it to “prefer”.`,
  'days-backwards': (from: string, until: string) =>
    `The first day, ${from}, comes after the last, ${until}. Change one of the two.`,
  'no-such-day': (from: string, until: string) =>
    `${from} or ${until} does not exist in the calendar of the place. Choose another.`,
  'too-many': (places: string, pictures: string) =>
    `${places} in this detail make ${pictures} pictures: this would take far too long. Choose less detail, or draw fewer places to stop.`,
} as const
