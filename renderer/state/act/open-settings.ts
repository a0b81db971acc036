/** Leads to the part of the settings that somebody was told of. */
import { openPage } from '#renderer/state/session/navigation.ts'

/** Ids of the parts on the page. */
export const SETTINGS_PLACES = { map: 'settings-map', ground: 'settings-ground' } as const

export function openSettings(place: keyof typeof SETTINGS_PLACES): void {
  openPage('settings')
  // The page has to be drawn first.
  requestAnimationFrame(() => {
    const part = document.getElementById(SETTINGS_PLACES[place])
    part?.scrollIntoView()
    part?.querySelector<HTMLElement>('input, button')?.focus({ preventScroll: true })
  })
}
