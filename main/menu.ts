/** The native menu, built from the command table; it sends a command's id to the page and does nothing itself. */
import { Menu, type MenuItemConstructorOptions } from 'electron'
import { COMMANDS, type CommandId, type MenuName } from '#app/commands.ts'

const MENUS: readonly MenuName[] = ['Shoot', 'Edit', 'Spot', 'View', 'Help']

export interface MenuParts {
  readonly mac: boolean
  readonly development: boolean
  readonly send: (id: CommandId) => void
}

export function showMenu(parts: MenuParts): void {
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(parts)))
}

export function menuTemplate(parts: MenuParts): MenuItemConstructorOptions[] {
  const menus = MENUS.map((name) => ({ label: name, submenu: [...ownItems(name, parts), ...roleItems(name, parts)] }))
  return parts.mac ? [{ role: 'appMenu' }, ...menus, { role: 'windowMenu' }] : menus
}

function ownItems(menu: MenuName, parts: MenuParts): MenuItemConstructorOptions[] {
  return COMMANDS.filter((command) => command.menu === menu).map((command) => ({
    id: command.id,
    label: command.label,
    accelerator: command.accelerator,
    click: () => parts.send(command.id),
  }))
}

function roleItems(menu: MenuName, parts: MenuParts): MenuItemConstructorOptions[] {
  if (menu === 'Shoot') return parts.mac ? [] : [{ type: 'separator' }, { role: 'quit' }]
  if (menu === 'Edit')
    return [{ type: 'separator' }, { role: 'cut' }, { role: 'copy' }, { role: 'paste' }, { role: 'selectAll' }]
  if (menu !== 'View') return []
  const view: MenuItemConstructorOptions[] = [
    { type: 'separator' },
    { role: 'resetZoom' },
    { role: 'zoomIn' },
    { role: 'zoomOut' },
    { role: 'togglefullscreen' },
  ]
  return parts.development ? [...view, { role: 'toggleDevTools' }] : view
}
