/** Spans of many days as two flat arrays, which go to and from a worker without being copied. */
import type { Span } from '#core/light/crossing.ts'

export interface PackedSpans {
  /** How many spans each day has. */
  readonly counts: Uint16Array
  /** Beginning and end of each span in turn, epoch milliseconds. */
  readonly edges: Float64Array
}

export function packSpans(days: readonly (readonly Span[])[]): PackedSpans {
  return {
    counts: Uint16Array.from(days, (spans) => spans.length),
    edges: Float64Array.from(days.flatMap((spans) => spans.flatMap(({ from, until }) => [from, until]))),
  }
}

export function unpackSpans({ counts, edges }: PackedSpans): Span[][] {
  let place = 0
  return Array.from(counts, (count) =>
    Array.from({ length: count }, () => ({ from: edges[place++] ?? 0, until: edges[place++] ?? 0 })),
  )
}
