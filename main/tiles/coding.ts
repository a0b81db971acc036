/** Owns how the body of a tile's answer may be packed: not at all, or once by gzip, br or deflate; and its bounded unpacking. */
import { exhaustive } from '#core/exhaustive.ts'
import { promisify } from 'node:util'
import { brotliDecompress, gunzip, inflate, inflateRaw } from 'node:zlib'

/** `null`: packed in a way that is not taken. More than one coding is a way to make bombs, and no tile server's. */
export type Coding = 'none' | 'gzip' | 'br' | 'deflate' | null

/** What is asked for. */
export const CODINGS_TAKEN = 'gzip, deflate, br'

export function codingOf(header: string | null): Coding {
  const name = (header ?? '').trim().toLowerCase()
  if (name === '' || name === 'identity') return 'none'
  if (name === 'gzip' || name === 'x-gzip') return 'gzip'
  return name === 'br' || name === 'deflate' ? name : null
}

/** `too-large`: more would come out than allowed. `broken`: no body packed in that way. */
export type DecodedBody =
  | { readonly ok: true; readonly body: Buffer }
  | { readonly ok: false; readonly why: 'too-large' | 'broken' }

export async function unpacked(body: Buffer, coding: Exclude<Coding, null>, most: number): Promise<DecodedBody> {
  try {
    return { ok: true, body: await unpack(body, coding, most) }
  } catch (error) {
    const tooLarge = error instanceof Error && 'code' in error && error.code === 'ERR_BUFFER_TOO_LARGE'
    return { ok: false, why: tooLarge ? 'too-large' : 'broken' }
  }
}

async function unpack(body: Buffer, coding: Exclude<Coding, null>, most: number): Promise<Buffer> {
  const bound = { maxOutputLength: most }
  switch (coding) {
    case 'none':
      return body
    case 'gzip':
      return promisify(gunzip)(body, bound)
    case 'br':
      return promisify(brotliDecompress)(body, bound)
    case 'deflate':
      // Some servers leave out zlib's two bytes of header, against RFC 9110, 8.4.1.2: the low half of its first byte is 8.
      return ((body[0] ?? 0) & 0x0f) === 8 ? promisify(inflate)(body, bound) : promisify(inflateRaw)(body, bound)
    default:
      return exhaustive(coding)
  }
}
