/** The services as both hosts mount them, on a library of their own: every call answers, and in JSON alone. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { contract, type CallName, type Input } from '#app/contract/index.ts'
import { CALL_NAMES } from '#app/contract/names.ts'
import { done } from '#core/result.ts'
import { dispatch } from '#main/door/handle.ts'
import { openServices, type Services, type ServicesOptions } from '#main/services.ts'
import { saved, shootRecord, spotRecord } from '#test/help/library-records.ts'
import { listeningLog } from '#test/help/stub-handlers.ts'

let folder: string
let services: Services
const log = listeningLog()

const optionsFor = (place: string): ServicesOptions => ({
  folder: place,
  built: place,
  log,
  host: 'loopback',
  version: '1.2.3',
  fetch: () => Promise.reject(new Error('no network in this test')),
  cipher: null,
  printer: null,
  dataSound: async () => done(null),
})

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'standpoint-services-'))
  services = await openServices(optionsFor(folder))
})

afterAll(async () => {
  await services.close()
  rmSync(folder, { recursive: true, force: true })
})

const ask = (name: CallName, input: unknown) => dispatch(services.handlers, name, input, log)

/** One good request for each call; a call added to the contract without one fails to compile. */
const GOOD: { readonly [Name in CallName]: Input<Name> } = {
  'library.state': {},
  'library.shoots': {},
  'library.apply': { changes: [saved(shootRecord('s')), saved(spotRecord('a', 's'))] },
  'library.save': { edits: [{ id: 'e', changes: [saved(spotRecord('b', 's'))] }] },
  'library.open': { shootId: 's' },
  'library.find': { words: 'quay', within: null, limit: 10 },
  'library.restore': { backup: 'none' },
  'settings.get': {},
  'settings.set': { units: 'imperial' },
  'settings.key': { sourceId: 'x', key: null },
  'tiles.sources': {},
  'tiles.health': {},
  'tiles.again': {},
  'tiles.clear': {},
  'places.find': { text: 'a', limit: 1 },
  'places.zones': { at: { lat: 0, lon: 0 } },
  'host.about': {},
  'sheet.pdf': { shootId: 's', spotId: 'a', paper: 'a4', title: 't', crop: null },
  'shoot.export': { shootId: 's' },
  'shoot.import': { text: '{}' },
  'ground.sources': { at: { lat: 46.4, lon: -33.6 } },
  'ground.remove': { id: 'file:none.hgt' },
  'ground.heights': { places: [] },
}

/** What cannot succeed here fails for the reason told. */
const FAILS: Readonly<Record<string, string>> = {
  'places.find': 'no-gazetteer',
  'places.zones': 'no-zones',
  'sheet.pdf': 'not-here',
  'shoot.import': 'not-a-shoot-file',
  'library.restore': 'gone',
  'ground.remove': 'gone',
}

describe('every call', () => {
  test.each(Object.keys(GOOD) as CallName[])('%s is answered, by its shape, in JSON alone', async (name) => {
    const answer = await ask(name, GOOD[name])
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer)
    if (answer.ok) {
      expect(FAILS[name]).toBeUndefined()
      expect(contract[name].output.safeParse(answer.value).error).toBeUndefined()
    } else expect([name, answer.fault.reason]).toEqual([name, FAILS[name]])
    expect(log.heard).toEqual([])
  })

  test('has its handler and no other exists', () => {
    expect(Object.keys(services.handlers).toSorted()).toEqual([...CALL_NAMES].toSorted())
  })
})

test('a new library begins with the demo, once: deleted it does not come back', async () => {
  const place = join(folder, 'again')
  const first = await openServices(optionsFor(place))
  const list = await dispatch(first.handlers, 'library.shoots', {}, log)
  expect(list).toMatchObject({ ok: true, value: { shoots: [{ spots: 3 }] } })
  const { shoots } = (list as { value: { shoots: { id: string }[] } }).value
  const opened = await dispatch(first.handlers, 'library.open', { shootId: shoots[0]?.id }, log)
  const { shoot, spots } = (
    opened as { value: { shoot: { id: string; revision: number }; spots: { id: string; revision: number }[] } }
  ).value
  const changes = [
    ...spots.map((spot) => ({ kind: 'spot', id: spot.id, before: spot.revision, record: null })),
    { kind: 'shoot', id: shoot.id, before: shoot.revision, record: null },
  ]
  expect(await dispatch(first.handlers, 'library.apply', { changes }, log)).toMatchObject({ ok: true })
  await first.close()
  const second = await openServices(optionsFor(place))
  expect(await dispatch(second.handlers, 'library.shoots', {}, log)).toEqual({ ok: true, value: { shoots: [] } })
  await second.close()
})

test('a shoot sent as a file comes back as another shoot, equal in all but its ids', async () => {
  const exported = await ask('shoot.export', { shootId: 's' })
  if (!exported.ok) throw new Error(exported.fault.message)
  const { text, name } = exported.value as { text: string; name: string }
  expect(name).toBe('Island bridge.standpoint')
  const imported = await ask('shoot.import', { text })
  if (!imported.ok) throw new Error(imported.fault.message)
  const { shootId } = imported.value as { shootId: string }
  expect(shootId).not.toBe('s')
  const [before, after] = await Promise.all([ask('library.open', { shootId: 's' }), ask('library.open', { shootId })])
  const plain = (answer: unknown): string =>
    JSON.stringify(answer, (key, value: unknown) =>
      ['id', 'shootId', 'revision', 'version'].includes(key) ? '-' : value,
    )
  expect(plain(after)).toBe(plain(before))
})

test('the page learns where tiles are; the path is another at each start', async () => {
  const sources = await ask('tiles.sources', {})
  expect(sources).toMatchObject({ value: { prefix: services.tilePrefix } })
  expect(services.tilePrefix).toMatch(/^\/tiles\/[\w-]{43}$/)
  const other = await openServices(optionsFor(join(folder, 'other')))
  expect(other.tilePrefix).not.toBe(services.tilePrefix)
  await other.close()
})

test('settings set by the page are the ones tiles are fetched by', async () => {
  const own = {
    id: 'mine',
    name: 'Mine',
    template: 'https://tiles.example/{z}/{x}/{y}.png',
    maxNativeZoom: 10,
    attribution: 'me',
    attributionLink: '',
  }
  await ask('settings.set', { ownSources: [own] })
  expect(JSON.stringify(await ask('tiles.sources', {}))).toContain('"mine"')
  expect((await services.tiles('nothing', 0, 0, 0, new AbortController().signal)).status).toBe(404)
})

test('a tile address that may not be used is refused when it is set, and nothing of the change is kept', async () => {
  const before = await ask('settings.get', {})
  for (const template of [
    'http://tiles.example/{z}/{x}/{y}.png',
    'https://tiles.example/map.png',
    'https://10.0.0.1/{z}/{x}/{y}',
  ]) {
    const answer = await ask('settings.set', { units: 'imperial', templates: { openstreetmap: template } })
    expect(answer, template).toMatchObject({ ok: false })
    expect(JSON.stringify(answer)).toMatch(/tile address|https|network/iu)
  }
  expect(await ask('settings.get', {})).toEqual(before)
})
