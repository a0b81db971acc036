/** What is damaged in the library while it is open: told with the way to the backups, and whether they are to be shown. */
import { type ReadonlySignal, signal } from '@preact/signals'
import { words } from '#renderer/words/en.ts'
import type { Fault } from '#core/result.ts'
import { tell } from './notices.ts'

const backupsWantedSignal = signal<string | null>(null)
/** Why the backups are shown in the place of the page; null while they are not. */
export const backupsWanted: ReadonlySignal<string | null> = backupsWantedSignal

export function showBackups(why: string): void {
  backupsWantedSignal.value = why
}

export function leaveBackups(): void {
  backupsWantedSignal.value = null
}

/** Tells a fault; one of damage with the backups at hand. */
export function tellFault(fault: Fault): void {
  if (fault.reason === 'damaged') tellDamage(fault.message)
  else tell('fault', fault.message)
}

export function tellDamage(message: string): void {
  const label = words.board.trouble.showBackups
  tell('fault', message, {
    label,
    run: () => showBackups(message),
  })
}
