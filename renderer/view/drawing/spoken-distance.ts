/** How far the things on the board are, in the words by which they are named to those who don't see them: told, not watched. */
import { computed } from '@preact/signals'
import { metres } from '#renderer/text/figure.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { lensBoard } from '#renderer/state/plan/calm-board.ts'

function inWords(distance: number | undefined): string {
  return distance === undefined ? '' : metres(distance, settings.value.units)
}

/** From the lens to the subject; empty without a spot. */
export const spokenToSubject = computed(() => inWords(lensBoard.assessment.value?.toSubject.distance))

/** From the lens to the landmark; empty without one. */
export const spokenToLandmark = computed(() => inWords(lensBoard.assessment.value?.toLandmark?.distance))
