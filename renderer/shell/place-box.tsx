/** The box in the header that moves the map to a town or to coordinates typed in any form. */
import { backToBoard } from '#renderer/state/session/navigation.ts'
import { signal } from '@preact/signals'
import { useEffect, useId, useRef } from 'preact/hooks'
import { flyTo, mapMiddle } from '#renderer/state/session/map-window.ts'
import { focusGone } from '#renderer/part/focus-gone.ts'
import { words } from '#renderer/words/en.ts'
import { type PlaceOffer, type PlaceOffers, offersFor } from './place-search.ts'

const typed = signal('')
const placeOffers = signal<PlaceOffers | null>(null)
const chosen = signal(0)
/** Milliseconds without a key before the gazetteer is asked. */
const PAUSE = 120
let turn = 0
/** The text that a choice has put into the box; null once something is typed. */
let takenText: string | null = null

async function search(text: string): Promise<void> {
  turn += 1
  const mine = turn
  const offers = text.trim() === '' ? null : await offersFor(text.trim(), mapMiddle())
  // An earlier question answered late must not write over the later one's answer.
  if (mine !== turn) return
  placeOffers.value = offers
  chosen.value = 0
}

function close(): void {
  turn += 1
  placeOffers.value = null
}

function go(offer: PlaceOffer): void {
  flyTo(offer.at, offer.zoom)
  backToBoard()
  typed.value = offer.title
  takenText = offer.title
  close()
}

function onKey(event: KeyboardEvent): void {
  const offers = placeOffers.value?.offers ?? []
  if (event.key === 'Escape') {
    if (placeOffers.value !== null) event.stopPropagation()
    close()
  } else if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
    event.preventDefault()
    const step = event.key === 'ArrowDown' ? 1 : -1
    if (offers.length > 0) chosen.value = (chosen.value + step + offers.length) % offers.length
  } else if (event.key === 'Enter' && !event.isComposing) {
    event.preventDefault()
    const offer = offers[chosen.value]
    if (offer !== undefined) go(offer)
    else void search(typed.value)
  }
}

export function PlaceBox() {
  const id = useId()
  const box = useRef<HTMLDivElement>(null)
  const text = typed.value
  useEffect(() => {
    // Set by a choice, the text asks for nothing, though the box still has the focus; typed, it is looked up when the keys rest.
    if (text === takenText || document.activeElement !== box.current?.querySelector('input')) return undefined
    const timer = setTimeout(() => void search(text), PAUSE)
    return () => clearTimeout(timer)
  }, [text])
  const leave = (event: FocusEvent): void => {
    if (focusGone(event)) close()
  }
  const { place } = words.board
  const offers = placeOffers.value
  return (
    <div class="place-box" ref={box} onFocusOut={leave}>
      <input
        id="place-box"
        type="text"
        role="combobox"
        autocomplete="off"
        spellcheck={false}
        aria-label={place.label}
        aria-expanded={offers !== null && offers.offers.length > 0}
        aria-controls={id}
        aria-autocomplete="list"
        aria-activedescendant={offers !== null && offers.offers.length > 0 ? `${id}-${chosen.value}` : undefined}
        placeholder={place.placeholder}
        value={text}
        onInput={(event) => {
          takenText = null
          typed.value = event.currentTarget.value
        }}
        onFocus={(event) => event.currentTarget.select()}
        onKeyDown={onKey}
      />
      <Offers id={id} offers={offers} />
    </div>
  )
}

function Offers({ id, offers }: { id: string; offers: PlaceOffers | null }) {
  const { place } = words.board
  return (
    <div class="place-offers" hidden={offers === null}>
      <div role="listbox" id={id} aria-label={place.label}>
        {(offers?.offers ?? []).map((offer, index) => (
          <div
            key={`${offer.title}-${offer.at.lat}-${offer.at.lon}`}
            id={`${id}-${index}`}
            role="option"
            aria-selected={index === chosen.value}
            tabIndex={-1}
            onMouseDown={(event) => event.preventDefault()}
            onClick={() => go(offer)}
          >
            <strong>{offer.title}</strong> <small>{offer.note}</small>
          </div>
        ))}
      </div>
      <p class="hint" role="status">
        {offers?.message ?? ''}
      </p>
      {offers === null || offers.attribution === '' ? null : <p class="hint">{offers.attribution}</p>}
    </div>
  )
}
