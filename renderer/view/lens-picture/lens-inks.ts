/** The inks of the picture: of sky, ground and things as the hour lights them. One set for both themes: a picture is of a place. */
import { type Colour, colour, glazed, mixed, translucent } from './colour.ts'
import { stepsAt, sunStrengthAt } from './face-steps.ts'
import { hourLightAt } from './hour-light.ts'

/** What one thing is made of, a colour for each material. */
export interface ThingInks {
  readonly hue: Colour
  readonly ink: Colour
  readonly pale: Colour
  readonly dark: Colour
  readonly glass: Colour
  /** How far hue, pale and ink give way to the light, 0..1. */
  readonly gives: Readonly<Record<'hue' | 'ink' | 'pale', number>>
}

export interface LensInks {
  readonly skyTop: Colour
  readonly skyLow: Colour
  readonly fieldFar: Colour
  readonly fieldNear: Colour
  readonly hill: Colour
  readonly water: Colour
  readonly wall: Colour
  /** Lines on the ground where it is nearest, along the level horizon, and along a ridge close by. */
  readonly groundLine: Colour
  readonly horizonLine: Colour
  readonly ridgeLine: Colour
  /** Under the subject's feet, and where a shadow falls. */
  readonly contact: Colour
  readonly cast: Colour
  /** Sun and moon, the hair about them, the moon's dark limb, and how strong the light about the sun is in a clear sky, 0..1. */
  readonly shine: Colour
  readonly rim: Colour
  readonly limb: Colour
  readonly glow: number
  /** What a face in the sun goes toward, and one in the shade, and how far in each step: toward the one above 0, the other below. */
  readonly lift: Colour
  readonly deep: Colour
  readonly steps: readonly number[]
  readonly subject: ThingInks
  readonly landmark: ThingInks
}

/** What things and ground are made of, as full day shows them. */
const INK = colour('#23262b')
const MASS = colour('#7d858c')
const DEEP = colour('#101116')
const LIFT = colour('#fffaf0')
const SHINE = colour('#fffefb')
const FIELD_FAR = colour('#ddd3b8')
const FIELD_NEAR = colour('#cfc3a2')
const HILL = mixed(FIELD_NEAR, MASS, 0.55)
const WALL = colour('#43483f')
const WHOLLY = { hue: 1, ink: 0.5, pale: 0.8 } as const

const SUBJECT: ThingInks = {
  hue: colour('#9c3f7d'),
  ink: colour('#2b2e34'),
  pale: colour('#d3cdbd'),
  dark: colour('#2c2f34'),
  glass: colour('#56626b'),
  gives: WHOLLY,
}
const LANDMARK: ThingInks = {
  hue: MASS,
  ink: mixed(MASS, DEEP, 0.12),
  pale: mixed(MASS, colour('#ebe9df'), 0.4),
  dark: colour('#2c2f34'),
  glass: mixed(MASS, DEEP, 0.28),
  gives: { ...WHOLLY, hue: 0.9 },
}

function lit(thing: ThingInks, light: Colour): ThingInks {
  return {
    hue: glazed(thing.hue, light),
    ink: glazed(thing.ink, light),
    pale: glazed(thing.pale, light),
    dark: glazed(thing.dark, light),
    glass: glazed(thing.glass, light),
    gives: thing.gives,
  }
}

/** Where a picture is shown: paper has none darker than a floor. */
export type Shown = 'screen' | 'paper'

/**
 * On paper (the sheet, its file for the phone) no picture is darker than with the sun so many degrees below the horizon. A night drawn
 * as dark as on the screen would be a slab of toner in which neither plum nor black is told from the ground by a small lamp, and
 * the sheet says the hour in words.
 */
const PAPER_FLOOR = -3

/** At night a landmark is a shape before hills that hold a little of the sky's light: else stone before stone would not be seen. */
const NIGHT_SHAPE = colour('#c4dbdc')
const NIGHT_HAZE = 0.27

/** At an apparent altitude of the sun, degrees. Worked out once for each picture. */
export function inksAt(altitude: number, shown: Shown = 'screen'): LensInks {
  const height = shown === 'paper' ? Math.max(PAPER_FLOOR, altitude) : altitude
  const { skyTop, skyLow, ground, things, dusk } = hourLightAt(height)
  const sun = sunStrengthAt(height)
  const onLandmark = mixed(things, glazed(things, NIGHT_SHAPE), dusk)
  // On dark ground a line or a patch needs more cover to be seen as well.
  const covering = (day: number, night: number): Colour => translucent(DEEP, day + (night - day) * dusk)
  return {
    skyTop,
    skyLow,
    fieldFar: glazed(FIELD_FAR, ground),
    fieldNear: glazed(FIELD_NEAR, ground),
    hill: mixed(glazed(HILL, ground), skyLow, NIGHT_HAZE * dusk),
    water: mixed(skyTop, glazed(MASS, ground), 0.14),
    wall: glazed(WALL, ground),
    groundLine: covering(0.12, 0.4),
    horizonLine: covering(0.2, 0.4),
    ridgeLine: covering(0.22, 0.4),
    contact: covering(0.17, 0.4),
    cast: translucent(DEEP, 0.29 * sun),
    shine: SHINE,
    rim: translucent(INK, 0.55 - dusk * 0.45),
    limb: translucent(mixed(INK, SHINE, Math.min(1, dusk * 2)), 0.16),
    glow: 0.35 + 0.45 * sun,
    lift: glazed(LIFT, things),
    deep: glazed(DEEP, things),
    steps: stepsAt(height),
    subject: lit(SUBJECT, things),
    landmark: lit(LANDMARK, onLandmark),
  }
}
