/** The sky of the picture as strokes: its paint, the light about the sun, sun and moon. */
import { type Sky } from '#core/light/exposure.ts'
import { type LensInks } from './lens-inks.ts'
import { type SkyBody } from './sky-bodies.ts'
import { translucent, mixed } from './colour.ts'
import { type Picture } from './picture.ts'
import { sharp, even, type StrokeGroup, rect, drawnStroke, filledStroke, type Stroke, type Paint } from './stroke.ts'

/** What every part of the picture is drawn with. */
export interface PictureLook {
  readonly picture: Picture
  readonly inks: LensInks
  readonly near: Paint
  readonly lines: Paint
  readonly water: Paint
}

/** In an overcast sky the top is nearly as pale as the rest. */
export function skyStrokes({ picture, inks }: PictureLook): StrokeGroup[] {
  const { width, height, horizon, sky } = picture
  const high = sky === 'overcast' ? mixed(inks.skyLow, inks.skyTop, 0.4) : inks.skyTop
  const paint: Paint = {
    kind: 'down',
    from: horizon - height,
    to: horizon,
    stops: [
      { at: 0, colour: high },
      { at: 1, colour: inks.skyLow },
    ],
  }
  return sharp([filledStroke('sky', rect(0, 0, width, height), paint)])
}

/** Shares of the reach, and of the glow there: falling ever more slowly, so that it ends nowhere. */
const GLOW = [
  [0, 1],
  [0.12, 0.62],
  [0.28, 0.32],
  [0.5, 0.13],
  [0.75, 0.03],
  [1, 0],
] as const

function glowIn(sky: Sky, inks: LensInks): number {
  return sky === 'overcast' ? 0.2 : sky === 'cloudy-bright' ? 0.4 : inks.glow
}

/** The sky is brightest about the sun: a wide faint light that also leads the eye to so small a disc. */
function glow(sun: SkyBody, { picture, inks }: PictureLook): Stroke {
  const { x, y, radius } = sun
  const reach = Math.max(radius * 8, picture.height * 0.4)
  const strength = glowIn(picture.sky, inks)
  const stops = GLOW.map(([at, share]) => ({ at, colour: translucent(inks.shine, strength * share) }))
  const square = rect(x - reach, y - reach, reach * 2, reach * 2)
  return filledStroke('bodies', square, { kind: 'around', x, y, radius: reach, stops })
}

/** Sun and moon are brightness alone; a hair of ink holds their edge against a bright sky. The moon goes before the sun, as it is. */
export function bodyStrokes(look: PictureLook): StrokeGroup[] {
  const { picture, inks } = look
  const { sun, moon, sky, skyDeviation } = picture
  const veiled = sky === 'overcast' || sky === 'cloudy-bright'
  const shining = (path: string): Stroke => ({
    part: 'bodies',
    path,
    fill: even(translucent(inks.shine, veiled ? 0.25 : 1)),
    line: {
      paint: even(inks.rim),
      width: 0.7,
      dashes: veiled ? [1.5, 1.5] : null,
      round: false,
    },
  })
  const discs = [
    ...(sun === null ? [] : [shining(sun.disc)]),
    ...(moon === null
      ? []
      : [drawnStroke('bodies', moon.disc, even(inks.limb), 0.5), ...(moon.lit === '' ? [] : [shining(moon.lit)])]),
  ]
  const soft = discs.length === 0 ? [] : [{ deviation: skyDeviation, within: null, strokes: discs }]
  return [...(sun === null ? [] : sharp([glow(sun, look)])), ...soft]
}
