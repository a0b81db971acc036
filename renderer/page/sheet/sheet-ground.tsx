/** The ground on the sheet: its words in a row, and the profile in small. */
import { groundProfile } from '#core/plan/ground-profile.ts'
import { ProfileDrawing, exaggerationText, profilePicture } from '#renderer/view/profile/profile-drawing.tsx'
import { groundWords } from '#renderer/words/en-ground.ts'
import { type GroundProps, groundTexts, slopesText, waySentence } from './ground-texts.ts'
import { inARow, withoutStop } from './in-a-row.ts'

/** In the row of its words, and, where the sheet is so full that its pictures are small, beside them. */
const ROOMS = {
  row: { width: 340, height: 66, left: 34, right: 8, top: 4, bottom: 13 },
  picture: { width: 266, height: 130, left: 36, right: 8, top: 6, bottom: 21 },
} as const

export function SheetProfile(props: GroundProps & { readonly at: keyof typeof ROOMS }) {
  const { plan, assessment, units, at } = props
  const line = groundProfile(plan, assessment.levels)
  if (line === null) return null
  const picture = profilePicture(line, ROOMS[at], units)
  return (
    <figure class={`sheet-profile sheet-profile-${at}`}>
      <ProfileDrawing line={line} picture={picture} units={units} sentence={waySentence(props) ?? ''} cursor={null} />
      <figcaption>{exaggerationText(picture.exaggeration)}</figcaption>
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
      <SheetProfile {...props} at="row" />
    </div>
  )
}
