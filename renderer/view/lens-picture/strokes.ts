/** The picture as strokes: areas and lines with their paints, in the order in which they cover each other. Pens draw them. */
import { skyStrokes, bodyStrokes, type PictureLook } from './sky-strokes.ts'
import {
  sharp,
  even,
  SEAM,
  type StrokeGroup,
  rect,
  drawnStroke,
  filledStroke,
  type Paint,
  type Stroke,
  type Strokes,
} from './stroke.ts'
import { translucent } from './colour.ts'
import type { SoftGround } from './ground-picture.ts'
import type { Layer } from './layers.ts'
import { type LensInks, type Shown, type ThingInks, inksAt } from './lens-inks.ts'
import type { Picture, SoftLayers } from './picture.ts'
import type { ObstructionStrips } from './obstruction-strips.ts'
import { edgeTone, landTone, thingTone, wallTone, waterTone } from './tones.ts'

function lookOf(picture: Picture, inks: LensInks): PictureLook {
  const { height, horizon, ground } = picture
  const near: Paint = {
    kind: 'down',
    from: horizon,
    to: horizon + height * 0.55,
    stops: [
      { at: 0, colour: inks.fieldFar },
      { at: 1, colour: inks.fieldNear },
    ],
  }
  const lines: Paint = {
    kind: 'down',
    from: horizon + height * 0.01,
    to: horizon + height * 0.35,
    stops: [
      { at: 0, colour: translucent(inks.groundLine, 0) },
      { at: 1, colour: inks.groundLine },
    ],
  }
  return { picture, inks, near, lines, water: waterPaint(ground?.waterline ?? [], inks) }
}

/** The sea, ever paler toward its horizon: a paint in one, so that it shows no seams. */
function waterPaint(waterline: readonly { readonly y: number; readonly distance: number }[], inks: LensInks): Paint {
  const [from, bottom] = [waterline[0]?.y ?? 0, waterline.at(-1)?.y ?? 0]
  const whole = Math.max(1e-6, bottom - from)
  let before = 0
  const stops = waterline.map(({ y, distance }) => {
    before = Math.min(1, Math.max(before, (y - from) / whole))
    return { at: before, colour: waterTone(distance, inks) }
  })
  return { kind: 'down', from, to: from + whole, stops }
}

function levelGround(look: PictureLook): StrokeGroup[] {
  const { picture, near, lines, inks } = look
  const { width, height, horizon, groundLines } = picture
  const low = Math.min(height, Math.max(0, horizon))
  return sharp([
    filledStroke('ground', rect(0, low, width, height - low), near),
    drawnStroke('ground', groundLines, lines, 0.7),
    drawnStroke('ground', `M0 ${horizon.toFixed(2)}H${width}`, even(inks.horizonLine), 0.8),
  ])
}

function areaStrokes(groups: readonly SoftGround[], { inks, near, water }: PictureLook): StrokeGroup[] {
  const strokeOf = ({ kind, distance, path }: SoftGround['pieces'][number]): Stroke => {
    if (kind === 'near') return filledStroke('ground', path, near)
    if (kind === 'land') return filledStroke('ground', path, even(landTone(distance, inks)))
    if (kind === 'edge') return drawnStroke('ground', path, even(edgeTone(distance, inks)), 0.8, true)
    // Its own edge closes the seams between the bands of the sea.
    return { part: 'water', path, fill: water, line: { paint: water, width: SEAM, dashes: null, round: false } }
  }
  return groups.map(({ deviation, pieces }) => ({ deviation, within: null, strokes: pieces.map(strokeOf) }))
}

/** Trees and walls: plain, for nothing is known of them but their line and their height. */
function stripStrokes(of: keyof ObstructionStrips, { picture, inks }: PictureLook): StrokeGroup[] {
  const strips = picture.ground?.obstructions[of] ?? []
  return strips.map(({ deviation, distance, path }) => ({
    deviation,
    within: null,
    strokes: [filledStroke('obstructions', path, even(wallTone(distance, inks)))],
  }))
}

function cast(path: string, { picture, inks }: PictureLook): Stroke {
  return filledStroke('shadow', path, even(translucent(inks.cast, picture.sky === 'hazy' ? 0.55 : 1)))
}

/** What lies on the ground about the subject; lines and the landmark's shadow as far as the true ground before them shows. */
function onGround(look: PictureLook): StrokeGroup[] {
  const { picture, inks, lines } = look
  const { ground, landmarkBefore, groundLines, landmarkShadow, subjectShadow } = picture
  const within = (path: string, strokes: readonly Stroke[]): StrokeGroup[] =>
    sharp(strokes).map((group) => ({ ...group, within: path }))
  const cut =
    ground === null
      ? []
      : [
          ...within(ground.near, [drawnStroke('ground', groundLines, lines, 0.7)]),
          ...within(ground.front, [cast(landmarkBefore ? '' : landmarkShadow, look)]),
        ]
  const contact = even(translucent(inks.contact, subjectShadow === '' ? 1 : 0.4))
  return [...cut, ...sharp([filledStroke('shadow', picture.contact, contact), cast(subjectShadow, look)])]
}

function thingStrokes(
  part: 'landmark' | 'subject',
  soft: SoftLayers,
  thing: ThingInks,
  { inks }: PictureLook,
): StrokeGroup {
  const strokeOf = (layer: Layer): Stroke => {
    const tone = even(thingTone(layer, thing, inks))
    // A hair of the face's own tone closes the seams between neighbouring faces; rods have none, so that they keep their thickness.
    const line = layer.seam ? { paint: tone, width: SEAM, dashes: null, round: false } : null
    return { part, path: layer.path, fill: tone, line }
  }
  return { deviation: soft.deviation, within: null, strokes: soft.layers.map(strokeOf) }
}

/** Sky, sun and moon, ground, landmark and subject, in the order in which they cover each other, in the inks of its hour. */
export function strokesOf(picture: Picture, shown: Shown = 'screen'): Strokes {
  const inks = inksAt(picture.sunAltitude, shown)
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
