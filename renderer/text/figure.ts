/** Figures as people read them: with unit, sensible digits, metric or imperial, and never a minus before nothing. */
import { METRES_PER_FOOT, METRES_PER_INCH, METRES_PER_MILE, type UnitSystem } from '#core/units/length.ts'

/** A space that neither breaks nor stretches. */
const GAP = '\u{a0}'
const MINUS = '\u{2212}'

/** A number with at most so many decimals, trailing zeros dropped unless kept. */
export function rounded(value: number, decimals: number, keepZeros = false): string {
  const text = Math.abs(value).toFixed(decimals)
  const short = keepZeros || decimals === 0 ? text : text.replace(/\.?0+$/u, '')
  return value < 0 && Number(text) !== 0 ? `${MINUS}${short}` : short
}

function decimalsFor(size: number): number {
  if (size >= 99.95) return 0
  return size >= 9.995 ? 1 : 2
}

function sized(value: number, unit: string): string {
  return `${rounded(value, decimalsFor(Math.abs(value)))}${GAP}${unit}`
}

/** A length or distance given in metres. */
export function metres(value: number, units: UnitSystem): string {
  return units === 'imperial' ? feet(value) : metric(value)
}

function metric(value: number): string {
  const size = Math.abs(value)
  if (size === 0) return `0${GAP}m`
  if (size >= 999.5) return sized(value / 1000, 'km')
  if (size >= 0.0995) return sized(value, 'm')
  if (size >= 0.00995) return `${rounded(value * 100, 1)}${GAP}cm`
  return size < 0.00001 ? `under 0.01${GAP}mm` : `${rounded(value * 1000, size < 0.001 ? 2 : 1)}${GAP}mm`
}

function feet(value: number): string {
  const size = Math.abs(value) / METRES_PER_FOOT
  if (size >= 5280) return sized(value / METRES_PER_MILE, 'mi')
  if (size >= 1 || size === 0) return sized(value / METRES_PER_FOOT, 'ft')
  return `${rounded(value / METRES_PER_INCH, size < 1 / 120 ? 3 : 1)}${GAP}in`
}

/** Square feet in an acre (the international acre of 4 840 square yards). */
const FEET_PER_ACRE = 43_560
const ACRES_PER_MILE = 640

/** An area given in square metres: square metres, hectares, square kilometres, or square feet, acres, square miles. */
export function area(value: number, units: UnitSystem): string {
  if (units === 'imperial') {
    const feet = value / METRES_PER_FOOT ** 2
    const acres = feet / FEET_PER_ACRE
    if (acres >= ACRES_PER_MILE) return sized(acres / ACRES_PER_MILE, 'sq mi')
    return acres >= 1 ? sized(acres, 'acres') : sized(feet, 'sq ft')
  }
  if (value >= 999_500) return sized(value / 1e6, 'km²')
  return value >= 9_995 ? sized(value / 1e4, 'ha') : sized(value, 'm²')
}

/** A height above the sea: metres or feet, never in kilometres or miles. */
export function elevation(value: number, units: UnitSystem): string {
  const [size, unit] = units === 'imperial' ? [value / METRES_PER_FOOT, 'ft'] : [value, 'm']
  return `${rounded(size, Math.abs(size) < 100 ? 1 : 0)}${GAP}${unit}`
}

/** Metres as they stand in a field to be edited: the unit's own number, exact to a millimetre or a thousandth of a foot unless told otherwise. */
export function lengthInField(value: number, units: UnitSystem, decimals = 3): string {
  return plainNumber(units === 'imperial' ? value / METRES_PER_FOOT : value, decimals)
}

/** A number for a field: point, no grouping, the keyboard's own minus. */
export function plainNumber(value: number, decimals: number): string {
  return rounded(value, decimals).replace(MINUS, '-')
}

/** The unit in which lengths are typed. */
export function lengthUnit(units: UnitSystem): string {
  return units === 'imperial' ? 'ft' : 'm'
}

/** A focal length or a size on the sensor. */
export function millimetres(value: number): string {
  const size = Math.abs(value)
  return `${rounded(value, size >= 99.95 ? 0 : size >= 1 ? 1 : 3)}${GAP}mm`
}

/** An angle. */
export function degreesText(value: number, decimals = 1): string {
  return `${rounded(value, decimals, true)}°`
}

/** A true bearing, three figures before the point as on a compass card: 064.9°. */
export function bearing(value: number): string {
  const tenths = Math.round(value * 10) % 3600
  return `${(tenths / 10).toFixed(1).padStart(5, '0')}°`
}

/** A share of the frame, as percent. */
export function share(value: number): string {
  const percent = value * 100
  const size = Math.abs(percent)
  if (size > 0 && size < 0.05) return `under 0.1${GAP}%`
  return `${rounded(percent, size >= 9.95 ? 0 : 1)}${GAP}%`
}

/** A share of anything, as percent with so many decimals at most. */
export function percentText(value: number, decimals = 1): string {
  return `${rounded(value * 100, decimals)}${GAP}%`
}

/** An f-number. */
export function aperture(value: number): string {
  return `f/${rounded(value, value >= 9.95 ? 0 : 1)}`
}
