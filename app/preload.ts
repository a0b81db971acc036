/** The one bridge from Electron's page to main: three functions of ours, no Electron object, only names of the contract. */
import { contextBridge, ipcRenderer, type IpcRendererEvent } from 'electron'
import { type Bridge, CHANNELS, type OpenedFile } from './bridge.ts'
import { COMMANDS, type CommandId } from './commands.ts'
import { CALL_NAMES } from '#app/contract/names.ts'

const names: ReadonlySet<string> = new Set(CALL_NAMES)
const commandIds: ReadonlySet<string> = new Set(COMMANDS.map((command) => command.id))

/** Listeners of one channel; what arrives before the page listens waits for it. */
function relay<Value>(channel: string, isValue: (value: unknown) => value is Value) {
  const listeners = new Set<(value: Value) => void>()
  const waiting: Value[] = []
  ipcRenderer.on(channel, (_event: IpcRendererEvent, value: unknown) => {
    if (!isValue(value)) return
    if (listeners.size === 0) waiting.push(value)
    for (const listener of listeners) listener(value)
  })
  return (listener: (value: Value) => void): (() => void) => {
    listeners.add(listener)
    for (const value of waiting.splice(0)) listener(value)
    return () => {
      listeners.delete(listener)
    }
  }
}

function isCommandId(value: unknown): value is CommandId {
  return typeof value === 'string' && commandIds.has(value)
}

function isOpenedFile(value: unknown): value is OpenedFile {
  if (typeof value !== 'object' || value === null) return false
  return 'name' in value && typeof value.name === 'string' && 'text' in value && typeof value.text === 'string'
}

const bridge = {
  call: async (name, input) => {
    if (!names.has(name)) throw new Error(`There is no call named ${name}.`)
    return ipcRenderer.invoke(CHANNELS.call, name, input)
  },
  onCommand: relay(CHANNELS.command, isCommandId),
  onOpenFile: relay(CHANNELS.file, isOpenedFile),
} satisfies Bridge

contextBridge.exposeInMainWorld('standpoint', bridge)
