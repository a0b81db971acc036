/** Which of the spots picked for side by side are on the shelf: one that an undo has taken off counts again once it is back. */
import { spots } from '#renderer/state/library/library.ts'
import { picked } from './navigation.ts'
import { steady } from '#renderer/job/steady.ts'

/** In the order in which they were picked. */
export const pickedHere = steady(() => picked.value.filter((id) => spots.value.some((spot) => spot.id === id)))
