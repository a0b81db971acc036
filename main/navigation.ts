/** Where a window may go: pages of ours, and in the user's browser a short list of sites named here. */

export const APP_SCHEME = 'app'
export const APP_HOST = 'standpoint'
export const APP_ORIGIN = `${APP_SCHEME}://${APP_HOST}`

/** Sites whose data or licence the program credits; exact origins, nothing typed by a user or read from a file. */
export const CREDITED_SITES: readonly string[] = [
  'https://www.openstreetmap.org',
  'https://opentopomap.org',
  'https://s2maps.eu',
  'https://www.usgs.gov',
  'https://basemap.nationalmap.gov',
  'https://www.geonames.org',
  'https://www.naturalearthdata.com',
  'https://creativecommons.org',
  'https://github.com',
]

/**
 * Whether an address is a page of ours. Protocol and host are compared, never `origin`: in Node every address of a
 * custom scheme has the origin "null".
 */
export function isOwnPage(address: string): boolean {
  const url = URL.parse(address)
  return (
    url !== null &&
    url.protocol === `${APP_SCHEME}:` &&
    url.host === APP_HOST &&
    url.username === '' &&
    url.password === ''
  )
}

/** Whether an address may be handed to the user's browser. */
export function mayOpenOutside(address: string): boolean {
  const url = URL.parse(address)
  return url !== null && url.username === '' && url.password === '' && CREDITED_SITES.includes(url.origin)
}

/** Whether the page's session may ask for an address at all: its own, and the bytes it made itself. */
export function mayRequest(address: string, development: boolean): boolean {
  if (isOwnPage(address)) return true
  if (address.startsWith(`blob:${APP_ORIGIN}/`) || address.startsWith('data:')) return true
  return development && address.startsWith('devtools://')
}
