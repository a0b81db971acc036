/** The one table of menu commands and their keys: the shell's menu is built from it, the page's key handler reads it. */

export type MenuName = 'Shoot' | 'Edit' | 'Spot' | 'View' | 'Help'

export interface Command {
  readonly id: string
  readonly label: string
  /** `CmdOrCtrl` is the command key on macOS and Control elsewhere. A browser keeps Ctrl+N, T and W to itself. */
  readonly accelerator: string | null
  readonly menu: MenuName
}

export const COMMANDS = [
  { id: 'new-shoot', label: 'New shoot', accelerator: 'CmdOrCtrl+B', menu: 'Shoot' },
  { id: 'edit-shoot', label: 'Subject and bag', accelerator: 'CmdOrCtrl+E', menu: 'Shoot' },
  { id: 'open-file', label: 'Open a shoot file…', accelerator: 'CmdOrCtrl+O', menu: 'Shoot' },
  { id: 'save-file', label: 'Save the shoot as a file…', accelerator: 'CmdOrCtrl+S', menu: 'Shoot' },
  { id: 'print-sheet', label: 'Location sheet', accelerator: 'CmdOrCtrl+P', menu: 'Shoot' },
  { id: 'undo', label: 'Undo', accelerator: 'CmdOrCtrl+Z', menu: 'Edit' },
  { id: 'redo', label: 'Redo', accelerator: 'Shift+CmdOrCtrl+Z', menu: 'Edit' },
  { id: 'find', label: 'Find spots', accelerator: 'CmdOrCtrl+F', menu: 'Edit' },
  { id: 'go-to-place', label: 'Go to a place', accelerator: 'CmdOrCtrl+G', menu: 'Edit' },
  { id: 'settings', label: 'Settings', accelerator: 'CmdOrCtrl+,', menu: 'Edit' },
  { id: 'keep-spot', label: 'Save a copy', accelerator: 'CmdOrCtrl+K', menu: 'Spot' },
  { id: 'duplicate-spot', label: 'Duplicate and open', accelerator: 'CmdOrCtrl+D', menu: 'Spot' },
  { id: 'side-by-side', label: 'Side by side', accelerator: 'CmdOrCtrl+I', menu: 'Spot' },
  { id: 'best-days', label: 'Which days?', accelerator: 'CmdOrCtrl+J', menu: 'Spot' },
  { id: 'trade-picture', label: 'Trade picture and map', accelerator: 'Shift+CmdOrCtrl+E', menu: 'View' },
  { id: 'whole-picture', label: 'Picture in the whole window', accelerator: 'Shift+CmdOrCtrl+F', menu: 'View' },
  { id: 'theme', label: 'Light or dark', accelerator: 'Shift+CmdOrCtrl+L', menu: 'View' },
  { id: 'help', label: 'Help', accelerator: 'F1', menu: 'Help' },
] as const satisfies readonly Command[]

export type CommandId = (typeof COMMANDS)[number]['id']

/** What of a key press decides the command; a DOM KeyboardEvent fits. */
export interface Keystroke {
  readonly key: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly shiftKey: boolean
  readonly altKey: boolean
}

/** The command a key press stands for, or null. `mac` chooses the command key instead of Control. */
export function commandFor(stroke: Keystroke, mac: boolean): CommandId | null {
  const found = COMMANDS.find((command) => presses(stroke, command.accelerator, mac))
  return found ? found.id : null
}

function presses(stroke: Keystroke, accelerator: string, mac: boolean): boolean {
  const parts = accelerator.split('+')
  const key = parts.at(-1) ?? ''
  const main = parts.includes('CmdOrCtrl')
  return (
    stroke.key.toLowerCase() === key.toLowerCase() &&
    stroke.metaKey === (main && mac) &&
    stroke.ctrlKey === (main && !mac) &&
    stroke.shiftKey === parts.includes('Shift') &&
    !stroke.altKey
  )
}

/** The accelerator as a person reads it on this platform: `Ctrl+Shift+Z`, or the mac's signs. */
export function acceleratorText(accelerator: string, mac: boolean): string {
  if (!mac) {
    const parts = accelerator.replace('CmdOrCtrl', 'Ctrl').split('+')
    return parts.toSorted((a, b) => Number(b === 'Ctrl') - Number(a === 'Ctrl')).join('+')
  }
  return accelerator.replace('Shift', '⇧').replace('CmdOrCtrl', '⌘').replaceAll('+', '')
}
