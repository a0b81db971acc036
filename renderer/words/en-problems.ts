/** A sentence for each thing that stands in the way of an answer: what, where, and what to do. */
import type { Problem } from '#core/plan/problem.ts'

/** The names and figures, already written out, that the sentences need. */
export interface ProblemParts {
  readonly subject: string
  readonly landmark: string
  /** The lens taken, by name. */
  readonly lens: string
  readonly wanted: string
  readonly used: string
  /** What the lens taken gives the subject instead. */
  readonly gives: string
  readonly closest: string
  readonly focus: string
  readonly aperture: string
  readonly needed: string
  readonly diffractionFrom: string
  /** How many times the subject's size the landmark is to have in the picture, and has; null when that has no answer. */
  readonly proportion: string
  readonly proportionNow: string | null
}

export const problemWords: Readonly<Record<Problem, (parts: ProblemParts) => string>> = {
  'on-top-of-each-other': ({ subject }) =>
    `Camera and ${subject} are at the same place. Drag one of them away in the close plan, or type a distance under “Where exactly?”.`,
  'inside-subject': ({ subject }) =>
    `The camera stands inside ${subject}. Drag it out in the close plan, or type a greater distance under “Where exactly?”.`,
  'no-landmark': () =>
    'No landmark is chosen for this spot. Add one under “Subject and bag”, or choose one under “Where exactly?”.',
  'landmark-behind-camera': ({ landmark }) =>
    `${landmark} lies behind the camera. Move the standpoint to the other side of the subject, so that the subject is in front of the landmark.`,
  'landmark-partly-behind-camera': ({ landmark }) =>
    `A part of ${landmark} lies behind the camera, so its size in the frame cannot be worked out. Move the camera farther from it.`,
  'landmark-nearer-than-subject': ({ landmark, subject }) =>
    `${landmark} is closer to the camera than ${subject} and in front of it. Check where both are on the map.`,
  'fill-cannot-be': ({ subject }) =>
    `No focal length makes ${subject} fill as much of the frame as you want from here. Move the camera farther away, or ask for less.`,
  'empty-bag': () => 'No lens is in the bag, so any focal length is used. Add your lenses under “Subject and bag”.',
  'no-lens-reaches': ({ wanted, lens, used, gives, subject }) =>
    `No lens in the bag reaches ${wanted}. ${lens} at ${used} comes closest: with it ${subject} fills ${gives}. Move the camera, or change the sizes you want.`,
  'focal-length-outside-lens': ({ wanted, lens, used }) =>
    `${lens} does not have ${wanted}; ${used} is used. Type another focal length or choose another lens.`,
  'focus-too-near': ({ lens, closest, focus }) =>
    `${lens} cannot focus closer than ${closest} (from the sensor); here it would have to focus at ${focus}. Step back or choose another lens.`,
  'aperture-outside-lens': ({ aperture, lens }) =>
    `${lens} does not have ${aperture} at this setting. Choose another aperture, or “As needed”.`,
  'not-sharp-end-to-end': ({ subject, aperture, needed }) =>
    `At ${aperture} not all of ${subject} is sharp: front to back needs ${needed}. Stop down, focus at the best distance, or turn the subject more side-on.`,
  diffraction: ({ aperture, diffractionFrom }) =>
    `At ${aperture} diffraction softens the whole picture (from ${diffractionFrom} on). Open up if the depth of field allows it.`,
  'landmark-level-assumed': ({ landmark }) =>
    `The base of ${landmark} is assumed level with the camera, because the elevation of one of the two is missing. Enter them under “Where exactly?” and “Subject and bag”.`,
  'aim-cannot-be': ({ subject }) =>
    `The camera cannot be turned so that ${subject} is there in the frame. Drag it closer to the middle in the view through the lens.`,
  'proportion-not-held': ({ landmark, subject, proportion, proportionNow }) => {
    const miss =
      proportionNow === null
        ? `${landmark} cannot be ${proportion} times the size of ${subject} from here`
        : proportionNow === proportion
          ? `${landmark} comes close to ${proportion} times the size of ${subject}, but not to it exactly`
          : `${landmark} should be ${proportion} times the size of ${subject} and is ${proportionNow} times`
    return `The proportion is not held: ${miss}. Move the camera or ${subject}. If no place in that direction gives it, try another side or hold something else fixed.`
  },
}
