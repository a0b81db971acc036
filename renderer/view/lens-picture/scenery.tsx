/** The scenery of the frame as SVG: what lies in the picture, in its order, with its softness and the hour's darkness. */
import { useId } from 'preact/hooks'
import { GroundAreas, WaterPaint, haze } from './ground-areas.tsx'
import type { Layer } from './layers.ts'
import type { Picture } from './picture.ts'
import type { ScreenStrips } from './screen-strips.ts'
import type { SkyBody } from './sky-bodies.ts'
import { Soft } from './blurred.tsx'

/** Sky, sun and moon, ground, landmark and subject, in the order in which they cover each other. */
export function Scenery({ picture }: { readonly picture: Picture }) {
  const id = useId()
  const { width, height, horizon, ground, landmark } = picture
  const shaded = picture.subjectShadow === '' ? '' : ' lens-shaded'
  const landmarkGroup =
    landmark === null ? null : (
      <Soft id={`${id}-l`} kind="landmark" deviation={landmark.deviation} picture={picture}>
        {landmark.layers.map(path)}
      </Soft>
    )
  const subjectGroup = <Subject id={id} picture={picture} />
  const [farther, nearer] = picture.landmarkBefore ? [subjectGroup, landmarkGroup] : [landmarkGroup, subjectGroup]
  const onGround = <OnGround id={id} picture={picture} />
  const areas = { picture, near: `url(#${id}-ground)`, water: `url(#${id}-water)` }
  return (
    <g
      class={`lens-scene lens-sky-${picture.sky}${shaded}`}
      style={{ '--dusk': `${Math.round(picture.darkness * 100)}%` }}
    >
      <SceneryPaints id={id} height={height} horizon={horizon} />
      {ground === null ? null : <WaterPaint id={`${id}-water`} ground={ground} />}
      <clipPath id={`${id}-frame`}>
        <rect width={width} height={height} />
      </clipPath>
      <g clip-path={`url(#${id}-frame)`}>
        <rect width={width} height={height} fill={`url(#${id}-sky)`} />
        <SkyBodies id={id} picture={picture} />
        {ground === null ? (
          <LevelGround id={id} picture={picture} />
        ) : (
          <GroundAreas {...areas} id={`${id}-f`} groups={ground.behind} />
        )}
        <Cast path={picture.landmarkShadow} />
        {picture.landmarkBefore ? onGround : null}
        <Strips id={`${id}-sf`} picture={picture} of="behind" />
        {farther}
        {ground === null ? null : <GroundAreas {...areas} id={`${id}-m`} groups={ground.between} />}
        {picture.landmarkBefore ? null : onGround}
        <Strips id={`${id}-sm`} picture={picture} of="between" />
        {nearer}
        {ground === null ? null : <GroundAreas {...areas} id={`${id}-n`} groups={ground.before} />}
        <Strips id={`${id}-sn`} picture={picture} of="before" />
      </g>
    </g>
  )
}

interface PartProps {
  readonly id: string
  readonly picture: Picture
}

/** Trees and walls: plain, for nothing is known of them but their line and their height. */
function Strips({ id, picture, of }: PartProps & { readonly of: keyof ScreenStrips }) {
  const strips = picture.ground?.screens[of] ?? []
  return (
    <>
      {strips.map(({ deviation, distance, path: strip }, index) => (
        <Soft key={index} id={`${id}${index}`} kind="screens" deviation={deviation} picture={picture}>
          <path class="lens-screen" style={haze(distance)} d={strip} />
        </Soft>
      ))}
    </>
  )
}

function LevelGround({ id, picture }: PartProps) {
  const { width, height, horizon } = picture
  const low = Math.min(height, Math.max(0, horizon))
  return (
    <>
      <rect y={low} width={width} height={height - low} fill={`url(#${id}-ground)`} />
      <GroundLines id={id} picture={picture} />
      <path class="lens-horizon" d={`M0 ${horizon.toFixed(2)}H${width}`} />
    </>
  )
}

function GroundLines({ id, picture }: PartProps) {
  return <path class="lens-ground-lines" stroke={`url(#${id}-lines)`} d={picture.groundLines} />
}

function Cast({ path: shadow }: { readonly path: string }) {
  return shadow === '' ? null : <path class="lens-cast" d={shadow} />
}

/** What lies on the ground about the subject; lines and the landmark's shadow as far as the true ground before them shows. */
function OnGround({ id, picture }: PartProps) {
  const { ground } = picture
  return (
    <>
      {ground === null ? null : (
        <>
          <clipPath id={`${id}-near`}>
            <path d={ground.near} />
          </clipPath>
          <g clip-path={`url(#${id}-near)`}>
            <GroundLines id={id} picture={picture} />
          </g>
          <clipPath id={`${id}-front`}>
            <path d={ground.front} />
          </clipPath>
          <g clip-path={`url(#${id}-front)`}>
            <Cast path={picture.landmarkBefore ? '' : picture.landmarkShadow} />
          </g>
        </>
      )}
      <path class="lens-contact" d={picture.contact} />
      <Cast path={picture.subjectShadow} />
    </>
  )
}

function Subject({ id, picture }: PartProps) {
  return (
    <>
      {picture.subject.map(({ deviation, layers }, index) => (
        <Soft key={index} id={`${id}-s${index}`} kind="subject" deviation={deviation} picture={picture}>
          {layers.map(path)}
        </Soft>
      ))}
    </>
  )
}

interface PaintProps {
  readonly id: string
  readonly height: number
  readonly horizon: number
}

function SceneryPaints({ id, height, horizon }: PaintProps) {
  const upright = { gradientUnits: 'userSpaceOnUse', x1: '0', x2: '0' } as const
  return (
    <defs>
      <linearGradient id={`${id}-sky`} {...upright} y1={horizon - height} y2={horizon}>
        <stop offset="0" class="lens-sky-top" />
        <stop offset="1" class="lens-sky-low" />
      </linearGradient>
      <linearGradient id={`${id}-ground`} {...upright} y1={horizon} y2={horizon + height * 0.55}>
        <stop offset="0" class="lens-ground-far" />
        <stop offset="1" class="lens-ground-near" />
      </linearGradient>
      <linearGradient id={`${id}-lines`} {...upright} y1={horizon + height * 0.01} y2={horizon + height * 0.35}>
        <stop offset="0" class="lens-line-far" />
        <stop offset="1" class="lens-line-near" />
      </linearGradient>
    </defs>
  )
}

/** The moon before the sun, as it is. */
function SkyBodies({ id, picture }: { readonly id: string; readonly picture: Picture }) {
  const { sun, moon, height } = picture
  if (sun === null && moon === null) return null
  return (
    <>
      {sun === null ? null : <Glow id={`${id}-g`} sun={sun} height={height} />}
      <Soft id={`${id}-b`} kind="bodies" deviation={picture.skyDeviation} picture={picture}>
        {sun === null ? null : <path class="lens-sun" d={sun.disc} />}
        {moon === null ? null : (
          <>
            <path class="lens-moon-rest" d={moon.disc} />
            <path class="lens-moon" d={moon.lit} />
          </>
        )}
      </Soft>
    </>
  )
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

/** The sky is brightest about the sun: a wide faint light that also leads the eye to so small a disc. */
function Glow({ id, sun, height }: { readonly id: string; readonly sun: SkyBody; readonly height: number }) {
  const reach = Math.max(sun.radius * 8, height * 0.4)
  return (
    <>
      <radialGradient id={id} class="lens-glow" gradientUnits="userSpaceOnUse" cx={sun.x} cy={sun.y} r={reach}>
        {GLOW.map(([offset, share]) => (
          <stop key={offset} offset={offset} style={{ '--share': share }} />
        ))}
      </radialGradient>
      <circle cx={sun.x} cy={sun.y} r={reach} fill={`url(#${id})`} />
    </>
  )
}

function path(layer: Layer, index: number) {
  return <path key={index} class={layer.tone} d={layer.path} />
}
