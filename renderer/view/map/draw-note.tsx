/** The note over the map while something is drawn or taken over: how it is done, how far it is, and what is wrong. */
import { FEWEST_POINTS } from '#core/record/drawn-ground.ts'
import { drawing, stopDrawing, takingAs } from '#renderer/state/session/drawn-ground.ts'
import type { Drawing } from '#renderer/state/session/drawing.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { sizeText } from '#renderer/text/drawn-text.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { stoppingWords as say } from '#renderer/words/en-stopping.ts'
import { crossHairOn } from '#renderer/view/hand/cross-hair.ts'
import { finishDrawing, takeBackPoint } from '#renderer/view/hand/draw-shape.ts'
import { tookNothing } from '#renderer/view/hand/take-way.ts'

export function DrawNote() {
  const now = drawing.value
  if (now !== null) return <DrawingNote now={now} />
  return takingAs.value === null ? null : <TakingNote />
}

function Refusal({ sentence }: { readonly sentence: string | null }) {
  return (
    <p class="draw-refusal" role="alert">
      {sentence === null ? null : (
        <>
          <Icon name="warning" /> {sentence}
        </>
      )}
    </p>
  )
}

function DrawingNote({ now }: { readonly now: Drawing }) {
  const { form, points, refusal } = now
  const none = points.length === 0
  const size = points.length < FEWEST_POINTS[form] ? null : sizeText({ form, points }, settings.value.units)
  return (
    <div class="map-over map-note placing-note draw-note">
      <div>
        <p role="status">{none ? say.begin[form] : say.sofar(points.length, size)}</p>
        <p class="hint">{crossHairOn.value ? say.keysHint : say.endHint[form]}</p>
        <Refusal sentence={refusal === null ? null : say.faults[refusal][form]} />
      </div>
      <span class="draw-acts">
        <button type="button" disabled={none} onClick={finishDrawing}>
          {say.finish}
        </button>
        <button type="button" disabled={none} onClick={takeBackPoint}>
          {say.takeBack}
        </button>
        <button type="button" onClick={stopDrawing}>
          {say.giveUp}
        </button>
      </span>
    </div>
  )
}

function TakingNote() {
  const sort = takingAs.value ?? 'stopping'
  return (
    <div class="map-over map-note placing-note draw-note">
      <div>
        <p role="status">{say.pressWay[sort]}</p>
        {crossHairOn.value ? <p class="hint">{say.keysTake}</p> : null}
        <Refusal sentence={tookNothing.value ? say.nothingThere : null} />
      </div>
      <span class="draw-acts">
        <button type="button" onClick={stopDrawing}>
          {say.enough}
        </button>
      </span>
    </div>
  )
}
