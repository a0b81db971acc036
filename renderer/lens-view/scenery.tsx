/** The scenery of the frame as SVG: what lies in the picture, in its order, with its softness and the hour's darkness. */
import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import type { Layer } from './layers.ts'
import type { Picture } from './picture.ts'
import type { SkyBody } from './sky-bodies.ts'

/** Sky, sun and moon, ground, landmark and subject, in the order in which they cover each other. */
export function Scenery({ picture }: { readonly picture: Picture }) {
  const id = useId()
  const { width, height, horizon, landmark } = picture
  const low = Math.min(height, Math.max(0, horizon))
  const shaded = picture.subjectShadow === '' ? '' : ' lens-shaded'
  const landmarkGroup =
    landmark === null ? null : (
      <Soft id={`${id}-l`} kind="landmark" deviation={landmark.deviation} picture={picture}>
        {landmark.layers.map(path)}
      </Soft>
    )
  return (
    <g
      class={`lens-scene lens-sky-${picture.sky}${shaded}`}
      style={{ '--dusk': `${Math.round(picture.darkness * 100)}%` }}
    >
      <SceneryPaints id={id} height={height} horizon={horizon} />
      <clipPath id={`${id}-frame`}>
        <rect width={width} height={height} />
      </clipPath>
      <g clip-path={`url(#${id}-frame)`}>
        <rect width={width} height={height} fill={`url(#${id}-sky)`} />
        <SkyBodies id={id} picture={picture} />
        <rect y={low} width={width} height={height - low} fill={`url(#${id}-ground)`} />
        <path class="lens-ground-lines" stroke={`url(#${id}-lines)`} d={picture.groundLines} />
        <path class="lens-horizon" d={`M0 ${horizon.toFixed(2)}H${width}`} />
        {picture.landmarkShadow === '' ? null : <path class="lens-cast" d={picture.landmarkShadow} />}
        {picture.landmarkBefore ? null : landmarkGroup}
        <path class="lens-contact" d={picture.contact} />
        {picture.subjectShadow === '' ? null : <path class="lens-cast" d={picture.subjectShadow} />}
        {picture.subject.map(({ deviation, layers }, index) => (
          <Soft key={index} id={`${id}-s${index}`} kind="subject" deviation={deviation} picture={picture}>
            {layers.map(path)}
          </Soft>
        ))}
        {picture.landmarkBefore ? landmarkGroup : null}
      </g>
    </g>
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

interface SoftProps {
  readonly id: string
  readonly kind: 'landmark' | 'subject' | 'bodies'
  /** Units; 0 for sharp. */
  readonly deviation: number
  readonly picture: Picture
  readonly children: ComponentChildren
}

function Soft({ id, kind, deviation, picture, children }: SoftProps) {
  if (deviation === 0) return <g class={`lens-${kind}`}>{children}</g>
  const reach = deviation * 3
  return (
    <>
      <filter
        id={id}
        filterUnits="userSpaceOnUse"
        color-interpolation-filters="linearRGB"
        x={-reach}
        y={-reach}
        width={picture.width + reach * 2}
        height={picture.height + reach * 2}
      >
        <feGaussianBlur stdDeviation={deviation.toFixed(2)} />
      </filter>
      <g class={`lens-${kind}`} filter={`url(#${id})`}>
        {children}
      </g>
    </>
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
