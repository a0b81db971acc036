/** How ground is veiled: hatched where hidden, darker where in the shade, dotted where unknown. Brightness and pattern, no hue. */

export type VeilKind = 'hidden' | 'shade' | 'unknown'

interface Look {
  /** Laid over everything, and lines or dots on it. */
  readonly wash: string
  readonly mark: string
}

/** Shade is dark on dark paper too; dots there are lighter, since they tell of nothing seen. */
const LOOKS: Readonly<Record<'light' | 'dark', Readonly<Record<VeilKind, Look>>>> = {
  light: {
    hidden: { wash: 'rgb(35 38 43 / 0.17)', mark: 'rgb(35 38 43 / 0.26)' },
    shade: { wash: 'rgb(35 38 43 / 0.3)', mark: 'transparent' },
    unknown: { wash: 'rgb(35 38 43 / 0.05)', mark: 'rgb(35 38 43 / 0.42)' },
  },
  dark: {
    hidden: { wash: 'rgb(0 0 0 / 0.26)', mark: 'rgb(0 0 0 / 0.42)' },
    shade: { wash: 'rgb(0 0 0 / 0.42)', mark: 'transparent' },
    unknown: { wash: 'rgb(0 0 0 / 0.1)', mark: 'rgb(236 230 214 / 0.36)' },
  },
}

/** Pixels from line to line along the edge, and from dot to dot. */
const HATCH = 7
const DOTS = 9

/** A fill that repeats; it stays where it is on the map while the canvas moves over it. */
export function veilFill(
  context: CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D,
  kind: VeilKind,
  theme: 'light' | 'dark',
  pixelRatio: number,
): CanvasPattern | string {
  const look = LOOKS[theme][kind]
  if (kind === 'shade') return look.wash
  const side = kind === 'hidden' ? HATCH : DOTS
  const tile = new OffscreenCanvas(Math.round(side * pixelRatio), Math.round(side * pixelRatio))
  const pen = tile.getContext('2d')
  if (pen === null) return look.wash
  const scale = tile.width / side
  pen.scale(scale, scale)
  pen.fillStyle = look.wash
  pen.fillRect(0, 0, side, side)
  if (kind === 'hidden') hatch(pen, look.mark)
  else dot(pen, look.mark)
  const fill = context.createPattern(tile, 'repeat')
  fill?.setTransform(new DOMMatrix().scale(1 / scale))
  return fill ?? look.wash
}

/** Lines that meet those of the neighbouring tiles. */
function hatch(pen: OffscreenCanvasRenderingContext2D, colour: string): void {
  pen.strokeStyle = colour
  pen.lineWidth = 1.1
  pen.beginPath()
  for (const off of [-HATCH, 0, HATCH]) {
    pen.moveTo(off - 1, HATCH + 1)
    pen.lineTo(off + HATCH + 1, -1)
  }
  pen.stroke()
}

/** Two dots, the second midway between the first and its neighbours. */
function dot(pen: OffscreenCanvasRenderingContext2D, colour: string): void {
  pen.fillStyle = colour
  for (const at of [DOTS / 4, (3 * DOTS) / 4]) {
    pen.beginPath()
    pen.arc(at, at, 0.75, 0, 2 * Math.PI)
    pen.fill()
  }
}
