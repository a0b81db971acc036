/** Where the library lives: the usual places of the three systems, or the one named; and what keeps a place from being used. */
import { chmodSync, existsSync, mkdirSync, mkdtempSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { dataFolder, prepareDataFolder } from '#main/data-folder.ts'

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

describe('a folder', () => {
  let place: string
  beforeEach(() => {
    place = mkdtempSync(join(tmpdir(), 'standpoint-place-'))
  })
  afterEach(() => rmSync(place, { recursive: true, force: true }))

  test('that is not there is made, for its owner alone', () => {
    const folder = join(place, 'new', 'data')
    expect(prepareDataFolder(folder).ok).toBe(true)
    expect(existsSync(folder)).toBe(true)
    if (process.platform !== 'win32') expect(statSync(folder).mode & 0o777).toBe(0o700)
  })

  test('of the user’s own keeps its mode', () => {
    chmodSync(place, 0o755)
    expect(prepareDataFolder(place).ok).toBe(true)
    expect(statSync(place).mode & 0o777).toBe(0o755)
  })

  test.each([
    ['a file', (at: string) => writeFileSync(at, ''), 'not a folder but a file'],
    ['a link that leads nowhere', (at: string) => symlinkSync(join(place, 'gone'), at), 'leads nowhere'],
    ['a link round in a circle', (at: string) => symlinkSync(at, at), 'circle'],
  ])('that is %s is told with what to do', (_, make, why) => {
    const at = join(place, 'data')
    make(at)
    const answer = prepareDataFolder(at)
    expect(answer).toMatchObject({ ok: false, fault: { message: expect.stringContaining(why) } })
    expect(answer).toMatchObject({ fault: { message: expect.stringMatching(/data.*STANDPOINT_DATA\.$/) } })
  })

  test('on a way that is none is told too', () => {
    writeFileSync(join(place, 'file'), '')
    symlinkSync(join(place, 'gone'), join(place, 'link'))
    mkdirSync(join(place, 'far'))
    for (const way of ['file/data', 'link/data', `far/${'x'.repeat(300)}`])
      expect(prepareDataFolder(join(place, way)), way).toMatchObject({
        ok: false,
        fault: { message: expect.stringMatching(/^Standpoint's folder .* cannot be used: .*\.$/) },
      })
  })
})
