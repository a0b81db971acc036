/** A full disk: the change is refused whole with a sentence, the library stays sound, and saving goes on once there is room. */
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { applyChanges } from '#main/store/apply.ts'
import { faultOf, resultOf } from '#main/store/fault.ts'
import { connect } from '#main/store/handle.ts'
import { countRecords } from '#main/store/records.ts'
import { saved, shootRecord, spotRecord } from '#test/help/library-records.ts'
import { openedLibrary } from '#test/help/open-library.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'

test('nothing of a batch that finds no room is kept', async () => {
  const folder = temporaryFolder()
  await openedLibrary(folder)
  const connection = connect(join(folder, 'library.sqlite'), { readonly: false })
  const save = (changes: Parameters<typeof applyChanges>[1]): ReturnType<typeof resultOf<unknown>> =>
    resultOf(() => connection.immediately((handle) => applyChanges(handle, changes)))
  expect(save([saved(shootRecord('a')), saved(spotRecord('small', 'a'))]).ok).toBe(true)
  // SQLite answers SQLITE_FULL beyond this size, as it does when the disk has no room.
  const pages = Number(connection.pragma('page_count'))
  connection.pragma(`max_page_count = ${pages + 20}`)
  const many = Array.from({ length: 500 }, (_, n) => saved(spotRecord(`s${n}`, 'a', { notes: `word${n} `.repeat(50) })))
  expect(save(many)).toMatchObject({
    ok: false,
    fault: { reason: 'disk-full', message: expect.stringContaining('make room') },
  })
  expect(countRecords(connection.read)).toEqual({ version: 1, shootCount: 1, spotCount: 1 })
  expect(connection.pragma('integrity_check')).toBe('ok')
  connection.pragma('max_page_count = 1000000')
  expect(save(many).ok).toBe(true)
  expect(countRecords(connection.read)).toEqual({ version: 2, shootCount: 1, spotCount: 501 })
  connection.close()
})

test.each([
  ['ENOSPC', 'disk-full'],
  ['EROFS', 'read-only'],
  ['EACCES', 'read-only'],
  ['EIO', 'unavailable'],
])('the file system’s %s is told as %s', (code, reason) => {
  expect(faultOf(Object.assign(new Error(code), { code }))?.reason).toBe(reason)
})

test('an error of our own is no fault of the outside world', () => {
  expect(faultOf(new TypeError('x is not a function'))).toBe(null)
  expect(() =>
    resultOf(() => {
      throw new RangeError('ours')
    }),
  ).toThrow('ours')
})
