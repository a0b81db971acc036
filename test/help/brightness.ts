/** How bright a colour is and how well it stands out, by the formula of the web's accessibility guidelines (WCAG 2, relative luminance). */

interface Screen {
  readonly red: number
  readonly green: number
  readonly blue: number
}

function linear(value: number): number {
  const share = value / 255
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
}

export function brightnessOf({ red, green, blue }: Screen): number {
  return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue)
}

/** From 1 to 21. */
export function contrastOf(one: Screen, other: Screen): number {
  const [a, b] = [brightnessOf(one), brightnessOf(other)]
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
}
