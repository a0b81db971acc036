/** A number as plain decimals for coordinates: no exponent, no negative zero, always a point. */

export function plainDecimal(value: number, decimals: number): string {
  const written = value.toFixed(decimals)
  return /^-0(?:\.0*)?$/u.test(written) ? written.slice(1) : written
}
