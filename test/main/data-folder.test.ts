/** Where the library lives: the usual places of the three systems, or the one named. */
import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { dataFolder } from '#main/data-folder.ts'

// Linux: XDG base directory specification 0.8; macOS and Windows: their usual application data folders.
test.each([
  ['linux', {}, '/home/a/.config/Standpoint'],
  ['linux', { XDG_CONFIG_HOME: '/cfg' }, '/cfg/Standpoint'],
  ['linux', { XDG_CONFIG_HOME: 'relative' }, '/home/a/.config/Standpoint'],
  ['darwin', {}, '/home/a/Library/Application Support/Standpoint'],
  ['linux', { STANDPOINT_DATA: '/mine' }, '/mine'],
  ['linux', { STANDPOINT_DATA: '  ' }, '/home/a/.config/Standpoint'],
  ['darwin', { STANDPOINT_DATA: 'here' }, resolve('here')],
])('%s with %j', (platform, environment, folder) => {
  expect(dataFolder(environment, platform, '/home/a')).toBe(folder)
})

test('Windows uses the roaming folder', () => {
  expect(dataFolder({ APPDATA: '/r' }, 'win32', '/home/a')).toBe('/r/Standpoint')
})
