/** A map source as typed: refused with the field that is wrong, taken whole or not at all. */
import { expect, test } from 'vitest'
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

test('a good one', () => {
  const read = readOwnSource(GOOD, 'id')
  expect(read.ok && read.value.maxNativeZoom).toBe(19)
})
