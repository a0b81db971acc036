/** The frame through the lens as an SVG drawing: for the working view, the thumb, side by side and the sheet alike. */
import { useId, useMemo } from 'preact/hooks'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { lensViewWords } from '#renderer/words/en-lens-view.ts'
import type { Layer } from './layers.ts'
import { type Picture, type SoftLayers, pictureOf } from './picture.ts'
import { cannotBeSeen, describe } from './sentence.ts'
import '#renderer/style/lens-view.css'

interface LensDrawingProps {
  readonly plan: Plan
  readonly assessment: Assessment
  /** The frame's width in CSS pixels; the height follows from the frame as held. */
  readonly width: number
  /** True where words beside the drawing say the same, as in a list. */
  readonly decorative?: boolean
}

/** Draws whatever the plan's state; where nothing can be framed the frame carries a sentence. */
export function LensDrawing({ plan, assessment, width, decorative = false }: LensDrawingProps) {
  const picture = useMemo(() => pictureOf(plan, assessment, width), [plan, assessment, width])
  if (picture === null) return <EmptyFrame plan={plan} assessment={assessment} width={width} decorative={decorative} />
  const said = decorative
    ? ({ 'aria-hidden': 'true' } as const)
    : ({ role: 'img', 'aria-label': describe(plan, assessment) } as const)
  return (
    <svg
      class="lens-drawing"
      width={width}
      height={picture.height}
      viewBox={`0 0 ${width} ${picture.height}`}
      focusable="false"
      {...said}
    >
      <Scenery picture={picture} />
    </svg>
  )
}

/** What fills the frame when there is no picture: paper, and why. */
export function EmptyFrame({ plan, assessment, width, decorative = false }: LensDrawingProps) {
  const { sensorWidth, sensorHeight } = plan.shoot.bag.camera
  const ratio = Math.min(sensorWidth, sensorHeight) / Math.max(sensorWidth, sensorHeight)
  const height = plan.spot.shot.orientation === 'lying' ? width * ratio : width / ratio
  return (
    <span class="lens-empty" style={{ width: `${width}px`, height: `${height}px` }}>
      {decorative || width < 120 ? (
        <span aria-hidden="true">{lensViewWords.nothing}</span>
      ) : (
        <span>{cannotBeSeen(plan, assessment)}</span>
      )}
    </span>
  )
}

/** Sky, ground, landmark and subject, in the order in which they cover each other. */
export function Scenery({ picture }: { readonly picture: Picture }) {
  const id = useId()
  const { width, height, horizon, landmark } = picture
  const low = Math.min(height, Math.max(0, horizon))
  const landmarkGroup =
    landmark === null ? null : <Soft id={`${id}-l`} kind="landmark" soft={landmark} picture={picture} />
  return (
    <>
      <defs>
        <linearGradient
          id={`${id}-sky`}
          gradientUnits="userSpaceOnUse"
          x1="0"
          x2="0"
          y1={horizon - height}
          y2={horizon}
        >
          <stop offset="0" class="lens-sky-top" />
          <stop offset="1" class="lens-sky-low" />
        </linearGradient>
        <linearGradient
          id={`${id}-ground`}
          gradientUnits="userSpaceOnUse"
          x1="0"
          x2="0"
          y1={horizon}
          y2={horizon + height * 0.55}
        >
          <stop offset="0" class="lens-ground-far" />
          <stop offset="1" class="lens-ground-near" />
        </linearGradient>
        <linearGradient
          id={`${id}-lines`}
          gradientUnits="userSpaceOnUse"
          x1="0"
          x2="0"
          y1={horizon + height * 0.01}
          y2={horizon + height * 0.35}
        >
          <stop offset="0" class="lens-line-far" />
          <stop offset="1" class="lens-line-near" />
        </linearGradient>
        <clipPath id={`${id}-frame`}>
          <rect width={width} height={height} />
        </clipPath>
      </defs>
      <g clip-path={`url(#${id}-frame)`}>
        <rect width={width} height={height} fill={`url(#${id}-sky)`} />
        <rect y={low} width={width} height={height - low} fill={`url(#${id}-ground)`} />
        <path class="lens-ground-lines" stroke={`url(#${id}-lines)`} d={picture.groundLines} />
        <path class="lens-horizon" d={`M0 ${horizon.toFixed(2)}H${width}`} />
        {picture.landmarkBefore ? null : landmarkGroup}
        <path class="lens-contact" d={picture.contact} />
        {picture.subject.map((soft, index) => (
          <Soft key={index} id={`${id}-s${index}`} kind="subject" soft={soft} picture={picture} />
        ))}
        {picture.landmarkBefore ? landmarkGroup : null}
      </g>
    </>
  )
}

interface SoftProps {
  readonly id: string
  readonly kind: 'landmark' | 'subject'
  readonly soft: SoftLayers
  readonly picture: Picture
}

function Soft({ id, kind, soft, picture }: SoftProps) {
  const { deviation, layers } = soft
  if (deviation === 0) return <g class={`lens-${kind}`}>{layers.map(path)}</g>
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
        {layers.map(path)}
      </g>
    </>
  )
}

function path(layer: Layer, index: number) {
  return <path key={index} class={`tone-${layer.tone}`} d={layer.path} />
}
