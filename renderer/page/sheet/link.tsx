/** What is a link in the file for the phone alone: on paper and on the sheet's page it is plain text, or not there at all. */

interface LinkProps {
  /** A `geo:`, `tel:` or web address. */
  readonly to: string
  readonly text: string
}

/** The attribute that becomes an address when the file is made. */
export const LINK_ATTRIBUTE = 'data-link'

export function PhoneLink({ to, text }: LinkProps) {
  return (
    <span class="phone-link" {...{ [LINK_ATTRIBUTE]: to }}>
      {text}
    </span>
  )
}

/** Every place marked as a link made one, in a copy of the sheet. */
export function makeLinks(sheet: Element): void {
  for (const place of sheet.querySelectorAll(`[${LINK_ATTRIBUTE}]`)) {
    const link = sheet.ownerDocument.createElement('a')
    link.className = place.className
    link.href = place.getAttribute(LINK_ATTRIBUTE) ?? ''
    link.rel = 'noreferrer'
    link.append(...place.childNodes)
    place.replaceWith(link)
  }
}
