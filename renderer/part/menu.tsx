/** A button that opens a list of things to do; moved through by the arrow keys, left by Escape or by going elsewhere. */
import type { ComponentChildren } from 'preact'
import { useEffect, useId, useRef, useState } from 'preact/hooks'
import { focusGone } from './focus-gone.ts'
import { Icon } from './icon.tsx'

export interface MenuEntry {
  readonly text: string
  /** Its keys as a person reads them. */
  readonly keys?: string
  /** A line above it, with a heading where there is one to say. */
  readonly apart?: string | true
  readonly onPress: () => unknown
}

interface MenuProps {
  readonly label: string
  /** Asked only while they are shown: most of the time nobody looks. */
  readonly entries: () => readonly MenuEntry[]
  /** Opens above its button, which stands at the window's foot. */
  readonly upward?: boolean
  readonly children: ComponentChildren
}

const STEPS: Readonly<Record<string, (at: number, count: number) => number>> = {
  ArrowDown: (at, count) => (at + 1) % count,
  ArrowUp: (at, count) => (at - 1 + count) % count,
  Home: () => 0,
  End: (_, count) => count - 1,
}

export function Menu({ label, entries, upward = false, children }: MenuProps) {
  const id = useId()
  const box = useRef<HTMLDivElement>(null)
  const [open, setOpen] = useState(false)
  const items = (): HTMLElement[] => [...(box.current?.querySelectorAll<HTMLElement>('[role=menuitem]') ?? [])]
  useEffect(() => {
    if (open) items()[0]?.focus()
  }, [open])
  const close = (): void => {
    setOpen(false)
    box.current?.querySelector<HTMLElement>('button')?.focus()
  }
  const onKey = (event: KeyboardEvent): void => {
    if (!open) {
      if (event.key !== 'ArrowDown') return
      event.preventDefault()
      return setOpen(true)
    }
    if (event.key === 'Escape') {
      event.stopPropagation()
      return close()
    }
    const step = STEPS[event.key]
    if (step === undefined) return
    event.preventDefault()
    const all = items()
    all[step(all.indexOf(document.activeElement as HTMLElement), all.length)]?.focus()
  }
  const leave = (event: FocusEvent): void => {
    if (focusGone(event)) setOpen(false)
  }
  return (
    <div class={upward ? 'menu menu-upward' : 'menu'} ref={box} onKeyDown={onKey} onFocusOut={leave}>
      <button
        type="button"
        class="menu-button"
        aria-label={label}
        aria-haspopup="menu"
        aria-expanded={open}
        aria-controls={id}
        onClick={() => setOpen(!open)}
      >
        {children} <Icon name="menu" />
      </button>
      <div class="menu-list" id={id} role="menu" aria-label={label} hidden={!open}>
        {open
          ? entries().map((entry) => (
              <MenuItem
                key={entry.text}
                entry={entry}
                onPress={() => {
                  close()
                  entry.onPress()
                }}
              />
            ))
          : null}
      </div>
    </div>
  )
}

function MenuItem({ entry, onPress }: { readonly entry: MenuEntry; readonly onPress: () => void }) {
  const { text, keys, apart } = entry
  return (
    <>
      {apart === undefined ? null : (
        <div class="menu-apart" role="presentation">
          {apart === true ? '' : apart}
        </div>
      )}
      <button type="button" role="menuitem" tabIndex={-1} onClick={onPress}>
        <span class="menu-text">{text}</span>
        {keys === undefined ? null : (
          <span class="menu-keys" aria-hidden="true">
            {keys}
          </span>
        )}
      </button>
    </>
  )
}
