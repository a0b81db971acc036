/** What a user reads is in the trade's words: the ones that were retired stay so, each with the word to use instead. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { parseSync } from 'vite'
import { describe, expect, test } from 'vitest'

const ROOT = resolve(import.meta.dirname, '../..')

interface Retired {
  readonly pattern: RegExp
  readonly instead: string
  /** A sentence that held it. */
  readonly sample: string
}

const RETIRED: readonly Retired[] = [
  { pattern: /\blying\b/iu, instead: 'landscape', sample: 'lying frame' },
  { pattern: /\bupright\b(?! sides?\b)/iu, instead: 'portrait', sample: 'Upright' },
  { pattern: /\bwish(?:es|ed|ing)?\b/iu, instead: 'the light you want, conditions, prefer', sample: 'all wishes hold' },
  { pattern: /\bseen (?:sides?|faces?)\b/iu, instead: 'sides in view', sample: 'Every seen side' },
  { pattern: /\b(?:north|south|east|west|\{\}) face\b/iu, instead: 'side', sample: 'Merrin Bridge, south face' },
  { pattern: /\bdissolves?\b/iu, instead: 'smallest detail left', sample: 'Landmark dissolves below' },
  { pattern: /\bsoft(?:ness| enough)\b/iu, instead: 'background blur', sample: 'Softness of the tower' },
  { pattern: /\bend to end\b/iu, instead: 'front to back', sample: 'sharp end to end' },
  { pattern: /\bcounts as sharp(?: below|:)/iu, instead: 'circle of confusion', sample: 'Counts as sharp below' },
  { pattern: /\bsharp from\b/iu, instead: 'depth of field', sample: 'Sharp from' },
  { pattern: /\b(?:widest|smallest) opening\b/iu, instead: 'maximum or minimum aperture', sample: 'Smallest opening' },
  { pattern: /\bfixed focal length\b/iu, instead: 'prime', sample: 'fixed focal length' },
  { pattern: /\bgr[ae]y filter\b/iu, instead: 'ND filter', sample: 'use a grey filter' },
  { pattern: /\bpitch\b/iu, instead: 'tilt', sample: 'Pitch of the aim' },
  { pattern: /\belevations\b/iu, instead: 'elevation data', sample: 'No elevations here.' },
  { pattern: /\bat hand\b/iu, instead: 'loaded', sample: 'beyond the elevation files at hand' },
  { pattern: /\bis believed\b/iu, instead: 'is used', sample: 'The first source is believed.' },
  { pattern: /\breckon/iu, instead: 'count', sample: 'are reckoned with' },
  { pattern: /\bsatellite receiver\b/iu, instead: 'GPS receiver', sample: 'A satellite receiver may tell heights' },
  { pattern: /(?<!\bon )\bfoot\b/iu, instead: 'base', sample: 'From foot to top' },
  {
    pattern: /\bbefore the (?:subject|landmark|camera)\b/iu,
    instead: 'in front of',
    sample: 'the subject is before the landmark',
  },
  { pattern: /\b(?:sun|moon|\{\}) stands\b/iu, instead: 'is', sample: 'The sun stands in the frame.' },
  { pattern: /\bfirst light|last light\b/iu, instead: 'civil dawn, civil dusk', sample: 'first light (sun 6° below)' },
  { pattern: /\bclock of\b/iu, instead: 'time zone', sample: 'Clock of the place' },
  { pattern: /\bchosen (?:time|instant)\b/iu, instead: 'planned time', sample: 'Chosen time' },
  { pattern: /\bmap pieces?\b|\bpieces? of the map\b/iu, instead: 'map tiles', sample: 'Map pieces kept' },
  { pattern: /\bdeepest zoom\b/iu, instead: 'highest zoom level', sample: 'Deepest zoom of its own' },
  {
    pattern: /\bdouble press\b|\bpress (?:a|an|the|where|closer|anywhere)\b/iu,
    instead: 'click, double-click',
    sample: 'Press where the camera stands.',
  },
  {
    pattern: /\b(?:take|takes|taken) (?:it |one |them |some )?(?:away|back)\b/iu,
    instead: 'remove, undo',
    sample: 'Delete takes it away',
  },
  { pattern: /\b(?:give|gives|given) up\b/iu, instead: 'cancel', sample: 'Escape gives up.' },
  { pattern: /\b(?:bring|brought) in\b/iu, instead: 'import', sample: 'Brought in one' },
  {
    pattern: /\b(?:stopping ground|draw (?:more|less) ground)\b/iu,
    instead: 'places to stop',
    sample: 'Stopping ground',
  },
  { pattern: /\b(?:cannot|can’t|can't) be told\b/iu, instead: 'is unknown', sample: 'cannot be told' },
  { pattern: /^it cannot be\b/iu, instead: 'not possible', sample: 'It cannot be: even from' },
  { pattern: /\bdoes one\b|\bone (?:steps|parks|aims|gets)\b/iu, instead: 'you', sample: 'How does one get there?' },
  { pattern: /\bwhoever aims\b/iu, instead: 'if you', sample: 'Whoever aims at the sun' },
  { pattern: /\b(?:subject heads|front to \{\}|front points)\b/iu, instead: 'faces', sample: 'Subject heads' },
  { pattern: /\bcarriageway\b/iu, instead: 'road', sample: 'keep off the carriageway' },
  { pattern: /\bfortnight\b/iu, instead: 'two weeks', sample: 'a fortnight apart' },
  { pattern: /\banew\b/iu, instead: 'again', sample: 'build the program anew' },
  { pattern: /\bmend(?:s|ed)?\b/iu, instead: 'fix', sample: 'Mend them and try again.' },
  { pattern: /\bthousand million\b/iu, instead: 'billion', sample: '2.1 thousand million' },
  { pattern: /\b(?:common practice|no source)\b/iu, instead: 'rule of thumb', sample: '(common practice, no source)' },
  { pattern: /\btightest\b/iu, instead: 'smallest margin', sample: 'Tightest: may be off by' },
]

interface Node {
  readonly type: string
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string'
}

const part = (node: object, name: string): unknown => Object.entries(node).find(([key]) => key === name)?.[1]

/** Names, imports and types are not read by users. */
function isUnread(node: Node, name: string): boolean {
  if (node.type.startsWith('Import') || node.type.startsWith('TS')) return name !== 'expression'
  return node.type === 'Property' && name === 'key'
}

/** A text as it stands in the source, `{}` for what is filled in; null where a node is none. */
function textOf(node: Node): string | null {
  if (node.type === 'Literal') {
    const value = part(node, 'value')
    return typeof value === 'string' ? value : null
  }
  if (node.type !== 'TemplateLiteral') return null
  const pieces = part(node, 'quasis')
  return Array.isArray(pieces)
    ? pieces.map((piece: { value: { cooked: string } }) => piece.value.cooked).join('{}')
    : null
}

function gather(value: unknown, texts: string[]): void {
  if (Array.isArray(value)) for (const one of value) gather(one, texts)
  if (!isNode(value)) return
  const text = textOf(value)
  if (text !== null) texts.push(text)
  for (const [name, inner] of Object.entries(value)) if (!isUnread(value, name)) gather(inner, texts)
}

/** Every text of a source but for names, imports, types and comments, those within what is filled in included. */
function textsOf(path: string, source: string): string[] {
  const texts: string[] = []
  gather(parseSync(path, source).program.body, texts)
  return texts
}

function textsOfRoom(room: string): { readonly path: string; readonly text: string }[] {
  return readdirSync(join(ROOT, room), { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.tsx?$/u.test(path))
    .map((path) => `${room}/${path.replaceAll('\\', '/')}`)
    .flatMap((path) => textsOf(path, readFileSync(join(ROOT, path), 'utf8')).map((text) => ({ path, text })))
}

/** A sentence, or a label of several words: elsewhere than among the words, single ones are reasons and kinds of the code. */
const isSaid = (text: string): boolean =>
  /\p{L}+ \p{L}+ /u.test(text) && !/^\s*(?:CREATE|SELECT|INSERT|UPDATE|WITH)\b/u.test(text)

const complaints = (texts: readonly { readonly path: string; readonly text: string }[]): string[] =>
  texts.flatMap(({ path, text }) =>
    RETIRED.filter(({ pattern }) => pattern.test(text)).map(
      ({ pattern, instead }) => `${path}: “${text}” has “${pattern.exec(text)?.[0]}”; say ${instead}`,
    ),
  )

describe('a retired word', () => {
  test.each(RETIRED)('$sample', ({ pattern, sample }) => {
    expect(sample).toMatch(pattern)
  })

  test('is found in a label, a sentence with figures, and what such a sentence is filled with; not in a name or a comment', () => {
    const planted = [
      "import { a } from '#core/wish.ts'",
      "type Kind = 'wish'",
      '/** A wish. */',
      "const words = { 'wish': 'wish one', fills: (count: number) => `wish two ${count === 1 ? 'wish three' : 'fine'}` }",
      "const kept = ['wish four'] as const satisfies readonly string[]",
    ].join('\n')
    const texts = textsOf('planted.ts', planted).map((text) => ({ path: 'planted.ts', text }))
    expect(complaints(texts).map((one) => /wish (?:one|two|three|four)/u.exec(one)?.[0])).toEqual([
      'wish one',
      'wish two',
      'wish three',
      'wish four',
    ])
  })
})

test('is in none of the words of the page', () => {
  const texts = textsOfRoom('renderer/words').filter(({ text }) => !text.startsWith('#'))
  expect(texts.length).toBeGreaterThan(1_000)
  expect(complaints(texts)).toEqual([])
})

test('is in no sentence elsewhere that a user may read', () => {
  const texts = ['core', 'main', 'app', 'renderer'].flatMap(textsOfRoom).filter(({ text }) => isSaid(text))
  expect(texts.length).toBeGreaterThan(300)
  expect(complaints(texts)).toEqual([])
})
