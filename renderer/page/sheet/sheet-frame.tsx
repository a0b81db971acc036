/** The picture through the lens on the sheet, with the chosen crop over it. */
import type { Crop } from '#core/frame/crop.ts'
import { CropGuide, cropRect } from '#renderer/view/lens-view/guides.tsx'
import { LensDrawing } from '#renderer/view/lens-picture/lens-drawing.tsx'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import type { SheetProps } from './sheet-props.ts'

/** Pixels across in which the picture is drawn, as the camera is held; it is printed as wide as the page lets it be. */
const WIDE = { lying: 420, upright: 240 } as const

function CropOver({ crop, width, height }: { readonly crop: Crop; readonly width: number; readonly height: number }) {
  return (
    <svg class="sheet-crop" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      <CropGuide crop={crop} rect={cropRect(crop, width, height)} width={width} height={height} />
    </svg>
  )
}

export function SheetFrame({ plan, assessment, crop }: Pick<SheetProps, 'plan' | 'assessment' | 'crop'>) {
  const { view } = assessment
  if (view === null)
    return (
      <figure class="sheet-frame sheet-frame-empty">
        <p>{sheetWords.notFramed}</p>
      </figure>
    )
  const width = WIDE[plan.spot.shot.orientation]
  return (
    <figure class="sheet-frame">
      <LensDrawing plan={plan} assessment={assessment} width={width} onPaper />
      {crop === null ? null : (
        <CropOver crop={crop} width={width} height={(width * view.frameHeight) / view.frameWidth} />
      )}
    </figure>
  )
}
