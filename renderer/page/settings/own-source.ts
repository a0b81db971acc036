/** A map source of the user's own, as typed: what is asked of its fields, and the source when all are good. */
import type { Settings } from '#app/contract/settings.ts'
import { type Result, done, failed } from '#core/result.ts'
import { parseFigure } from '#core/units/figure.ts'
import { words } from '#renderer/words/en.ts'

export type OwnSource = Settings['ownSources'][number]

export interface OwnSourceTyped {
  readonly name: string
  readonly template: string
  readonly maxNativeZoom: string
  readonly attribution: string
  readonly attributionLink: string
}

export const EMPTY_SOURCE: OwnSourceTyped = {
  name: '',
  template: '',
  maxNativeZoom: '19',
  attribution: '',
  attributionLink: '',
}

/** Whether anything was typed that leaving would lose. */
export function isBegun(typed: OwnSourceTyped): boolean {
  return (Object.keys(EMPTY_SOURCE) as (keyof OwnSourceTyped)[]).some((name) => typed[name] !== EMPTY_SOURCE[name])
}

/** The finer rules (no private addresses, no odd ports) are kept by the fetching side, which alone can know them. */
export function isTemplate(template: string): boolean {
  const holds = ['{z}', '{x}', '{y}'].every((part) => template.includes(part))
  return template.startsWith('https://') && holds && template.length <= 2_000
}

/** The source, or the sentence for the first field that is not good, with that field's name as the reason. */
export function readOwnSource(typed: OwnSourceTyped, id: string): Result<OwnSource, keyof OwnSourceTyped> {
  const say = words.board.settingsPage
  const name = typed.name.trim()
  const template = typed.template.trim()
  const attribution = typed.attribution.trim()
  const attributionLink = typed.attributionLink.trim()
  const zoom = parseFigure(typed.maxNativeZoom)
  if (name === '' || name.length > 200) return failed('name', say.badName)
  if (!isTemplate(template)) return failed('template', say.badTemplate)
  if (!zoom.ok || !Number.isInteger(zoom.value) || zoom.value < 0 || zoom.value > 24) {
    return failed('maxNativeZoom', say.badZoom)
  }
  if (attribution.length > 1_000) return failed('attribution', say.tooLong(1_000))
  if (attributionLink !== '' && !attributionLink.startsWith('https://')) return failed('attributionLink', say.badLink)
  if (attributionLink.length > 2_000) return failed('attributionLink', say.tooLong(2_000))
  return done({ id, name, template, maxNativeZoom: zoom.value, attribution, attributionLink })
}
