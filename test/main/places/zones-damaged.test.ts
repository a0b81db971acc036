/** Boundaries cut short, in a test file of its own: the library takes its folder once a process. */
import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { done } from '#core/result.ts'
import { ZONES_FILE, makeZoneFinder } from '#main/places/zones.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'

it('says that the boundaries cannot be read, and still answers where none are needed', async () => {
  const folder = temporaryFolder()
  const file = join(folder, ZONES_FILE)
  await writeFile(file, 'cut short')
  const finder = makeZoneFinder(folder, async () => done(null))
  expect(await finder.zones({ at: { lat: 65.85, lon: 24.15 } })).toEqual({
    ok: false,
    fault: {
      reason: 'zones-damaged',
      message: `The time zone boundaries cannot be read (${file}). Choose the time zone by hand, or install Standpoint again.`,
    },
  })
  expect(await finder.zones({ at: { lat: 90, lon: 0 } })).toMatchObject({ ok: true, value: { zones: ['UTC'] } })
})
