/** Colours of the picture as numbers, mixed as paints are named: the same in every pen and on every thread. */

/** Red, green, blue 0..255 in sRGB, and how much it covers, 0..1. */
export interface Colour {
  readonly red: number
  readonly green: number
  readonly blue: number
  readonly cover: number
}

/** From `#rgb`, `#rrggbb` or `#rrggbbaa`. */
export function colour(hex: string): Colour {
  const digits = hex.slice(1)
  const long = digits.length === 3 ? digits.replaceAll(/./gu, (digit) => digit + digit) : digits
  const pair = (at: number): number => Number.parseInt(long.slice(at, at + 2), 16)
  return { red: pair(0), green: pair(2), blue: pair(4), cover: long.length > 6 ? pair(6) / 255 : 1 }
}

/** From one colour a share, 0..1, of the way to another; both cover wholly. */
export function mixed(from: Colour, to: Colour, share: number): Colour {
  const between = (one: number, other: number): number => one + (other - one) * share
  return {
    red: between(from.red, to.red),
    green: between(from.green, to.green),
    blue: between(from.blue, to.blue),
    cover: 1,
  }
}

/** A colour seen by a light that is itself a colour, white by full day: hue and order of brightness stay what they are. */
export function glazed(one: Colour, light: Colour): Colour {
  return {
    red: (one.red * light.red) / 255,
    green: (one.green * light.green) / 255,
    blue: (one.blue * light.blue) / 255,
    cover: one.cover,
  }
}

/** The colour with only a share of its cover. */
export function translucent(one: Colour, share: number): Colour {
  return { ...one, cover: one.cover * share }
}

/** As a style sheet, an SVG attribute and a canvas read it. */
export function colourText({ red, green, blue, cover }: Colour): string {
  const [r, g, b] = [red, green, blue].map(Math.round)
  return cover >= 1 ? `rgb(${r} ${g} ${b})` : `rgb(${r} ${g} ${b} / ${Number(cover.toFixed(4))})`
}
