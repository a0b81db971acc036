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
    `${landmark} lies behind the camera. Move the standpoint to the other side of the subject, so that the subject is before the landmark.`,
  'landmark-partly-behind-camera': ({ landmark }) =>
    `A part of ${landmark} lies behind the camera, so its size in the frame cannot be told. Stand farther from it.`,
  'landmark-nearer-than-subject': ({ landmark, subject }) =>
    `${landmark} is nearer to the camera than ${subject} and stands in front of it. Check the places of both on the map.`,
  'fill-cannot-be': ({ subject }) =>
    `No focal length gives ${subject} the wished share of the frame from here. Stand farther away, or wish for less.`,
  'empty-bag': () =>
    'No lens is in the bag, so the wanted focal length is taken. Add your lenses under “Subject and bag”.',
  'no-lens-reaches': ({ wanted, lens, used, gives, subject }) =>
    `No lens in use reaches ${wanted}. ${lens} at ${used} comes nearest: with it ${subject} fills ${gives}. Move the standpoint, or wish otherwise.`,
  'focal-length-outside-lens': ({ wanted, lens, used }) =>
    `${lens} does not have ${wanted}; it is taken at ${used}. Type another focal length or choose another lens.`,
  'focus-too-near': ({ lens, closest, focus }) =>
    `${lens} focuses no nearer than ${closest} from the sensor, and the focus lies at ${focus}. Stand farther back or choose another lens.`,
  'aperture-outside-lens': ({ aperture, lens }) =>
    `${lens} does not have ${aperture} at this setting. Choose another aperture, or “As needed”.`,
  'not-sharp-end-to-end': ({ subject, aperture, needed }) =>
    `At ${aperture} not all of ${subject} is sharp: end to end takes ${needed}. Close the aperture, focus at the best distance, or turn the subject more side-on.`,
  diffraction: ({ aperture, diffractionFrom }) =>
    `At ${aperture} diffraction softens the whole picture (it sets in from ${diffractionFrom}). Open up if the depth allows it.`,
  'landmark-level-assumed': ({ landmark }) =>
    `The foot of ${landmark} is taken as level with the camera, since one of the two heights above the sea is unknown. Type them under “Where exactly?” and “Subject and bag”.`,
  'aim-cannot-be': ({ subject }) =>
    `No aim puts ${subject} at the wished place of the frame. Drag it nearer to the middle in the view through the lens.`,
  'proportion-not-held': ({ landmark, subject, proportion, proportionNow }) => {
    const miss =
      proportionNow === null
        ? `${landmark} cannot be ${proportion} times the size of ${subject} from here`
        : proportionNow === proportion
          ? `${landmark} comes close to ${proportion} times the size of ${subject}, but not to it exactly`
          : `${landmark} should be ${proportion} times the size of ${subject} and is ${proportionNow} times`
    return `The proportion is not kept: ${miss}. Move the camera or ${subject}; where no place in that direction has it, try another side or keep something else.`
  },
}
