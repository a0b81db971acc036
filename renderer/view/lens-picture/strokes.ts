/** The picture as strokes: areas and lines with their paints, in the order in which they cover each other. Pens draw them. */
import type { Sky } from '#core/light/exposure.ts'
import { type Colour, mixed, thinned } from './colour.ts'
import type { SoftGround } from './ground-picture.ts'
import type { Layer } from './layers.ts'
import type { LensInks, ThingInks } from './lens-inks.ts'
import type { Picture, SoftLayers } from './picture.ts'
import type { ScreenStrips } from './screen-strips.ts'
import type { SkyBody } from './sky-bodies.ts'
import { edgeTone, landTone, thingTone, wallTone, waterTone } from './tones.ts'

/** What a stroke is of. */
export type StrokePart = 'sky' | 'bodies' | 'ground' | 'water' | 'screens' | 'shadow' | 'landmark' | 'subject'

export interface PaintStop {
  /** 0..1, never falling. */
  readonly at: number
  readonly colour: Colour
}

/** One colour, or one that changes straight down the picture or out from a place, in the drawing's units. */
export type Paint =
  | { readonly kind: 'even'; readonly colour: Colour }
  | { readonly kind: 'down'; readonly from: number; readonly to: number; readonly stops: readonly PaintStop[] }
  | {
      readonly kind: 'around'
      readonly x: number
      readonly y: number
      readonly radius: number
      readonly stops: readonly PaintStop[]
    }

export interface StrokeLine {
  readonly paint: Paint
  readonly width: number
  /** Lengths of dash and gap; null for an unbroken line. */
  readonly dashes: readonly [number, number] | null
  readonly round: boolean
}

export interface Stroke {
  readonly part: StrokePart
  /** SVG path text. */
  readonly path: string
  readonly fill: Paint | null
  readonly line: StrokeLine | null
}

/** Strokes drawn with one softness, or cut out by one outline. */
export interface StrokeGroup {
  /** Standard deviation of the blur in the drawing's units; 0 for sharp. */
  readonly deviation: number
  /** Path text of what is shown of them; null for all. */
  readonly within: string | null
  readonly strokes: readonly Stroke[]
}

export interface Strokes {
  readonly width: number
  readonly height: number
  readonly groups: readonly StrokeGroup[]
}

const even = (colour: Colour): Paint => ({ kind: 'even', colour })
const SEAM = 0.7

function filled(part: StrokePart, path: string, fill: Paint): Stroke {
  return { part, path, fill, line: null }
}

function drawn(part: StrokePart, path: string, paint: Paint, width: number, round = false): Stroke {
  return { part, path, fill: null, line: { paint, width, dashes: null, round } }
}

function sharp(strokes: readonly Stroke[]): StrokeGroup[] {
  const shown = strokes.filter(({ path }) => path !== '')
  return shown.length === 0 ? [] : [{ deviation: 0, within: null, strokes: shown }]
}

/** What every part of the picture is drawn with. */
interface Look {
  readonly picture: Picture
  readonly inks: LensInks
  readonly near: Paint
  readonly lines: Paint
  readonly water: Paint
}

function rect(left: number, top: number, width: number, height: number): string {
  return `M${left} ${top}h${width}v${height}h${-width}Z`
}

function lookOf(picture: Picture, inks: LensInks): Look {
  const { height, horizon, darkness, ground } = picture
  const near: Paint = {
    kind: 'down',
    from: horizon,
    to: horizon + height * 0.55,
    stops: [
      { at: 0, colour: mixed(inks.fieldFar, inks.nightFar, darkness) },
      { at: 1, colour: mixed(inks.fieldNear, inks.nightNear, darkness) },
    ],
  }
  const lines: Paint = {
    kind: 'down',
    from: horizon + height * 0.01,
    to: horizon + height * 0.35,
    stops: [
      { at: 0, colour: thinned(inks.ink, 0) },
      { at: 1, colour: thinned(inks.ink, 0.12) },
    ],
  }
  return { picture, inks, near, lines, water: waterPaint(ground?.waterline ?? [], inks, darkness) }
}

/** The sea, ever paler toward its horizon: a paint in one, so that it shows no seams. */
function waterPaint(
  waterline: readonly { readonly y: number; readonly distance: number }[],
  inks: LensInks,
  dusk: number,
): Paint {
  const [from, bottom] = [waterline[0]?.y ?? 0, waterline.at(-1)?.y ?? 0]
  const whole = Math.max(1e-6, bottom - from)
  let before = 0
  const stops = waterline.map(({ y, distance }) => {
    before = Math.min(1, Math.max(before, (y - from) / whole))
    return { at: before, colour: waterTone(distance, inks, dusk) }
  })
  return { kind: 'down', from, to: from + whole, stops }
}

/** In an overcast sky the top is as pale as the rest, but for a trace of night. */
function skyStrokes({ picture, inks }: Look): StrokeGroup[] {
  const { width, height, horizon, darkness, sky } = picture
  const high = sky === 'overcast' ? mixed(inks.skyLow, inks.nightTop, 0.16) : inks.skyTop
  const paint: Paint = {
    kind: 'down',
    from: horizon - height,
    to: horizon,
    stops: [
      { at: 0, colour: mixed(high, inks.nightTop, darkness) },
      { at: 1, colour: mixed(inks.skyLow, inks.nightLow, darkness) },
    ],
  }
  return sharp([filled('sky', rect(0, 0, width, height), paint)])
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
function glow(sun: SkyBody, { picture, inks }: Look): Stroke {
  const { x, y, radius } = sun
  const reach = Math.max(radius * 8, picture.height * 0.4)
  const strength = glowIn(picture.sky, inks)
  const stops = GLOW.map(([at, share]) => ({ at, colour: thinned(inks.shine, strength * share) }))
  const square = rect(x - reach, y - reach, reach * 2, reach * 2)
  return filled('bodies', square, { kind: 'around', x, y, radius: reach, stops })
}

/** Sun and moon are brightness alone; a hair of ink holds their edge against a bright sky. The moon goes before the sun, as it is. */
function bodyStrokes(look: Look): StrokeGroup[] {
  const { picture, inks } = look
  const { sun, moon, darkness, sky, skyDeviation } = picture
  const veiled = sky === 'overcast' || sky === 'cloudy-bright'
  const shining = (path: string): Stroke => ({
    part: 'bodies',
    path,
    fill: even(thinned(inks.shine, veiled ? 0.25 : 1)),
    line: {
      paint: even(thinned(inks.rim, 0.55 - darkness * 0.45)),
      width: 0.7,
      dashes: veiled ? [1.5, 1.5] : null,
      round: false,
    },
  })
  const discs = [
    ...(sun === null ? [] : [shining(sun.disc)]),
    ...(moon === null
      ? []
      : [
          drawn('bodies', moon.disc, even(thinned(inks.ink, 0.16)), 0.5),
          ...(moon.lit === '' ? [] : [shining(moon.lit)]),
        ]),
  ]
  const soft = discs.length === 0 ? [] : [{ deviation: skyDeviation, within: null, strokes: discs }]
  return [...(sun === null ? [] : sharp([glow(sun, look)])), ...soft]
}

function levelGround(look: Look): StrokeGroup[] {
  const { picture, near, lines, inks } = look
  const { width, height, horizon, groundLines } = picture
  const low = Math.min(height, Math.max(0, horizon))
  return sharp([
    filled('ground', rect(0, low, width, height - low), near),
    drawn('ground', groundLines, lines, 0.7),
    drawn('ground', `M0 ${horizon.toFixed(2)}H${width}`, even(thinned(inks.ink, 0.22)), 0.8),
  ])
}

function areaStrokes(groups: readonly SoftGround[], { picture, inks, near, water }: Look): StrokeGroup[] {
  const dusk = picture.darkness
  const strokeOf = ({ kind, distance, path }: SoftGround['pieces'][number]): Stroke => {
    if (kind === 'near') return filled('ground', path, near)
    if (kind === 'land') return filled('ground', path, even(landTone(distance, inks, dusk)))
    if (kind === 'edge') return drawn('ground', path, even(edgeTone(distance, inks)), 0.8, true)
    // Its own edge closes the seams between the bands of the sea.
    return { part: 'water', path, fill: water, line: { paint: water, width: SEAM, dashes: null, round: false } }
  }
  return groups.map(({ deviation, pieces }) => ({ deviation, within: null, strokes: pieces.map(strokeOf) }))
}

/** Trees and walls: plain, for nothing is known of them but their line and their height. */
function stripStrokes(of: keyof ScreenStrips, { picture, inks }: Look): StrokeGroup[] {
  const strips = picture.ground?.screens[of] ?? []
  return strips.map(({ deviation, distance, path }) => ({
    deviation,
    within: null,
    strokes: [filled('screens', path, even(wallTone(distance, inks, picture.darkness)))],
  }))
}

function cast(path: string, { picture, inks }: Look): Stroke {
  return filled('shadow', path, even(thinned(inks.cast, picture.sky === 'hazy' ? 0.55 : 1)))
}

/** What lies on the ground about the subject; lines and the landmark's shadow as far as the true ground before them shows. */
function onGround(look: Look): StrokeGroup[] {
  const { picture, inks, lines } = look
  const { ground, landmarkBefore, groundLines, landmarkShadow, subjectShadow } = picture
  const within = (path: string, strokes: readonly Stroke[]): StrokeGroup[] =>
    sharp(strokes).map((group) => ({ ...group, within: path }))
  const cut =
    ground === null
      ? []
      : [
          ...within(ground.near, [drawn('ground', groundLines, lines, 0.7)]),
          ...within(ground.front, [cast(landmarkBefore ? '' : landmarkShadow, look)]),
        ]
  const contact = even(thinned(inks.contact, subjectShadow === '' ? 1 : 0.4))
  return [...cut, ...sharp([filled('shadow', picture.contact, contact), cast(subjectShadow, look)])]
}

function thingStrokes(part: 'landmark' | 'subject', soft: SoftLayers, thing: ThingInks, look: Look): StrokeGroup {
  const { inks, picture } = look
  const strokeOf = (layer: Layer): Stroke => {
    const tone = even(thingTone(layer, thing, inks, picture.darkness))
    // A hair of the face's own tone closes the seams between neighbouring faces; rods have none, so that they keep their thickness.
    const line = layer.seam ? { paint: tone, width: SEAM, dashes: null, round: false } : null
    return { part, path: layer.path, fill: tone, line }
  }
  return { deviation: soft.deviation, within: null, strokes: soft.layers.map(strokeOf) }
}

/** Sky, sun and moon, ground, landmark and subject, in the order in which they cover each other. */
export function strokesOf(picture: Picture, inks: LensInks): Strokes {
  const { width, height, ground, landmark, landmarkBefore } = picture
  const look = lookOf(picture, inks)
  const landmarkGroups = landmark === null ? [] : [thingStrokes('landmark', landmark, inks.landmark, look)]
  const subjectGroups = picture.subject.map((soft) => thingStrokes('subject', soft, inks.subject, look))
  const [farther, nearer] = landmarkBefore ? [subjectGroups, landmarkGroups] : [landmarkGroups, subjectGroups]
  const groups = [
    ...skyStrokes(look),
    ...bodyStrokes(look),
    ...(ground === null ? levelGround(look) : areaStrokes(ground.behind, look)),
    ...sharp([cast(picture.landmarkShadow, look)]),
    ...(landmarkBefore ? onGround(look) : []),
    ...stripStrokes('behind', look),
    ...farther,
    ...areaStrokes(ground?.between ?? [], look),
    ...(landmarkBefore ? [] : onGround(look)),
    ...stripStrokes('between', look),
    ...nearer,
    ...areaStrokes(ground?.before ?? [], look),
    ...stripStrokes('before', look),
  ]
  return { width, height, groups }
}
