/** One part of the sheet under its title. */
import type { ComponentChildren } from 'preact'

interface PartProps {
  readonly title: string
  /** Ends its class, by which the style knows it. */
  readonly name: string
  readonly children: ComponentChildren
}

export function SheetPart({ title, name, children }: PartProps) {
  return (
    <section class={`sheet-part sheet-${name}`}>
      <h2>{title}</h2>
      {children}
    </section>
  )
}
