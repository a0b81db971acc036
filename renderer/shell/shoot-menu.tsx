/** The shoot's name as a menu: what is done with whole shoots, and the other ones. */
import { acceleratorText, COMMANDS, type CommandId } from '#app/commands.ts'
import { Menu, type MenuEntry } from '#renderer/part/menu.tsx'
import { chooseShootFile, copyShoot, makeShoot, renameShoot, saveShootFile } from '#renderer/state/act/shoot-acts.ts'
import { openShoot, shoot, shootList } from '#renderer/state/library/library.ts'
import { backToBoard, openPage } from '#renderer/state/session/navigation.ts'
import { shootName } from '#renderer/text/names.ts'
import { headerWords as say } from '#renderer/words/en-header.ts'
import { onMac } from './keys.ts'

/** So many other shoots are listed; all are on the page of shoots. */
const MOST = 8
const NAME_SHOWN = 100

/** A menu command by its own name and keys. */
function command(id: CommandId, onPress: () => unknown): MenuEntry {
  const { label, accelerator } = COMMANDS.find((one) => one.id === id) ?? { label: id, accelerator: null }
  return accelerator === null
    ? { text: label, onPress }
    : { text: label, keys: acceleratorText(accelerator, onMac()), onPress }
}

function others(): MenuEntry[] {
  const rest = shootList.value.filter(({ id }) => id !== shoot.value?.id)
  const shown = rest.slice(0, MOST).map((brief, index): MenuEntry => {
    const entry = {
      text: shootName(brief).slice(0, NAME_SHOWN),
      onPress: async () => {
        if (await openShoot(brief.id)) backToBoard()
      },
    }
    return index === 0 ? { ...entry, apart: say.otherShoots } : entry
  })
  return rest.length > MOST ? [...shown, { text: say.allShoots, onPress: () => openPage('shoot') }] : shown
}

function entries(): readonly MenuEntry[] {
  const open = shoot.value
  const anywhere = [command('open-file', chooseShootFile), ...others()]
  if (open === null) return [command('new-shoot', makeShoot), ...anywhere]
  return [
    command('edit-shoot', () => openPage('shoot')),
    { text: say.rename, onPress: renameShoot },
    { text: say.duplicate, onPress: () => copyShoot(open) },
    command('save-file', saveShootFile),
    { ...command('new-shoot', makeShoot), apart: true },
    ...anywhere,
  ]
}

export function ShootMenu() {
  const name = shoot.value === null ? say.noShoot : shootName(shoot.value).slice(0, NAME_SHOWN)
  return (
    <Menu label={say.shootMenu(name)} entries={entries}>
      <span class="menu-name">{name}</span>
    </Menu>
  )
}
