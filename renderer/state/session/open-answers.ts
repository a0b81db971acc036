/** Which answers stand open on the board, kept from one start to the next. */
import { type ReadonlySignal, computed, signal } from '@preact/signals'
import { changeSettings, settings } from '#renderer/state/library/settings.ts'

const roomSignal = signal(1)

/** Called by the column of answers alone: how many may stand open in it at once. */
export function tellRoomForAnswers(count: number): void {
  roomSignal.value = Math.max(1, count)
}

/** Their ids; where there is room for fewer than were opened, those opened last. */
export const openAnswers: ReadonlySignal<readonly string[]> = computed(() =>
  settings.value.openAnswers.slice(-roomSignal.value),
)

/** Opens an answer or closes it; the one opened longest ago gives way where there is no room for another. */
export function turnAnswer(id: string): void {
  const open = openAnswers.peek()
  const next = open.includes(id) ? open.filter((other) => other !== id) : [...open, id].slice(-roomSignal.peek())
  void changeSettings({ openAnswers: next })
}

/** Opens an answer that may be open already. */
export function openAnswer(id: string): void {
  if (!openAnswers.peek().includes(id)) turnAnswer(id)
}
