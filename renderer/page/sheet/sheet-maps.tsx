/** The sheet's two plans: the whole map with the landmark on it, and the close plan of subject and camera. */
import { spotName } from '#renderer/text/names.ts'
import { StillClosePlan } from '#renderer/view/close-plan/still-close-plan.tsx'
import { SmallMap } from '#renderer/view/still-map/small-map.tsx'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { CLOSE_SIZE, MAP_SIZE } from './picture-sizes.ts'
import type { SheetProps } from './sheet-props.ts'

export function SheetMap({ plan, assessment, base, units, missing, onPainted }: SheetProps) {
  return (
    <figure class="sheet-map">
      <SmallMap
        plan={plan}
        assessment={assessment}
        {...MAP_SIZE[plan.spot.shot.orientation]}
        base={base}
        units={units}
        label={sheetWords.mapLabel(spotName(plan.spot))}
        onPainted={onPainted}
      />
      {missing > 0 ? <figcaption>{sheetWords.missingTiles(missing)}</figcaption> : null}
    </figure>
  )
}

export function SheetClosePlan({ plan, assessment, units }: Pick<SheetProps, 'plan' | 'assessment' | 'units'>) {
  return (
    <figure class="sheet-close">
      <StillClosePlan
        plan={plan}
        assessment={assessment}
        {...CLOSE_SIZE[plan.spot.shot.orientation]}
        units={units}
        label={sheetWords.closeLabel(spotName(plan.spot))}
      />
    </figure>
  )
}
