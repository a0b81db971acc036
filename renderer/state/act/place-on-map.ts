/** The next press on the map places a thing of the spot. */
import { startPlacing, backToBoard } from '#renderer/state/session/navigation.ts'

export function placeOnMap(what: 'subject' | 'standpoint' | 'parking'): void {
  backToBoard()
  startPlacing({ what })
}
