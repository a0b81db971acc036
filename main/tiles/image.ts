/** Owns what passes for a tile's picture: a PNG, JPEG or WebP by its first bytes, whatever its header says. */

export type ImageType = 'image/png' | 'image/jpeg' | 'image/webp'

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a] as const
const JPEG = [0xff, 0xd8, 0xff] as const
const RIFF = [0x52, 0x49, 0x46, 0x46] as const
const WEBP = [0x57, 0x45, 0x42, 0x50] as const

/** The type the bytes themselves declare, null when they are none of the three. */
export function imageTypeOf(body: Uint8Array): ImageType | null {
  if (holds(body, PNG, 0)) return 'image/png'
  if (holds(body, JPEG, 0)) return 'image/jpeg'
  if (holds(body, RIFF, 0) && holds(body, WEBP, 8)) return 'image/webp'
  return null
}

function holds(body: Uint8Array, signature: readonly number[], offset: number): boolean {
  return signature.every((byte, index) => body[offset + index] === byte)
}
