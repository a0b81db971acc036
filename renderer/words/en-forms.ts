/** Words of the shoot's forms: the quick entry of a lens, measures by the kind of a landmark, what is seldom changed. */

import type { LandmarkKind, SpanForm } from '#core/scene/landmark.ts'

type Shape = Exclude<LandmarkKind, 'span'> | SpanForm

export const formWords = {
  lens: {
    label: 'Add a lens',
    add: 'Add',
    hint: 'Write what is on the lens: 70-200/2.8, 50 f/1.4, 18-55 1:3.5-5.6, or just 85.',
    reads: (lens: string) => `Reads as ${lens}. Press Enter to add it.`,
    readsFocal: (focal: string, aperture: string) =>
      `Reads as ${focal}, with ${aperture} assumed as its maximum aperture. Press Enter to add it.`,
    added: (lens: string, closest: string) =>
      `Added ${lens}. Its closest focus is assumed to be ${closest}: correct it below.`,
    addedFocal: (lens: string, closest: string) =>
      `Added ${lens}. Its maximum aperture and its closest focus, ${closest}, are assumed: correct them below.`,
    full: (most: number) => `The bag holds ${most} lenses, which is the most. Remove one first.`,
  },
  subject: {
    usualSize: (size: string) => `Usual size: ${size}`,
  },
  landmark: {
    height: {
      upright: 'Height of the tower',
      summit: 'Height above its base',
      building: 'Height of the building',
      suspension: 'Height of the towers',
      girder: 'Height of the bridge',
      arches: 'Height of the arches',
      wall: 'Height of the wall',
    } satisfies Record<Shape, string>,
    width: {
      upright: 'Width at the base',
      summit: 'Width at the base',
      suspension: 'Width of the bridge',
      girder: 'Width of the bridge',
      arches: 'Width across',
      wall: 'Thickness of the wall',
    } satisfies Record<Exclude<Shape, 'building'>, string>,
    deck: 'Deck above the base',
    deckAboveTop: {
      suspension: 'The deck cannot be higher than the towers: this waits here for higher towers.',
      girder: 'The deck cannot be higher than the top of the bridge: this waits here for a higher bridge.',
    },
    topBelowDeck: {
      suspension: 'The towers cannot be lower than the deck: this waits here for a lower deck.',
      girder: 'The top of the bridge cannot be lower than its deck: this waits here for a lower deck.',
    },
    arches: (count: number) => (count === 1 ? 'Drawn as one arch' : `Drawn as ${count} arches`),
    length: 'Length between its ends',
    alongPoints: (length: string) => `${length} along its points`,
    bearing: 'Bearing, true',
    firstStays: 'From point 1, which stays in place',
    endsMeet: (length: string) => `Its ends meet. It is ${length} long along its points.`,
  },
  camera: {
    fine: 'Fine points',
    ownSize: (own: string, size: string) => `${own}, ${size}`,
    confusion: 'Circle of confusion: diagonal ÷',
    confusionHint: (size: string) => `${size} across; 1500 is usual.`,
    refraction: 'Refraction',
    refractionHint: 'How strongly the air bends light, usually 0.13. It lifts what is far away a little.',
    fastestShutter: 'Fastest shutter speed: 1/',
    slowestShutter: 'Slowest shutter speed',
  },
} as const
