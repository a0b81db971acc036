/** Keys and menu commands: what each does on the page, whatever page is open. */
import { COMMANDS, type CommandId, commandFor } from '#app/commands.ts'
import { inShell, onMenuCommand } from '#renderer/host/host.ts'
import { settleUnfinished } from '#renderer/state/library/unfinished.ts'
import { backToBoard, page } from '#renderer/state/session/navigation.ts'

export function onMac(): boolean {
  return navigator.platform.startsWith('Mac')
}

/** Takes what is typed in a field, as leaving it would: a command may put another page in its place. */
function finishTyping(): void {
  const { activeElement } = document
  if (activeElement instanceof HTMLElement && activeElement.dataset['draft'] !== undefined) activeElement.blur()
}

/** While something is being typed, undo is the field's own. */
function typing(event: Event): boolean {
  return event.target instanceof HTMLElement && event.target.dataset['draft'] !== undefined
}

/**
 * Listens to keys and, in the shell, to the menu. The shell's menu answers the accelerators itself, so there the keys are
 * left to it. Returns the way to stop.
 */
export function followCommands(run: (id: CommandId) => void): () => void {
  const runNow = (id: CommandId): void => {
    finishTyping()
    settleUnfinished()
    run(id)
  }
  const onKey = (event: KeyboardEvent): void => {
    if (event.defaultPrevented || inShell()) return
    const id = commandFor(event, onMac())
    if (id === null || ((id === 'undo' || id === 'redo') && typing(event))) return
    event.preventDefault()
    if (!event.repeat || id === 'undo' || id === 'redo') runNow(id)
  }
  addEventListener('keydown', onKey)
  onMenuCommand((command) => {
    const known = COMMANDS.find((candidate) => candidate.id === command)
    if (known !== undefined) runNow(known.id)
  })
  return () => removeEventListener('keydown', onKey)
}

/** A list closes by Escape without telling whether it was open. A field whose text is being typed, a menu or a drag takes the key before it comes here. */
function isForField(event: KeyboardEvent): boolean {
  return event.isComposing || (event.target instanceof HTMLElement && event.target.matches('select'))
}

/** Escape leads back to the board from every page over it, unless something uses it for itself. Returns the way to stop. */
export function followEscape(): () => void {
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return
    // Held down to give up what was typed, it goes no farther than that.
    if (event.defaultPrevented || event.repeat || page.peek() === 'board' || isForField(event)) return
    event.preventDefault()
    finishTyping()
    settleUnfinished()
    backToBoard()
  }
  addEventListener('keydown', onKey)
  return () => removeEventListener('keydown', onKey)
}
