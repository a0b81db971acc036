/** The first steps of an empty shoot, as far as they have gone in this sitting: which is open, which were passed, whether they were closed. */
import { computed, signal } from '@preact/signals'
import { shoot, spots, tryOut } from '#renderer/state/library/library.ts'

export const FIRST_STEPS = ['subject', 'landmark', 'spot'] as const
export type FirstStep = (typeof FIRST_STEPS)[number]

/** What was done with the steps of one shoot. */
interface Gone {
  readonly passed: readonly FirstStep[]
  /** Opened by hand; null for the first that is left. */
  readonly opened: FirstStep | null
  readonly closed: boolean
}

const NOTHING: Gone = { passed: [], opened: null, closed: false }
const goneSignal = signal<ReadonlyMap<string, Gone>>(new Map())

const gone = computed<Gone>(() => goneSignal.value.get(shoot.value?.id ?? '') ?? NOTHING)

function change(part: Partial<Gone>): void {
  const id = shoot.peek()?.id
  if (id !== undefined) goneSignal.value = new Map(goneSignal.peek()).set(id, { ...gone.peek(), ...part })
}

/** A shoot without any spot: with one, its board says what comes next. */
const begins = computed(() => shoot.value !== null && spots.value.length === 0 && tryOut.value === null)

/** Whether the steps can be brought back. */
export const stepsClosed = computed(() => begins.value && gone.value.closed)

export interface StepsShown {
  readonly open: FirstStep
  readonly done: readonly FirstStep[]
}

/** What of the steps is to be seen; null while there is nothing to lead to. */
export const stepsShown = computed<StepsShown | null>(() => {
  if (!begins.value || gone.value.closed) return null
  const { passed, opened } = gone.value
  const placed = (shoot.value?.landmarks ?? []).length > 0
  const done = FIRST_STEPS.filter((step) => passed.includes(step) || (step === 'landmark' && placed))
  const left = FIRST_STEPS.find((step) => !done.includes(step)) ?? 'spot'
  return { open: opened ?? left, done }
})

export function openStep(step: FirstStep): void {
  change({ opened: step })
}

/** The step is done or skipped: the next one that is left opens. Skipping the last closes the steps. */
export function stepPassed(step: FirstStep): void {
  if (step === 'spot') return closeSteps()
  change({ passed: [...gone.peek().passed, step], opened: null })
}

export function closeSteps(): void {
  change({ closed: true })
}

export function bringStepsBack(): void {
  change(NOTHING)
}
