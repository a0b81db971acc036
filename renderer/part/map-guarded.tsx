/** The parts over the map, each kept apart from the others' faults; what cannot be drawn of them is told once, in the map's middle. */
import { signal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { useCallback, useId } from 'preact/hooks'
import { type PartFault, Guarded, NotDrawn } from './guarded.tsx'
import { notDrawnWords } from '#renderer/words/en-not-drawn.ts'

const { onMap } = notDrawnWords.parts

/** The faults that last, by the part they struck. */
const faults = signal<ReadonlyMap<string, PartFault>>(new Map())

export function MapGuarded({ children }: { readonly children: ComponentChildren }) {
  const id = useId()
  const onFault = useCallback(
    (fault: PartFault | null): void => {
      const next = new Map(faults.peek())
      if (fault === null) next.delete(id)
      else next.set(id, fault)
      faults.value = next
    },
    [id],
  )
  return (
    <Guarded part={onMap} onFault={onFault}>
      {children}
    </Guarded>
  )
}

export function MapFaults() {
  const all = [...faults.value.values()]
  const [first] = all
  if (first === undefined) return null
  // Mostly they have one cause.
  const again = (): void => {
    for (const fault of all) fault.again()
  }
  return (
    <div class="map-over map-not-drawn">
      <NotDrawn part={onMap} fault={{ reason: first.reason, again }} />
    </div>
  )
}
