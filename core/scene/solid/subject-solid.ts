/** The subject's solid: a shape one recognises for every kind, filling the subject's box exactly. */
import { exhaustive } from '#core/exhaustive.ts'
import type { Solid } from '#core/scene/solid.ts'
import type { Subject } from '#core/scene/subject.ts'
import { bicycleSolid, cargoBicycleSolid } from './bicycle.ts'
import { boatOnTrailerSolid } from './boat.ts'
import { carSolid } from './car.ts'
import { fitted } from './fit.ts'
import { horseSolid } from './horse.ts'
import { motorcycleSolid } from './motorcycle.ts'
import { coupleSolid, personSolid } from './person.ts'
import { box, part } from './shape.ts'
import { vanSolid } from './van.ts'

function shapeOf(subject: Subject): Solid {
  const { kind, length, width, height } = subject
  switch (kind) {
    case 'bicycle':
      return bicycleSolid(subject)
    case 'cargo-bicycle':
      return cargoBicycleSolid(subject)
    case 'motorcycle':
      return motorcycleSolid(subject)
    case 'car':
      return carSolid(subject)
    case 'van':
      return vanSolid(subject)
    case 'person':
      return personSolid(subject)
    case 'couple':
      return coupleSolid(subject)
    case 'horse':
      return horseSolid(subject)
    case 'boat-on-trailer':
      return boatOnTrailerSolid(subject)
    case 'other':
      return [part(box('hue', [-length / 2, length / 2], [-width / 2, width / 2], [0, height]))]
    default:
      return exhaustive(kind)
  }
}

/** Metres in the subject's own frame: north is ahead, east its right, the origin on the ground under its middle. */
export function subjectSolid(subject: Subject): Solid {
  return fitted(shapeOf(subject), subject)
}
