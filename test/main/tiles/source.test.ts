/** Tile sources as data: what is built in, what settings change, what the page is told. */
import { expect, test } from 'vitest'
import { DEFAULT_SETTINGS } from '#app/contract/default-settings.ts'
import { tileSourceShape } from '#app/contract/tiles.ts'
import { checkTemplate } from '#main/tiles/address.ts'
import { briefOf, tileSourcesOf } from '#main/tiles/source.ts'

const own = {
  id: 'mine',
  name: 'Mine',
  template: 'https://tiles.example.org/{z}/{x}/{y}?k={key}&secret=hush',
  maxNativeZoom: 18,
  attribution: '© Somebody',
  attributionLink: 'https://example.org/terms',
}

test('every built-in source is fit for use and names whom it is from', () => {
  const sources = tileSourcesOf(DEFAULT_SETTINGS)
  expect(sources).toHaveLength(4)
  for (const source of sources) {
    expect(checkTemplate(source.template, { allowLoopbackHttp: false })).toMatchObject({ ok: true })
    expect(source.attribution.length).toBeGreaterThan(5)
    expect(source.terms.length).toBeGreaterThan(5)
    expect(briefOf(source).attributionLink).toMatch(/^https:/)
    expect([source.changed, source.own]).toEqual([false, false])
  }
})

test('a template in the settings replaces a built-in one, which is then looked at like any typed one', () => {
  const template = 'https://tiles.example.org/{z}/{x}/{y}.png'
  const sources = tileSourcesOf({ ownSources: [], templates: { openstreetmap: template, opentopomap: '  ' } })
  expect(sources.find((one) => one.id === 'openstreetmap')).toMatchObject({ template, changed: true })
  expect(sources.find((one) => one.id === 'opentopomap')).toMatchObject({ changed: false })
})

test('the page never learns an address, and hears that a key is needed', () => {
  const mine = tileSourcesOf({ ownSources: [own], templates: {} }).find((one) => one.id === 'mine')
  const brief = mine && briefOf(mine)
  expect(tileSourceShape.parse(brief)).toEqual(brief)
  expect(brief).toMatchObject({ needsKey: true, own: true })
  expect(JSON.stringify(brief)).not.toContain('hush')
})

test('an own source cannot pass for a built-in one', () => {
  const sources = tileSourcesOf({ ownSources: [{ ...own, id: 'openstreetmap' }], templates: {} })
  expect(sources.filter((one) => one.id === 'openstreetmap').map((one) => one.own)).toEqual([false])
})

test.each(['javascript:alert(1)', 'data:text/html,x', '//example.org', ''])('a link of %s is left out', (link) => {
  const mine = tileSourcesOf({ ownSources: [{ ...own, attributionLink: link }], templates: {} }).at(-1)
  expect(mine && briefOf(mine).attributionLink).toBe('')
})
