/** Leads to the part of the settings that somebody was told of. */
import { openPage } from '#renderer/state/session/navigation.ts'
import { whenDrawn } from '#renderer/state/session/when-drawn.ts'

/** Ids of the parts on the page. */
export const SETTINGS_PLACES = { map: 'settings-map', ground: 'settings-ground' } as const

export function openSettings(place: keyof typeof SETTINGS_PLACES): void {
  openPage('settings')
  whenDrawn(`#${SETTINGS_PLACES[place]}`, (part) => {
    part.scrollIntoView()
    part.querySelector<HTMLElement>('input, button')?.focus({ preventScroll: true })
  })
}
