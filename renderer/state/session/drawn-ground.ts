/** What the hand is at with drawn ground: which one is chosen, what is being drawn, what the next press takes from the map. */
import { type ReadonlySignal, batch, computed, signal } from '@preact/signals'
import { type DrawnSort, drawnOf } from '#core/record/drawn-ground.ts'
import type { KeepOutKind } from '#core/record/keep-out.ts'
import type { DrawnForm } from '#core/record/stopping-ground.ts'
import { type Drawing, beginDrawing } from './drawing.ts'
import { boardShoot } from '#renderer/state/library/library.ts'
import { beside, page, stopPlacing } from './navigation.ts'

export interface ChosenDrawn {
  readonly sort: DrawnSort
  readonly id: string
}

const wanted = signal<ChosenDrawn | null>(null)

/** The one whose points are shown on the map and whose fields are open in the list; null once it is gone. */
export const chosenDrawn = computed<ChosenDrawn | null>(() => {
  const chosen = wanted.value
  if (chosen === null || boardShoot.value === null) return null
  return drawnOf(boardShoot.value, chosen.sort).some(({ id }) => id === chosen.id) ? chosen : null
})

export function chooseDrawn(chosen: ChosenDrawn | null): void {
  wanted.value = chosen
}

const wantedPoint = signal<{ readonly of: ChosenDrawn; readonly at: number } | null>(null)

/** Which point of the chosen one was taken or reached last; null when none was. */
export const chosenPoint = computed<number | null>(() => {
  const point = wantedPoint.value
  const chosen = chosenDrawn.value
  if (point === null || chosen === null || boardShoot.value === null) return null
  if (point.of.sort !== chosen.sort || point.of.id !== chosen.id) return null
  const drawn = drawnOf(boardShoot.value, chosen.sort).find(({ id }) => id === chosen.id)
  return drawn?.points[point.at] === undefined ? null : point.at
})

/** Chooses a point of the chosen one. */
export function choosePoint(at: number | null): void {
  const chosen = chosenDrawn.peek()
  wantedPoint.value = chosen === null || at === null ? null : { of: chosen, at }
}

export function isChosen(sort: DrawnSort, id: string): boolean {
  return chosenDrawn.value?.sort === sort && chosenDrawn.value.id === id
}

const drawingSignal = signal<Drawing | null>(null)
/** What is being drawn; null when nothing is. */
export const drawing: ReadonlySignal<Drawing | null> = drawingSignal

/** Goes on with what is being drawn, a point more or less. */
export function goOnDrawing(changed: Drawing): void {
  drawingSignal.value = changed
}

const takingAsSignal = signal<DrawnSort | null>(null)
/** As what a press on the map takes a way over; null when none does. */
export const takingAs: ReadonlySignal<DrawnSort | null> = takingAsSignal

const nextKindSignal = signal<KeepOutKind>('carriageway')
/** Kind of the keep-outs that are drawn or brought in next. */
export const nextKind: ReadonlySignal<KeepOutKind> = nextKindSignal

export function chooseNextKind(kind: KeepOutKind): void {
  nextKindSignal.value = kind
}

/** Drawn ground is on the map while the scan's panel is beside it. */
export const drawnShown = computed(() => page.value === 'board' && beside.value === 'scan')

export function startDrawing(sort: DrawnSort, form: DrawnForm): void {
  batch(() => {
    stopPlacing()
    takingAsSignal.value = null
    wanted.value = null
    drawingSignal.value = beginDrawing(sort, form)
  })
}

export function startTaking(sort: DrawnSort): void {
  batch(() => {
    stopPlacing()
    drawingSignal.value = null
    takingAsSignal.value = sort
  })
}

export function stopDrawing(): void {
  batch(() => {
    drawingSignal.value = null
    takingAsSignal.value = null
  })
}
