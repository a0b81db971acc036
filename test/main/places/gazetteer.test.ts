/** The offline gazetteer on the real data of the build. */
import { mkdtemp, readFile, rm, stat, truncate, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { writeGazetteer } from '#app/build-gazetteer.ts'
import { contract, type Output } from '#app/contract/index.ts'
import { type Gazetteer, PLACES_ATTRIBUTION, makeGazetteer } from '#main/places/gazetteer.ts'

let folder = ''
let file = ''
let gazetteer: Gazetteer
let written = { towns: 0, bytes: 0 }

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'places-'))
  file = join(folder, 'new', 'places.dat')
  written = await writeGazetteer(file)
  gazetteer = makeGazetteer(file)
}, 60_000)

afterAll(() => rm(folder, { recursive: true, force: true }))

type Places = Output<'places.find'>['places']

async function find(text: string, limit = 10): Promise<Places> {
  const result = await gazetteer.find({ text, limit })
  if (!result.ok) throw new Error(result.fault.message)
  return result.value.places
}

describe('the data file', () => {
  // The package's own description: towns of more than 1000 inhabitants; its file has 135,233 of them.
  it('holds all towns in a few megabytes and leaves nothing half-written', async () => {
    expect(written.towns).toBeGreaterThan(130_000)
    expect((await stat(file)).size).toBe(written.bytes)
    expect(written.bytes).toBeLessThan(4_000_000)
    await expect(stat(`${file}.part`)).rejects.toThrow('ENOENT')
  })
})

describe('finding towns', () => {
  it('answers as the contract says, with the credit that the licence asks for', async () => {
    const result = await gazetteer.find({ text: 'Gießen', limit: 3 })
    if (!result.ok) throw new Error(result.fault.message)
    expect(contract['places.find'].output.safeParse(result.value).success).toBe(true)
    expect(result.value.attribution).toBe(PLACES_ATTRIBUTION)
    expect(result.value.attribution).toContain('GeoNames')
    expect(result.value.attribution).toContain('CC BY 4.0')
  })

  it.each(['Gießen', 'giessen', 'GIESSEN', 'Gie\u00dfen', ' gießen '])('finds Gießen by "%s"', async (text) => {
    const [first] = await find(text)
    expect(first).toMatchObject({ name: 'Gießen', country: 'Germany' })
    // GeoNames 2920512.
    expect(first?.lat).toBeCloseTo(50.587, 2)
    expect(first?.lon).toBeCloseTo(8.676, 2)
  })

  it.each([
    ['koln', 'Köln'],
    ['koeln', 'Köln'],
    ['sao paulo', 'São Paulo'],
    ['tromso', 'Tromsø'],
    ['tromsoe', 'Tromsø'],
    ['reykjavik', 'Reykjavík'],
    ['lodz', 'Łódź'],
    ['newcastle upon t', 'Newcastle upon Tyne'],
    ['upon tyne', 'Newcastle upon Tyne'],
  ])('finds "%s" as %s', async (text, name) => {
    expect((await find(text)).map((place) => place.name)).toContain(name)
  })

  it('finds parts inside a word after all beginnings', async () => {
    const names = (await find('ringfield', 20)).map((place) => place.name)
    expect(names.some((name) => name.includes('Springfield'))).toBe(true)
  })

  it('narrows by what follows a comma: state letters, country letters, country name', async () => {
    expect((await find('Springfield, IL'))[0]).toMatchObject({ admin: 'IL', country: 'United States' })
    expect((await find('Paris, us')).every((place) => place.country === 'United States')).toBe(true)
    expect((await find('Paris, fra'))[0]).toMatchObject({ name: 'Paris', country: 'France' })
    expect(await find('Paris, nowhere')).toEqual([])
  })

  it('never gives a town twice nor more than asked for', async () => {
    const places = await find('a', 50)
    expect(places).toHaveLength(50)
    expect(new Set(places.map((place) => `${place.lat} ${place.lon} ${place.name}`)).size).toBe(50)
    expect(await find('york', 1)).toHaveLength(1)
  })

  it.each(['', '   ', '";', 'AND" OR *', '%', '\t', '\n', ',', ', germany', 'zzzzqqq', '<img src=x>', '\u{1f30d}'])(
    'answers "%s" without an error',
    async (text) => {
      expect(await find(text)).toEqual([])
    },
  )
})

describe('reading late', () => {
  it('opens nothing until it is asked, and finds a file that comes later', async () => {
    const late = join(folder, 'late.dat')
    const waiting = makeGazetteer(late)
    const missing = await waiting.find({ text: 'York', limit: 1 })
    expect(missing).toMatchObject({ ok: false, fault: { reason: 'no-gazetteer' } })
    await writeFile(late, await readFile(file))
    expect(await waiting.find({ text: 'York', limit: 1 })).toMatchObject({ ok: true })
  })

  it('says so when the file is damaged', async () => {
    const cut = join(folder, 'cut.dat')
    await writeFile(cut, await readFile(file))
    await truncate(cut, 100_000)
    expect(await makeGazetteer(cut).find({ text: 'York', limit: 1 })).toMatchObject({
      ok: false,
      fault: { reason: 'gazetteer-damaged' },
    })
    await writeFile(cut, 'no gzip')
    expect(await makeGazetteer(cut).find({ text: 'York', limit: 1 })).toMatchObject({ ok: false })
  })

  it('serves questions that come together from one reading', async () => {
    const fresh = makeGazetteer(file)
    const answers = await Promise.all(['York', 'Oslo', 'Lima'].map((text) => fresh.find({ text, limit: 1 })))
    expect(answers.map((answer) => answer.ok && answer.value.places[0]?.name)).toEqual(['York', 'Oslo', 'Lima'])
  })
})
