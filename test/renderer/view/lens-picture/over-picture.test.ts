/** What lies over the picture is read on any picture: each mark's ink stands out from its own halo, in both themes. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { type Colour, colour, mixed } from '#renderer/view/lens-picture/colour.ts'
import { inksAt } from '#renderer/view/lens-picture/lens-inks.ts'
import { contrastOf } from '#test/help/brightness.ts'

function styleOf(file: string): string {
  return readFileSync(new URL(`../../../../renderer/${file}`, import.meta.url), 'utf8').replaceAll(/\/\*.*?\*\//gsu, '')
}

/** The declarations of the one rule with just this selector. */
function ruleOf(style: string, selector: string): Map<string, string> {
  const rules = [...style.matchAll(/([^{}]+)\{([^{}]*)\}/gu)].filter(([, selectors]) =>
    (selectors ?? '').split(',').some((one) => one.trim() === selector),
  )
  if (rules.length === 0) throw new Error(`no rule for ${selector}`)
  const declared = rules.flatMap(([, , text]) => (text ?? '').split(';').filter((line) => line.includes(':')))
  return new Map(
    declared.map((line): [string, string] => {
      const at = line.indexOf(':')
      return [line.slice(0, at).trim(), line.slice(at + 1).trim()]
    }),
  )
}

const LENS = styleOf('view/lens-picture/lens-view.css')
const THEMES = { light: ':root', dark: ":root[data-theme='dark']" } as const
const PICTURES = [50, 5, 0, -6, -12, -30].flatMap((altitude) => {
  const { skyTop, skyLow, fieldNear, lift, deep } = inksAt(altitude)
  return [skyTop, skyLow, fieldNear, lift, deep]
})

describe.each(Object.entries(THEMES))('in the %s theme', (_, theme) => {
  const tokens = ruleOf(styleOf('style/ink.css'), theme)
  const inkOf = (selector: string, property: 'fill' | 'stroke'): Colour => {
    const value = ruleOf(LENS, selector).get(property) ?? ''
    const hex = /^var\((.+)\)$/u.exec(value)?.[1]
    return colour(hex === undefined ? value : (tokens.get(hex) ?? 'none'))
  }
  const coverOf = (selector: string): number => Number(ruleOf(LENS, selector).get('stroke-opacity') ?? 1)

  test.each([
    ['.lens-label', 'fill', '.lens-label'],
    ['.lens-body-mark path', 'fill', '.lens-body-mark path'],
    ['.lens-crop', 'stroke', '.lens-crop-halo'],
    ['.lens-cut-subject line', 'stroke', '.lens-cut .lens-cut-halo'],
    ['.lens-cut-landmark line', 'stroke', '.lens-cut .lens-cut-halo'],
  ] as const)('%s stands out from its halo', (mark, property, halo) => {
    expect(coverOf(halo)).toBe(1)
    expect(contrastOf(inkOf(mark, property), inkOf(halo, 'stroke'))).toBeGreaterThan(4.5)
  })

  test('the thirds, quieter, still do on any part of any picture', () => {
    for (const under of PICTURES) {
      const halo = mixed(under, inkOf('.lens-thirds-halo', 'stroke'), coverOf('.lens-thirds-halo'))
      const line = mixed(halo, inkOf('.lens-thirds', 'stroke'), coverOf('.lens-thirds'))
      const most = Math.max(contrastOf(line, halo), contrastOf(line, under), contrastOf(halo, under))
      expect(most).toBeGreaterThan(2)
    }
  })
})

test('what lies over the picture may go by the theme, the picture never does', () => {
  expect(LENS).not.toMatch(/data-theme|prefers-color-scheme/u)
})
