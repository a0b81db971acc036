/** The picture one works in: drawn in a worker where there can be one, else on the page by the SVG pen. */
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { type LensArtist, canvasInWorker, startArtist } from '#renderer/view/lens-picture/lens-artist.ts'
import { pictureOf } from '#renderer/view/lens-picture/picture.ts'
import { strokesOf } from '#renderer/view/lens-picture/strokes.ts'
import { StrokesDrawn } from '#renderer/view/lens-picture/svg-pen.tsx'
import { artistLost, artistsLost, drawnOnPage } from './artists-lost.ts'

export interface WorkingPictureProps {
  readonly plan: Plan
  readonly assessment: Assessment
  /** Of the frame, CSS pixels. */
  readonly width: number
  readonly height: number
  /** While something is dragged. */
  readonly moving: boolean
}

/** Device pixels a CSS pixel, followed over zooms and from screen to screen. */
function usePixelRatio(): number {
  const [ratio, setRatio] = useState(devicePixelRatio)
  useEffect(() => {
    const query = matchMedia(`(resolution: ${ratio}dppx)`)
    const change = (): void => setRatio(devicePixelRatio)
    query.addEventListener('change', change)
    return () => query.removeEventListener('change', change)
  }, [ratio])
  return ratio
}

function InWorker({ plan, width, height, moving }: WorkingPictureProps) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const artistRef = useRef<LensArtist | null>(null)
  const pixelRatio = usePixelRatio()
  useLayoutEffect(() => {
    const element = canvas.current
    if (element === null) return undefined
    const started = startArtist(element, {
      drawn: (parts) => {
        const named = parts.join(' ')
        // Written only when it is another: the page would be looked over again for each picture.
        if (element.dataset['parts'] !== named) element.dataset['parts'] = named
      },
      lost: artistLost,
    })
    artistRef.current = started
    return started.stop
  }, [])
  useLayoutEffect(() => artistRef.current?.draw(plan, { width, pixelRatio, moving }), [plan, width, pixelRatio, moving])
  return <canvas ref={canvas} class="lens-canvas" style={{ width: `${width}px`, height: `${height}px` }} />
}

function OnPage({ plan, assessment, width, height, moving }: WorkingPictureProps) {
  const strokes = useMemo(() => {
    const picture = pictureOf(plan, assessment, width, moving)
    return picture === null ? null : strokesOf(picture)
  }, [plan, assessment, width, moving])
  return (
    <svg class="lens-canvas" width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {strokes === null ? null : <StrokesDrawn strokes={strokes} />}
    </svg>
  )
}

export function WorkingPicture(props: WorkingPictureProps) {
  if (drawnOnPage.value || !canvasInWorker()) return <OnPage {...props} />
  // A canvas that was handed to a lost worker can't be had back.
  return <InWorker key={artistsLost.value} {...props} />
}
