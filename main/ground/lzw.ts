/** Owns the unpacking of LZW as TIFF has it (TIFF 6.0, section 13), into as many bytes as were promised and no more. */

const CLEAR = 256
const END = 257
const MOST_CODES = 4096

/**
 * Stops at the promised size, at the end mark or where the bytes end. Own code: the library's own does not end when a damaged
 * file goes on after its table is full.
 */
export function unpackLzw(packed: Uint8Array, size: number): Uint8Array {
  const out = new Uint8Array(size)
  const prefix = new Uint16Array(MOST_CODES)
  const last = new Uint8Array(MOST_CODES)
  const lengths = new Uint16Array(MOST_CODES).fill(1, 0, CLEAR)
  for (let code = 0; code < CLEAR; code++) last[code] = code
  let [next, bits, before, filled] = [END + 1, 9, -1, 0]
  let [held, heldBits, at] = [0, 0, 0]
  while (filled < size) {
    while (heldBits < bits && at < packed.length) {
      held = ((held << 8) | (packed[at++] ?? 0)) & 0xff_ff_ff
      heldBits += 8
    }
    if (heldBits < bits) break
    heldBits -= bits
    const code = (held >> heldBits) & ((1 << bits) - 1)
    if (code === END) break
    if (code === CLEAR) {
      next = END + 1
      bits = 9
      before = -1
      continue
    }
    if (code > next || (code === next && before < 0) || (before < 0 && code > END)) throw new Error('damaged')
    // A code that is only just being made: what was before it and that one's own first byte.
    const known = code === next ? before : code
    const length = (lengths[known] ?? 0) + (code === next ? 1 : 0)
    const first = write(out, filled, known, prefix, last, lengths)
    if (code === next && filled + length <= size) out[filled + length - 1] = first
    filled = Math.min(size, filled + length)
    if (before >= 0 && next < MOST_CODES) {
      prefix[next] = before
      last[next] = first
      lengths[next] = (lengths[before] ?? 0) + 1
      next += 1
    }
    // One code early, as TIFF's writers do.
    if (next >= (1 << bits) - 1 && bits < 12) bits += 1
    before = code
  }
  return out.subarray(0, filled)
}

/** Writes what a code stands for from its last byte backward; gives its first byte. */
function write(
  out: Uint8Array,
  from: number,
  code: number,
  prefix: Uint16Array,
  last: Uint8Array,
  lengths: Uint16Array,
): number {
  let one = code
  for (let place = from + (lengths[code] ?? 1) - 1; place > from; place--) {
    if (place < out.length) out[place] = last[one] ?? 0
    one = prefix[one] ?? 0
  }
  const first = last[one] ?? 0
  out[from] = first
  return first
}
