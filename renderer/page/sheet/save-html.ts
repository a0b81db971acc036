/** The sheet as one self-contained file: its markup, its styles and fonts within, nothing fetched when it is opened. */

import { makeLinks } from './link.tsx'

/** Fonts the sheet is set in, by the face rules of the page's own styles. */
async function withFontsInside(css: string, base: string): Promise<string> {
  const addresses = [...new Set([...css.matchAll(/url\(\s*["']?([^"')]+)["']?\s*\)/gu)].map((found) => found[1] ?? ''))]
  let inside = css
  for (const address of addresses) {
    if (address.startsWith('data:')) continue
    const data = await dataAddress(new URL(address, base).href)
    inside = inside.split(address).join(data ?? 'data:,')
  }
  return inside
}

async function dataAddress(address: string): Promise<string | null> {
  try {
    const response = await fetch(address)
    if (!response.ok) return null
    const bytes = new Uint8Array(await response.arrayBuffer())
    let text = ''
    for (let start = 0; start < bytes.length; start += 0x8000)
      text += String.fromCharCode(...bytes.subarray(start, start + 0x8000))
    const type = response.headers.get('content-type') ?? 'application/octet-stream'
    return `data:${type.split(';')[0]};base64,${btoa(text)}`
  } catch {
    return null
  }
}

/** Only Latin faces: the other subsets would make the file large, and a phone has fonts of its own for them. */
function isNeeded(rule: CSSRule): boolean {
  if (!(rule instanceof CSSFontFaceRule)) return true
  const text = rule.cssText
  return !text.includes('unicode-range') || /U\+0{1,4}-(?:00)?FF/iu.test(text)
}

async function stylesOf(page: Document): Promise<string> {
  const parts: string[] = []
  for (const sheet of page.styleSheets) {
    const rules = [...sheet.cssRules].filter(isNeeded).map((rule) => rule.cssText)
    parts.push(await withFontsInside(rules.join('\n'), sheet.href ?? page.baseURI))
  }
  return parts.join('\n')
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
}

/** A copy of the sheet whose links lead somewhere, and that is fitted to no page. */
function forPhone(sheet: Element): Element {
  const copy = document.importNode(sheet, true)
  for (const fitted of copy.querySelectorAll('.sheet-fit')) {
    fitted.removeAttribute('style')
    fitted.removeAttribute('data-tight')
  }
  makeLinks(copy)
  return copy
}

/** The file's text. `sheet` is the drawn sheet; its pictures are data addresses already. */
export async function sheetFile(sheet: Element, title: string): Promise<string> {
  const css = await stylesOf(document)
  const copy = forPhone(sheet)
  return [
    '<!doctype html>',
    '<html lang="en" data-theme="light" class="sheet-file">',
    '<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light dark"><meta name="format-detection" content="telephone=no">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; font-src data:; style-src 'unsafe-inline'">`,
    `<title>${escaped(title)}</title>`,
    `<style>${css.replaceAll('</', '<\\/')}</style></head>`,
    `<body>${copy.outerHTML}</body></html>`,
    '',
  ].join('\n')
}
