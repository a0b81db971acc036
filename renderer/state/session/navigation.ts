/** Which page fills the window, what the pointer is about to place. */
import type { CommandId } from '#app/commands.ts'
import { type ReadonlySignal, signal } from '@preact/signals'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { LandmarkKind } from '#core/scene/landmark.ts'

/** Every page with the menu command that opens it; null where none does. */
export const PAGE_COMMANDS = {
  board: null,
  compare: 'side-by-side',
  days: 'best-days',
  shoot: 'edit-shoot',
  sheet: 'print-sheet',
  settings: 'settings',
  help: 'help',
} as const satisfies Readonly<Record<string, CommandId | null>>

export type PageId = keyof typeof PAGE_COMMANDS
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
  /** One that is made only once its place is known; of a span the first end, once that has been placed. */
  | { readonly what: 'new-landmark'; readonly kind: LandmarkKind; readonly from: LatLon | null }
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
