/** The SVG pen: strokes for paper, thumbs and files, crisp at any size. */
import { useId } from 'preact/hooks'
import { colourText } from './colour.ts'
import type { Paint, Stroke, StrokeGroup, Strokes } from './stroke.ts'

/** Paints that change over the picture, each with the name under which it is defined. */
type Named = ReadonlyMap<Paint, string>

function namedPaints({ groups }: Strokes, id: string): Named {
  const names = new Map<Paint, string>()
  for (const { fill, line } of groups.flatMap(({ strokes }) => strokes)) {
    for (const paint of [fill, line?.paint ?? null])
      if (paint !== null && paint.kind !== 'even' && !names.has(paint)) names.set(paint, `${id}-p${names.size}`)
  }
  return names
}

function paintText(paint: Paint | null, named: Named): string {
  if (paint === null) return 'none'
  return paint.kind === 'even' ? colourText(paint.colour) : `url(#${named.get(paint)})`
}

function Paints({ named }: { readonly named: Named }) {
  return (
    <defs>
      {[...named].map(([paint, name]) => {
        if (paint.kind === 'even') return null
        const stops = paint.stops.map(({ at, colour }, index) => (
          <stop key={index} offset={at} stop-color={colourText({ ...colour, cover: 1 })} stop-opacity={colour.cover} />
        ))
        return paint.kind === 'down' ? (
          <linearGradient
            key={name}
            id={name}
            gradientUnits="userSpaceOnUse"
            x1="0"
            x2="0"
            y1={paint.from}
            y2={paint.to}
          >
            {stops}
          </linearGradient>
        ) : (
          <radialGradient
            key={name}
            id={name}
            gradientUnits="userSpaceOnUse"
            cx={paint.x}
            cy={paint.y}
            r={paint.radius}
          >
            {stops}
          </radialGradient>
        )
      })}
    </defs>
  )
}

function One({ stroke, named }: { readonly stroke: Stroke; readonly named: Named }) {
  const { part, path, fill, line } = stroke
  const lined =
    line === null
      ? {}
      : {
          stroke: paintText(line.paint, named),
          'stroke-width': line.width,
          ...(line.dashes === null ? {} : { 'stroke-dasharray': line.dashes.join(' ') }),
          ...(line.round ? { 'stroke-linecap': 'round' as const } : {}),
        }
  return <path data-part={part} d={path} fill={paintText(fill, named)} {...lined} />
}

interface GroupProps {
  readonly group: StrokeGroup
  readonly name: string
  readonly size: Pick<Strokes, 'width' | 'height'>
  readonly named: Named
}

/** An even blur in the colours as they are told, as the canvas has it, so that both pens draw one picture. */
function Group({ group, name, size, named }: GroupProps) {
  const { deviation, within, strokes } = group
  const drawn = strokes.map((stroke, index) => <One key={index} stroke={stroke} named={named} />)
  if (deviation === 0 && within === null) return <>{drawn}</>
  const reach = deviation * 3
  return (
    <>
      {within === null ? null : (
        <clipPath id={`${name}-c`}>
          <path d={within} />
        </clipPath>
      )}
      {deviation === 0 ? null : (
        <filter
          id={`${name}-b`}
          filterUnits="userSpaceOnUse"
          color-interpolation-filters="sRGB"
          x={-reach}
          y={-reach}
          width={size.width + reach * 2}
          height={size.height + reach * 2}
        >
          <feGaussianBlur stdDeviation={deviation.toFixed(2)} />
        </filter>
      )}
      <g
        {...(within === null ? {} : { 'clip-path': `url(#${name}-c)` })}
        {...(deviation === 0 ? {} : { filter: `url(#${name}-b)` })}
      >
        {drawn}
      </g>
    </>
  )
}

export function StrokesDrawn({ strokes }: { readonly strokes: Strokes }) {
  const id = useId()
  const { width, height, groups } = strokes
  const named = namedPaints(strokes, id)
  return (
    <g class="lens-scene">
      <clipPath id={`${id}-frame`}>
        <rect width={width} height={height} />
      </clipPath>
      <Paints named={named} />
      <g clip-path={`url(#${id}-frame)`}>
        {groups.map((group, index) => (
          <Group key={index} group={group} name={`${id}-${index}`} size={strokes} named={named} />
        ))}
      </g>
    </g>
  )
}
