/** A button among those of the map that opens a small panel of choices beside it. */
import type { ComponentType } from 'preact'
import { useEffect, useId, useRef, useState } from 'preact/hooks'

interface MapPopoverProps {
  readonly label: string
  /** The drawing on the button, on a grid of 16. */
  readonly path: string
  /** Whether something other than the usual is chosen in it. */
  readonly on: boolean
  /** Where it stands. */
  readonly place: 'ground-menu' | 'source-menu'
  /** What is in it, drawn while it is open. */
  readonly Panel: ComponentType
}

/** Closes on Escape, and when something outside is pressed. */
export function MapPopover({ label, path, on, place, Panel }: MapPopoverProps) {
  const id = useId()
  const [open, setOpen] = useState(false)
  const holder = useRef<HTMLDivElement>(null)
  const button = useRef<HTMLButtonElement>(null)
  useEffect(() => {
    if (!open) return undefined
    holder.current?.querySelector<HTMLInputElement>('input:checked')?.focus()
    const onPress = (event: Event): void => {
      if (event.target instanceof Node && holder.current?.contains(event.target) !== true) setOpen(false)
    }
    document.addEventListener('pointerdown', onPress, true)
    return () => document.removeEventListener('pointerdown', onPress, true)
  }, [open])
  return (
    <div
      ref={holder}
      class={`map-over map-popover ${place}`}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || !open) return
        event.stopPropagation()
        setOpen(false)
        button.current?.focus()
      }}
    >
      <button
        ref={button}
        type="button"
        aria-label={label}
        title={label}
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        class={on ? 'on' : ''}
        onClick={() => setOpen(!open)}
      >
        <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
          <path d={path} />
        </svg>
      </button>
      {open ? (
        <div id={id} class="popover-panel">
          <Panel />
        </div>
      ) : null}
    </div>
  )
}
