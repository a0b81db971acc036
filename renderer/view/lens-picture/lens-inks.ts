/** The inks of the picture on light and on dark paper: of sky, ground and things by day, and of the night they go over to. */
import { type Colour, colour, mixed } from './colour.ts'

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
  readonly ink: Colour
  readonly skyTop: Colour
  readonly skyLow: Colour
  readonly fieldFar: Colour
  readonly fieldNear: Colour
  readonly hill: Colour
  readonly water: Colour
  readonly wall: Colour
  readonly nightTop: Colour
  readonly nightLow: Colour
  readonly nightFar: Colour
  readonly nightNear: Colour
  /** Under the subject's feet, and where a shadow falls. */
  readonly contact: Colour
  readonly cast: Colour
  /** Sun and moon, the hair about them, and how strong the light about the sun is in a clear sky, 0..1. */
  readonly shine: Colour
  readonly rim: Colour
  readonly glow: number
  /** What a face in the sun goes toward, and one in the shade. */
  readonly lift: Colour
  readonly deep: Colour
  readonly subject: ThingInks
  readonly landmark: ThingInks
}

const RIM = colour('#23262b')
const WHOLLY = { hue: 1, ink: 0.5, pale: 0.8 } as const

function onLightPaper(): LensInks {
  const [ink, mass, deep] = [colour('#23262b'), colour('#7d858c'), colour('#101116')]
  const [skyTop, skyLow] = [colour('#d3dad9'), colour('#ebe9df')]
  const fieldNear = colour('#cfc3a2')
  return {
    ink,
    skyTop,
    skyLow,
    fieldFar: colour('#ddd3b8'),
    fieldNear,
    hill: mixed(fieldNear, mass, 0.55),
    water: mixed(skyTop, mass, 0.14),
    wall: colour('#43483f'),
    nightTop: colour('#4a5259'),
    nightLow: colour('#747b7e'),
    nightFar: colour('#6a6558'),
    nightNear: colour('#565246'),
    contact: colour('#23262b2e'),
    cast: colour('#23262b4d'),
    shine: colour('#fffefb'),
    rim: RIM,
    glow: 0.8,
    lift: colour('#fffaf0'),
    deep,
    subject: {
      hue: colour('#9c3f7d'),
      ink: colour('#2b2e34'),
      pale: colour('#d3cdbd'),
      dark: colour('#2c2f34'),
      glass: colour('#56626b'),
      gives: WHOLLY,
    },
    landmark: {
      hue: mass,
      ink: mixed(mass, deep, 0.12),
      pale: mixed(mass, skyLow, 0.4),
      dark: colour('#2c2f34'),
      glass: mixed(mass, deep, 0.28),
      gives: { ...WHOLLY, hue: 0.9 },
    },
  }
}

/** Ink turns to chalk on slate, as the page's own ink does. */
function onDarkPaper(): LensInks {
  const [mass, deep] = [colour('#b4b9bb'), colour('#17131b')]
  const [skyTop, skyLow] = [colour('#373f48'), colour('#4d5254')]
  const [fieldNear, nightTop] = [colour('#33322b'), colour('#14171b')]
  return {
    ink: colour('#ece6d6'),
    skyTop,
    skyLow,
    fieldFar: colour('#3d3c33'),
    fieldNear,
    hill: mixed(fieldNear, skyTop, 0.2),
    water: mixed(skyLow, nightTop, 0.55),
    wall: colour('#0d100e'),
    nightTop,
    nightLow: colour('#262b30'),
    nightFar: colour('#1f1f1b'),
    nightNear: colour('#171714'),
    contact: colour('#00000059'),
    cast: colour('#00000073'),
    shine: colour('#fffdf6'),
    rim: RIM,
    glow: 0.55,
    lift: colour('#fffaf8'),
    deep,
    subject: {
      hue: mixed(colour('#e48cc4'), colour('#3b1531'), 0.22),
      ink: colour('#cfcabd'),
      pale: colour('#a9aaa7'),
      dark: colour('#85898d'),
      glass: colour('#2a3138'),
      gives: WHOLLY,
    },
    landmark: {
      hue: mixed(mass, skyLow, 0.34),
      ink: mixed(mass, skyLow, 0.38),
      pale: mass,
      dark: colour('#85898d'),
      glass: mixed(mass, deep, 0.62),
      gives: { ...WHOLLY, hue: 0.9 },
    },
  }
}

export const LIGHT_INKS: LensInks = onLightPaper()
export const DARK_INKS: LensInks = onDarkPaper()
