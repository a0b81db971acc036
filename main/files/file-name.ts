/** File names from what a person typed: a name every file system takes. */

/** The text as a file's name with the given ending; `fallback` when nothing usable is left of it. */
export function fileName(text: string, fallback: string, ending: string): string {
  const plain = text
    .normalize('NFC')
    .replaceAll(/[\p{Cc}\p{Cf}\\/:*?"<>|]+/gu, ' ')
    .replaceAll(/\s+/g, ' ')
    .replaceAll(/^[\s.]+|[\s.]+$/g, '')
  const short = Array.from(plain).slice(0, 60).join('').trim()
  if (short === '') return fallback + ending
  // Names Windows keeps for devices, with any ending.
  return (/^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i.test(short) ? `${fallback} ${short}` : short) + ending
}
