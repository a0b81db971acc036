/**
 * Walks lines of sight from one eye to cell after cell: over whole blocks of lower ground at a glance, and first to what hid the last cell;
 * longer than others because its inner loops share one line's private fields, and handing those over at each crossing would slow them.
 */
import type { BlockMaxima, MaximaLevel } from './block-maxima.ts'
import type { ElevationGrid } from './elevation-grid.ts'

/** The eye, in cells from the north-west cell centre, and what it looks for. */
export interface SightFrom {
  readonly column: number
  readonly row: number
  /** Metres above the sea. */
  readonly eye: number
  /** Metres above the ground of the cell. */
  readonly targetHeight: number
  /** Drop of far ground in metres by the square of its distance in metres. */
  readonly curve: number
  /** For an eye off the grid: what the ground between it and the grid does to the line to a cell at a height. Absent: nobody knows. */
  readonly outside?: OutsideLook
}

/** 0 hidden, 1 clear, 2 not known. */
export type OutsideLook = (column: number, row: number, height: number) => 0 | 1 | 2

/** Metres by which ground may stand above a line and still only touch it: rounding hides nothing. */
export const GRAZE = 1e-6

/** Nearer to a cell centre than this share of a cell, its neighbour has no say. */
const ON_POST = 1e-9

/**
 * A line runs along its major axis (columns or rows, whichever it crosses more of) from the eye, s cells far; it stands at
 * eye + s (rise + curve s), the curve of the earth being given to the line instead of taken from the ground. It is hidden by the ground
 * where it crosses the lines between neighbouring cell centres, along which the ground is straight.
 */
export class SightWalk {
  readonly #heights: Float32Array
  readonly #grid: ElevationGrid
  readonly #from: SightFrom
  readonly #fine: MaximaLevel
  readonly #coarse: MaximaLevel
  /** By column: the major line that hid the cell of the row before, as 2 * line + (1 when rows are major). */
  readonly #hints: Int32Array
  #hint = -1
  // The line being walked.
  #steep = false
  #way = 1
  #major0 = 0.5
  #minor0 = 0.5
  #lean = 0.5
  #reach = 0.5
  #rise = 0.5
  #curve = 0.5
  #majorStride = 1
  #minorStride = 1
  #minorLast = 0
  #targetMajor = 0
  #targetMinor = 0
  #unsure = false
  #fromOutside = false

  constructor(grid: ElevationGrid, maxima: BlockMaxima, from: SightFrom) {
    this.#grid = grid
    this.#heights = grid.heights
    this.#from = from
    this.#fine = maxima.fine
    this.#coarse = maxima.coarse
    this.#hints = new Int32Array(grid.columns).fill(-1)
  }

  /** 0 hidden, 1 seen, 2 unknown. */
  look(column: number, row: number): 0 | 1 | 2 {
    const target = this.#heights[row * this.#grid.columns + column] as number
    if (Number.isNaN(target)) return 2
    if (!this.#aimAt(column, row, target)) return 1
    if (this.#hiddenAsBefore(column)) return 0
    const hiding = this.#walk()
    if (hiding < 0) return this.#beforeGrid(column, row, target)
    this.#hint = 2 * hiding + (this.#steep ? 1 : 0)
    this.#hints[column] = this.#hint
    return 0
  }

  /** Sets the line; false for the cell on which the eye stands. */
  #aimAt(column: number, row: number, target: number): boolean {
    const from = this.#from
    const grid = this.#grid
    const right = column - from.column
    const down = row - from.row
    const steep = Math.abs(down) > Math.abs(right)
    const run = steep ? down : right
    const reach = Math.abs(run)
    if (reach === 0) return false
    const squared = (right * right + down * down) * grid.cell * grid.cell
    this.#steep = steep
    this.#way = run > 0 ? 1 : -1
    this.#major0 = steep ? from.row : from.column
    this.#minor0 = steep ? from.column : from.row
    this.#lean = (steep ? right : down) / reach
    this.#reach = reach
    this.#curve = (from.curve * squared) / (reach * reach)
    this.#rise = (target + from.targetHeight - from.curve * squared - from.eye) / reach
    this.#majorStride = steep ? grid.columns : 1
    this.#minorStride = steep ? 1 : grid.columns
    this.#minorLast = (steep ? grid.columns : grid.rows) - 1
    this.#targetMajor = steep ? row : column
    this.#targetMinor = steep ? column : row
    this.#unsure = false
    return true
  }

  /** Whether what hid the last cell, or the cell of this column in the last row, hides this one too: it mostly does. */
  #hiddenAsBefore(column: number): boolean {
    const steep = this.#steep ? 1 : 0
    const last = this.#hint
    if (last >= 0 && (last & 1) === steep && this.#hides(last >> 1)) return true
    const above = this.#hints[column] as number
    if (above < 0 || above === last || (above & 1) !== steep || !this.#hides(above >> 1)) return false
    this.#hint = above
    return true
  }

  /** Whether known ground on one major line hides the target. */
  #hides(major: number): boolean {
    const s = (major - this.#major0) * this.#way
    if (!(s > 0 && s < this.#reach)) return false
    const minor = this.#minor0 + this.#lean * s
    // An eye outside the grid: the line isn't over it yet.
    if (minor < 0 || minor > this.#minorLast) return false
    const first = Math.min(Math.floor(minor), this.#minorLast - 1)
    const post = major * this.#majorStride + first * this.#minorStride
    const one = this.#heights[post] as number
    const other = this.#heights[post + this.#minorStride] as number
    const ground = one + (minor - first) * (other - one)
    return ground > this.#from.eye + s * (this.#rise + this.#curve * s) + GRAZE
  }

  /** What is left of a line that nothing on the grid hides: its way up to the grid, for an eye that stands off it. */
  #beforeGrid(column: number, row: number, target: number): 0 | 1 | 2 {
    const before = this.#fromOutside ? (this.#from.outside?.(column, row, target + this.#from.targetHeight) ?? 2) : 1
    return before === 0 ? 0 : this.#unsure ? 2 : before
  }

  /** The major line at or before which the ground hides the target; -1 when nothing known does. */
  #walk(): number {
    const outside = this.#outside()
    const start = this.#major0 + this.#way * outside
    this.#fromOutside = outside > 0
    if (outside > 0) {
      if (Number.isInteger(start) && this.#hides(start)) return start
    }
    return this.#within(this.#coarse, start, this.#targetMajor)
  }

  /** Strip by strip of one size of blocks, closer only where a strip isn't cleared at a glance. Written for speed: it is most of the work. */
  #within(level: MaximaLevel, from: number, to: number): number {
    const { span, heights, unknown } = level
    const way = this.#way
    const major0 = this.#major0
    const lean = this.#lean
    const rise = this.#rise
    const curve = this.#curve
    const eye = this.#from.eye
    const steep = this.#steep
    const minorStart = this.#minor0
    const stride = steep ? 1 : level.columns
    const stripStride = steep ? level.columns : 1
    const last = (steep ? level.columns : level.rows) - 1
    const blocks = 1 / span
    // A parabola sags below the lower of its ends by no more than this.
    const sag = curve > 0 ? curve * span * span * 0.25 : 0
    let major = from
    let s = (from - major0) * way
    let height = eye + s * (rise + curve * s)
    let minor = minorStart + lean * s
    while (major !== to) {
      const strip = way > 0 ? Math.floor(major * blocks) : Math.ceil(major * blocks) - 1
      const edge = way > 0 ? (strip + 1) * span : strip * span
      const end = way > 0 ? (edge < to ? edge : to) : edge > to ? edge : to
      s = (end - major0) * way
      const endHeight = eye + s * (rise + curve * s)
      const endMinor = minorStart + lean * s
      // Truncation takes a rounding below the first block into it.
      const low = ((lean > 0 ? minor : endMinor) * blocks) | 0
      const high = ((lean > 0 ? endMinor : minor) * blocks) | 0
      const one = strip * stripStride + (low < last ? low : last) * stride
      const other = strip * stripStride + (high < last ? high : last) * stride
      const lowest = (height < endHeight ? height : endHeight) - sag
      let cleared = (heights[one] as number) <= lowest && (heights[other] as number) <= lowest
      if (unknown !== null && cleared && !this.#unsure && (unknown[one] === 1 || unknown[other] === 1)) {
        // Nothing known at all: no need to look closer.
        if (heights[one] === -Infinity && heights[other] === -Infinity) this.#unsure = true
        else cleared = false
      }
      if (!cleared) {
        const hiding = level === this.#coarse ? this.#within(this.#fine, major, end) : this.#hidesBetween(major, end)
        if (hiding >= 0) return hiding
      }
      major = end
      height = endHeight
      minor = endMinor
    }
    return -1
  }

  /** Cells along the major axis before the line comes over the grid; 0 when the eye stands over it. */
  #outside(): number {
    const { columns, rows } = this.#grid
    const majorLast = (this.#steep ? rows : columns) - 1
    const alongMajor = this.#way > 0 ? -this.#major0 : this.#major0 - majorLast
    const alongMinor =
      this.#lean > 0 ? -this.#minor0 / this.#lean : this.#lean < 0 ? (this.#minorLast - this.#minor0) / this.#lean : 0
    return Math.max(0, alongMajor, alongMinor)
  }

  /** Crossing by crossing from one cell of the major axis (left out) to another: the major line at or before which ground hides. */
  #hidesBetween(from: number, to: number): number {
    const heights = this.#heights
    const way = this.#way
    const [major0, minor0, lean, rise, curve] = [this.#major0, this.#minor0, this.#lean, this.#rise, this.#curve]
    const [majorStride, minorStride] = [this.#majorStride, this.#minorStride]
    const [lastPair, targetMajor, targetMinor] = [this.#minorLast - 1, this.#targetMajor, this.#targetMinor]
    const eye = this.#from.eye + GRAZE
    const onePerLean = lean === 0 ? 0 : 1 / lean
    let major = (way > 0 ? Math.floor(from) + 1 : Math.ceil(from) - 1) | 0
    const stop = (to + way) | 0
    let minorBefore = minor0 + lean * ((from - major0) * way)
    for (; major !== stop; major = (major + way) | 0) {
      const s = (major - major0) * way
      const minor = minor0 + lean * s
      const pair = minor | 0
      const met = lean > 0 ? pair : Math.ceil(minor) | 0
      if ((lean > 0 ? met > minorBefore : met < minorBefore) && met !== targetMinor) {
        const across = (met - minor0) * onePerLean
        const first = way > 0 ? (major - 1) | 0 : major
        const share = major0 + way * across - first
        const post = (Math.imul(first, majorStride) + Math.imul(met, minorStride)) | 0
        const one = heights[post] as number
        const other = heights[post + majorStride] as number
        const line = eye + across * (rise + curve * across)
        const ground = one + share * (other - one)
        if (!(ground <= line) && (ground > line || this.#knownAbove(one, other, share, line))) return major
      }
      if (major !== targetMajor) {
        const first = pair < lastPair ? pair : lastPair
        const post = (Math.imul(major, majorStride) + Math.imul(first, minorStride)) | 0
        const one = heights[post] as number
        const other = heights[post + minorStride] as number
        const line = eye + s * (rise + curve * s)
        const ground = one + (minor - first) * (other - one)
        if (!(ground <= line) && (ground > line || this.#knownAbove(one, other, minor - first, line))) return major
      }
      minorBefore = minor
    }
    return -1
  }

  /** A crossing beside unknown ground is as high as its known post; only a post exactly on the line leaves no doubt. */
  #knownAbove(one: number, other: number, share: number, line: number): boolean {
    const alone = share < ON_POST ? one : share > 1 - ON_POST ? other : Number.NaN
    if (!Number.isNaN(alone)) return alone > line
    this.#unsure = true
    return (Number.isNaN(one) ? other : one) > line
  }
}
