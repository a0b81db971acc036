/** How one gets there and whom to ask, in words; what nobody noted is told as that. */
import { dateText } from '#core/time/date-text.ts'
import type { Access, Permission } from '#core/record/spot.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { spotWords } from '#renderer/words/en-spot.ts'

/** "6 min on foot, grass track, wet in the dip." */
export function accessText({ walkMinutes, surface, parking }: Access): string {
  const said = [
    walkMinutes === null ? sheetWords.noWalk : sheetWords.walk(String(walkMinutes)),
    surface.trim() === '' ? sheetWords.noSurface : surface.trim(),
    ...(parking === null ? [sheetWords.noParking] : []),
  ].join(', ')
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}${said.endsWith('.') ? '' : '.'}`
}

/** The contact as noted, then the state in the user's own choice of word: the sheet itself allows nothing. */
export function permissionTexts({ state, whom, until }: Permission): string[] {
  const nobody = whom.trim() === ''
  return [
    ...(nobody && state === 'not-needed' ? [] : [nobody ? sheetWords.noContact : whom.trim()]),
    sheetWords.noted(spotWords.permissions[state]),
    ...(until === null ? (state === 'granted' ? [sheetWords.noEnd] : []) : [sheetWords.until(dateText(until))]),
  ]
}
