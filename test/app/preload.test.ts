/** The preload: three functions of ours on the page, names of the contract alone, nothing of Electron. */
import { EventEmitter } from 'node:events'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import { type Bridge, CHANNELS } from '#app/bridge.ts'
import { CALL_NAMES } from '#app/contract/names.ts'

const invoke = vi.fn(async (..._words: unknown[]) => ({ ok: true, value: 1 }))
let exposed: [string, Bridge][]
let channels: EventEmitter

beforeEach(async () => {
  exposed = []
  channels = new EventEmitter()
  invoke.mockClear()
  vi.resetModules()
  vi.doMock('electron', () => ({
    contextBridge: { exposeInMainWorld: (name: string, api: Bridge) => void exposed.push([name, api]) },
    ipcRenderer: Object.assign(channels, { invoke }),
  }))
  await import('#app/preload.ts')
})

const bridge = (): Bridge => {
  const [first] = exposed
  if (!first) throw new Error('nothing was exposed')
  return first[1]
}

describe('the bridge', () => {
  test('is one object of three functions', () => {
    expect(exposed.map(([name]) => name)).toEqual(['standpoint'])
    expect(Object.keys(bridge()).toSorted()).toEqual(['call', 'onCommand', 'onOpenFile'])
    for (const part of Object.values(bridge())) expect(part).toBeTypeOf('function')
  })

  test('lets every name of the contract through on the one channel', async () => {
    for (const name of CALL_NAMES) await bridge().call(name as 'library.state', {})
    expect(invoke.mock.calls).toEqual(CALL_NAMES.map((name) => [CHANNELS.call, name, {}]))
  })

  test.each(['no.such', 'constructor', '__proto__', '', null, { toString: () => 'library.state' }])(
    'stops the name %j',
    async (name) => {
      await expect(bridge().call(name as 'library.state', {})).rejects.toThrow('no call named')
      expect(invoke).not.toHaveBeenCalled()
    },
  )

  test('hands on the value and never the event, whose sender is Electron', () => {
    const heard: unknown[][] = []
    bridge().onCommand((...words: unknown[]) => heard.push(words))
    channels.emit(CHANNELS.command, { sender: 'electron' }, 'undo', 'more')
    expect(heard).toEqual([['undo']])
  })

  test.each([7, null, 'no-such-command', { id: 'undo' }])('does not hand on the command %j', (id) => {
    const heard = vi.fn()
    bridge().onCommand(heard)
    channels.emit(CHANNELS.command, {}, id)
    expect(heard).not.toHaveBeenCalled()
  })

  test('keeps a file for the page that listens later, and gives it once', () => {
    const file = { name: 'a.standpoint', text: '{}' }
    channels.emit(CHANNELS.file, {}, file)
    channels.emit(CHANNELS.file, {}, { name: 7, text: '' })
    const first = vi.fn()
    const second = vi.fn()
    bridge().onOpenFile(first)
    bridge().onOpenFile(second)
    expect(first.mock.calls).toEqual([[file]])
    expect(second).not.toHaveBeenCalled()
  })

  test('stops telling a listener that left', () => {
    const heard = vi.fn()
    bridge().onCommand(heard)()
    channels.emit(CHANNELS.command, {}, 'undo')
    expect(heard).not.toHaveBeenCalled()
  })
})
