/** The ground on the sheet: its words in a row, and the profile in small. */
import { groundProfile } from '#core/plan/ground-profile.ts'
import { ProfileDrawing, exaggerationText, profilePicture } from '#renderer/view/profile/profile-drawing.tsx'
import { landmarkName } from '#renderer/text/names.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { type GroundProps, groundTexts, slopesText, waySentence } from './ground-texts.ts'
import { inARow, withoutStop } from './in-a-row.ts'

/** Pixels. */
const ROOM = { width: 340, height: 70, left: 44, right: 8, top: 6, bottom: 17 } as const

/** The ground from the lens to the landmark, seen from the side; nothing where it is not known. */
export function SheetProfile(props: GroundProps) {
  const { plan, assessment, units } = props
  const line = groundProfile(plan, assessment.levels)
  if (line === null) return null
  const picture = profilePicture(line, ROOM, units)
  return (
    <figure class="sheet-profile">
      <ProfileDrawing line={line} picture={picture} units={units} sentence={waySentence(props) ?? ''} cursor={null} />
      <figcaption>{sheetWords.profile(landmarkName(plan.landmark), exaggerationText(picture.exaggeration))}</figcaption>
    </figure>
  )
}

export function SheetGround(props: GroundProps) {
  const { standpoint, stop } = props.assessment.under
  // What somebody measured stays on the fullest sheet too.
  const measured = [standpoint, stop].some(
    ({ slope, aspect }) => slope.from === 'measured' || aspect.from === 'measured',
  )
  const [said, slopes] = [groundTexts(props), slopesText(props)]
  return (
    <div class="sheet-ground">
      <dl>
        <div>
          <dt>{groundWords.sheet.row}</dt>
          <dd>
            {inARow(slopes === null ? said : said.map(withoutStop))}
            {slopes === null ? null : <span class={measured ? undefined : 'sheet-slopes'}>{` · ${slopes}`}</span>}
          </dd>
        </div>
      </dl>
    </div>
  )
}
