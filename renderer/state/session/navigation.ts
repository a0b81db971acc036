/** Which page fills the window, which spots are picked for side by side, what the pointer is about to place. */
import { signal } from '@preact/signals'

export type Page = 'board' | 'compare' | 'sheet' | 'shoot' | 'settings' | 'help' | 'days'
export const page = signal<Page>('board')

/** As many spots stand side by side at most. */
export const MOST_PICKED = 4
/** Spots picked for side by side. */
export const picked = signal<readonly string[]>([])

/** What the next press on the map places; null when the map just pans. */
export type Placing =
  | { readonly what: 'subject' | 'standpoint' | 'parking' }
  | { readonly what: 'landmark'; readonly landmarkId: string }
export const placing = signal<Placing | null>(null)

/** The thing that keyboard steps move. */
export const selected = signal<'subject' | 'standpoint' | 'landmark' | null>(null)

/** What stands at the right of the board under the view through the lens: the answers, or the scan. */
export const beside = signal<'answers' | 'scan'>('answers')
