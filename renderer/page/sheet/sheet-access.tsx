/** Getting there, whom to ask, the notes, and a code for a telephone to read. */
import type { Plan } from '#core/plan/plan.ts'
import { qrPlace } from '#core/sheet/content.ts'
import { telephonePieces } from '#core/sheet/telephone.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { accessText, permissionTexts } from './access-texts.ts'
import { inARow } from './in-a-row.ts'
import { LINK_ATTRIBUTE, PhoneLink } from './link.tsx'
import { SheetPart } from './sheet-part.tsx'
import { QrCode } from './qr-code.tsx'

/** The place one goes to first, for a telephone to read. */
function Goal({ plan }: { readonly plan: Plan }) {
  const goal = qrPlace(plan)
  const role = sheetWords.roles[goal.role]
  return (
    <figure class="sheet-qr">
      <QrCode text={goal.geoUri} label={sheetWords.qrLabel(role)} />
      <figcaption>
        {sheetWords.qr(role)}
        <br />
        <code>{goal.geoUri}</code>
      </figcaption>
    </figure>
  )
}

function Permission({ plan }: { readonly plan: Plan }) {
  const pieces = telephonePieces(inARow(permissionTexts(plan.spot.permission)))
  const numbers = [...new Map(pieces.flatMap(({ text, dialled }) => (dialled === null ? [] : [[dialled, text]])))]
  return (
    <>
      <p class="sheet-permission">
        {pieces.map(({ text, dialled }) =>
          dialled === null ? (
            text
          ) : (
            <span key={dialled} class="sheet-number" {...{ [LINK_ATTRIBUTE]: `tel:${dialled}` }}>
              {text}
            </span>
          ),
        )}
      </p>
      {numbers.length === 0 ? null : (
        <p class="phone-links">
          {numbers.map(([number, text]) => (
            <PhoneLink key={number} to={`tel:${number}`} text={sheetWords.phone.call(text)} />
          ))}
        </p>
      )}
    </>
  )
}

export function SheetAccess({ plan }: { readonly plan: Plan }) {
  const { notes, access } = plan.spot
  return (
    <SheetPart title={sheetWords.access} name="access">
      <Goal plan={plan} />
      <p>{accessText(access)}</p>
      <h2>{sheetWords.permission}</h2>
      <Permission plan={plan} />
      {notes.trim() === '' ? null : <h2>{sheetWords.notes}</h2>}
      {notes.trim() === '' ? null : <p class="sheet-notes">{notes}</p>}
    </SheetPart>
  )
}
