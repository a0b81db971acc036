/** A button that takes the place of another takes its focus too: whoever goes by keys is not left nowhere. */
import { useEffect, useRef } from 'preact/hooks'

/** `wanted` false leaves the focus where it is. */
export function useTakenFocus(wanted: boolean): { readonly current: HTMLButtonElement | null } {
  const button = useRef<HTMLButtonElement>(null)
  useEffect(() => {
    // The one before is gone with its focus: the page itself has it now.
    if (wanted && document.activeElement === document.body) button.current?.focus({ preventScroll: true })
    // Only as it appears.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [])
  return button
}
