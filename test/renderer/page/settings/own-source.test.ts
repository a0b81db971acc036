/** A map source as typed: refused with the field that is wrong, taken whole or not at all. */
import { expect, test } from 'vitest'
import { settingsShape } from '#app/contract/settings.ts'
import { EMPTY_SOURCE, readOwnSource } from '#renderer/page/settings/own-source.ts'

const GOOD = { ...EMPTY_SOURCE, name: 'Mine', template: 'https://tiles.example.org/{z}/{x}/{y}.png' }

test.each([
  ['name', { name: ' ' }],
  ['template', { template: 'http://tiles.example.org/{z}/{x}/{y}.png' }],
  ['template', { template: 'https://tiles.example.org/{z}/{x}.png' }],
  ['template', { template: 'javascript:alert(1)//{z}{x}{y}' }],
  ['maxNativeZoom', { maxNativeZoom: '25' }],
  ['maxNativeZoom', { maxNativeZoom: '12,5' }],
  ['attributionLink', { attributionLink: 'http://example.org' }],
] as const)('a bad %s is named', (field, part) => {
  const read = readOwnSource({ ...GOOD, ...part }, 'id')
  expect(read.ok ? 'taken' : read.fault.reason).toBe(field)
})

/** A template, or a link, of so many characters. */
const templateOf = (length: number): string => `${GOOD.template}?${'a'.repeat(length - GOOD.template.length - 1)}`
const linkOf = (length: number): string => `https://example.org/${'a'.repeat(length - 20)}`

// The longest that the settings' record takes; one character more is refused by its field, not by the record later.
test.each([
  ['name', { name: 'n'.repeat(200) }, { name: 'n'.repeat(201) }],
  ['template', { template: templateOf(2000) }, { template: templateOf(2001) }],
  ['attribution', { attribution: 'a'.repeat(1000) }, { attribution: 'a'.repeat(1001) }],
  ['attributionLink', { attributionLink: linkOf(2000) }, { attributionLink: linkOf(2001) }],
  ['maxNativeZoom', { maxNativeZoom: '24' }, { maxNativeZoom: '25' }],
  ['maxNativeZoom', { maxNativeZoom: '0' }, { maxNativeZoom: '-1' }],
] as const)('the longest %s is taken and kept, one more is refused', (field, longest, more) => {
  const read = readOwnSource({ ...GOOD, ...longest }, 'id')
  if (!read.ok) throw new Error(read.fault.message)
  const kept = settingsShape.shape.ownSources.safeParse([read.value])
  expect(kept.success && kept.data[0]).toEqual(read.value)
  const [value] = Object.values(longest)
  expect(String(read.value[field])).toBe(value)
  const refused = readOwnSource({ ...GOOD, ...more }, 'id')
  expect(refused.ok ? 'taken' : refused.fault.reason).toBe(field)
  // The record's own limit is the same: nothing that the form refuses would have been kept.
  const beyond = {
    ...read.value,
    [field]: field === 'maxNativeZoom' ? Number(Object.values(more)[0]) : Object.values(more)[0],
  }
  expect(settingsShape.shape.ownSources.safeParse([beyond]).success).toBe(false)
})

test('spaces around do not count to the length of what is trimmed', () => {
  for (const part of [{ name: ` ${'n'.repeat(200)} ` }, { attribution: ` ${'a'.repeat(1000)} ` }]) {
    expect(readOwnSource({ ...GOOD, ...part }, 'id').ok).toBe(true)
  }
})

test('a good one', () => {
  const read = readOwnSource(GOOD, 'id')
  expect(read.ok && read.value.maxNativeZoom).toBe(19)
})
