/** The command table: unique, and made of keys that a browser lets a page have. */
import { describe, expect, test } from 'vitest'
import { acceleratorText, commandFor, COMMANDS } from '#app/commands.ts'

const stroke = (key: string, held: readonly ('ctrl' | 'meta' | 'shift' | 'alt')[] = []) => ({
  key,
  ctrlKey: held.includes('ctrl'),
  metaKey: held.includes('meta'),
  shiftKey: held.includes('shift'),
  altKey: held.includes('alt'),
})

describe('commands', () => {
  test('have ids and keys of their own', () => {
    for (const part of ['id', 'accelerator', 'label'] as const)
      expect(new Set(COMMANDS.map((command) => command[part])).size).toBe(COMMANDS.length)
  })

  test('leave to the browser what it keeps, and to text what belongs to text', () => {
    for (const command of COMMANDS) expect(command.accelerator).not.toMatch(/CmdOrCtrl\+[NTWQACVX]$/)
  })

  test.each([
    [stroke('z', ['ctrl']), false, 'undo'],
    [stroke('Z', ['ctrl', 'shift']), false, 'redo'],
    [stroke('z', ['meta']), true, 'undo'],
    [stroke('z', ['ctrl']), true, null],
    [stroke('z', ['meta']), false, null],
    [stroke('z', ['ctrl', 'alt']), false, null],
    [stroke('z'), false, null],
    [stroke('F1'), false, 'help'],
    [stroke('F1', ['shift']), false, null],
    [stroke(',', ['ctrl']), false, 'settings'],
  ])('%j on a mac: %s is %s', (pressed, mac, id) => {
    expect(commandFor(pressed, mac)).toBe(id)
  })

  test('are found by their own keys on both kinds of keyboard', () => {
    for (const mac of [true, false])
      for (const command of COMMANDS) {
        const parts: readonly string[] = command.accelerator.split('+')
        const main = parts.includes('CmdOrCtrl') ? [mac ? ('meta' as const) : ('ctrl' as const)] : []
        const shift = parts.includes('Shift') ? ['shift' as const] : []
        expect(commandFor(stroke(parts.at(-1) ?? '', [...main, ...shift]), mac)).toBe(command.id)
      }
  })

  test('are written as people read them', () => {
    expect(acceleratorText('Shift+CmdOrCtrl+Z', false)).toBe('Ctrl+Shift+Z')
    expect(acceleratorText('Shift+CmdOrCtrl+Z', true)).toBe('⇧⌘Z')
    expect(acceleratorText('F1', false)).toBe('F1')
  })
})
