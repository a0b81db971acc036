/** What a demand begins with when it is first wished, and the named views of the subject. */
import { type ScanWishKind, type ScanWishes, USUAL_SCAN_WISHES } from '#core/record/scan-wishes.ts'

export type DemandOf<Kind extends ScanWishKind> = NonNullable<ScanWishes[Kind]>

const WISH = { must: false, weight: 3 } as const
const { subjectFill, landmarkFill, landmarkWhole, landmarkShown } = USUAL_SCAN_WISHES

/** Degrees off the subject's front (common practice, no source). */
export const VIEW_PRESETS = {
  front: { least: 25, most: 65 },
  side: { least: 75, most: 105 },
  rear: { least: 115, most: 155 },
} as const
export type ViewPreset = keyof typeof VIEW_PRESETS

export const DEMAND_START: { readonly [Kind in ScanWishKind]: DemandOf<Kind> } = {
  subjectFill,
  landmarkFill,
  landmarkWhole,
  landmarkPlace: { ...WISH, where: 'beside', gap: 0.02 },
  subjectView: { ...WISH, ...VIEW_PRESETS.front },
  landmarkShown,
  softness: { ...WISH, least: 0.002, most: 0.02 },
  light: WISH,
  parking: { ...WISH, within: 500 },
}

/** The named view of a band; null when it is somebody's own. */
export function presetOf(band: { readonly least: number; readonly most: number }): ViewPreset | null {
  const names = Object.keys(VIEW_PRESETS) as ViewPreset[]
  return names.find((name) => VIEW_PRESETS[name].least === band.least && VIEW_PRESETS[name].most === band.most) ?? null
}
