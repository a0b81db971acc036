/** Text from outside as JSON: what is none is told apart from null, and only a whole fault is a fault. */
import { expect, test } from 'vitest'
import { faultInJson, parsedJson } from '#core/parsed-json.ts'

test.each([
  ['{"a":1}', { a: 1 }],
  ['null', null],
  ['', undefined],
  ['{"a":', undefined],
])('%j holds %j', (text, value) => expect(parsedJson(text)).toEqual(value))

test.each([
  ['{"reason":"gone","message":"It is gone."}', { reason: 'gone', message: 'It is gone.' }],
  ['{"reason":"gone","message":"It is gone.","more":1}', { reason: 'gone', message: 'It is gone.' }],
  ['{"reason":"gone"}', null],
  ['{"message":"It is gone."}', null],
  ['null', null],
  ['"gone"', null],
  ['Not found', null],
])('%j tells the fault %j', (text, fault) => expect(faultInJson(text)).toEqual(fault))
