/** Over the map: that an arrangement is tried out, with the ways to keep it and to go back. */
import { homeSpot, tryOut } from '#renderer/state/library/library.ts'
import { spotName } from '#renderer/text/names.ts'
import { keepArrangement, leaveTryOut } from '#renderer/state/act/try-out.ts'
import { scanWords } from '#renderer/words/en-scan.ts'

const { tryOut: say } = scanWords

export function TryOutNote() {
  const tried = tryOut.value
  if (tried === null) return null
  const home = homeSpot.value
  return (
    <div class="map-over map-note try-out-note" role="status">
      <span>{say.note(spotName(tried.spot))}</span>
      <button type="button" onClick={() => void keepArrangement(tried.spot)}>
        {say.keep}
      </button>
      <button type="button" onClick={() => void leaveTryOut()}>
        {home === null ? say.leave : say.leaveTo(spotName(home).slice(0, 60))}
      </button>
    </div>
  )
}
