/** Which page fills the window, what the pointer is about to place. */
import { type ReadonlySignal, signal } from '@preact/signals'

export type PageId = 'board' | 'compare' | 'sheet' | 'shoot' | 'settings' | 'help' | 'days'
const pageSignal = signal<PageId>('board')
export const page: ReadonlySignal<PageId> = pageSignal

export function openPage(id: PageId): void {
  pageSignal.value = id
}

export function backToBoard(): void {
  pageSignal.value = 'board'
}

/** What the next press on the map places; null when the map just pans. */
export type Placing =
  | { readonly what: 'subject' | 'standpoint' | 'parking' }
  | { readonly what: 'landmark'; readonly landmarkId: string }
const placingSignal = signal<Placing | null>(null)
export const placing: ReadonlySignal<Placing | null> = placingSignal

/** The next press on the map places this. */
export function startPlacing(wish: Placing): void {
  placingSignal.value = wish
}

export function stopPlacing(): void {
  placingSignal.value = null
}

const selectedSignal = signal<'subject' | 'standpoint' | 'landmark' | null>(null)
/** The thing that keyboard steps move. */
export const selectedThing: ReadonlySignal<'subject' | 'standpoint' | 'landmark' | null> = selectedSignal

export function selectThing(thing: 'subject' | 'standpoint' | 'landmark' | null): void {
  selectedSignal.value = thing
}

const besideSignal = signal<'answers' | 'scan'>('answers')
/** What stands at the right of the board under the view through the lens: the answers, or the scan. */
export const beside: ReadonlySignal<'answers' | 'scan'> = besideSignal

export function putBeside(panel: 'answers' | 'scan'): void {
  besideSignal.value = panel
}
