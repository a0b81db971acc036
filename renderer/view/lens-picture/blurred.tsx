/** What is drawn out of focus: a group under one blur. */
import type { ComponentChildren } from 'preact'
import type { Picture } from './picture.ts'

interface SoftProps {
  readonly id: string
  readonly kind: 'landmark' | 'subject' | 'bodies' | 'ground' | 'screens'
  /** Units; 0 for sharp. */
  readonly deviation: number
  readonly picture: Pick<Picture, 'width' | 'height'>
  readonly children: ComponentChildren
}

/** Drawn with an even blur, as the lens softens what lies out of its focus. */
export function Soft({ id, kind, deviation, picture, children }: SoftProps) {
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
