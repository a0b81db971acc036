/** The clock of the place: always shown, chosen from a list above the strip, kept with the shoot. */
import { computed } from '@preact/signals'
import { useEffect, useId, useRef, useState } from 'preact/hooks'
import { type Zone, formatOffset, zoneName } from '#core/time/civil.ts'
import { steady } from '#renderer/job/steady.ts'
import { focusGone } from '#renderer/part/focus-gone.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { changeShoot } from '#renderer/state/library/history.ts'
import { shoot } from '#renderer/state/library/library.ts'
import { settle } from '#renderer/state/act/live-change.ts'
import { zone, zonesAt, zonesOnOffer } from '#renderer/state/plan/zone.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { stripPlace } from './strip-signals.ts'
import { type ZoneOffer, zoneOffers } from './zone-offers.ts'

function chooseZone(chosen: Zone | null): void {
  settle()
  const open = shoot.peek()
  if (open !== null && open.zone !== chosen) void changeShoot(lightWords.edit.zone, { ...open, zone: chosen })
}

/** The zones in use at the place: null while they are looked up, none when they could not be found. */
function zonesHere(): readonly Zone[] | null {
  return stripPlace.value === null ? null : zonesAt(stripPlace.value)
}

/** What is particular about the clock here; null when nothing is. */
function remark(): { readonly short: string; readonly full: string } | null {
  const here = zonesHere()
  const own = plan.value?.shoot.zone ?? null
  if (here !== null && here.length > 1) return { short: stripWords.twoClocks, full: lightWords.zoneBoth }
  if (here !== null && here.length === 0 && own === null)
    return { short: stripWords.zoneNotFound, full: lightWords.zoneUnknown }
  return null
}

/** A zone of the open sea is named by its offset alone. */
function clockName(named: Zone, when: number): string {
  const [name, offset] = [zoneName(named), formatOffset(when, named)]
  return name.startsWith(offset) ? name : stripWords.zone(name, offset)
}

/** The clock in use, in words: another with another zone or its summer time, not with every minute. */
const clock = computed(() => {
  const when = plan.value?.spot.when
  return when === undefined ? null : clockName(zone.value, when)
})
const remarked = steady(remark)

export function ZoneChooser() {
  const [open, setOpen] = useState(false)
  const button = useRef<HTMLButtonElement>(null)
  const name = clock.value
  if (name === null) return null
  const said = remarked.value
  const close = (): void => {
    setOpen(false)
    button.current?.focus()
  }
  const leave = (event: FocusEvent): void => {
    if (focusGone(event)) setOpen(false)
  }
  return (
    <div class="zone-chooser" onFocusOut={leave}>
      <button
        ref={button}
        type="button"
        class="zone-button"
        aria-haspopup="dialog"
        aria-expanded={open}
        title={said === null ? stripWords.zoneButton(name) : said.full}
        onClick={() => setOpen(!open)}
      >
        <span class="unseen">{lightWords.zone} </span>
        <span class="zone-name">{name}</span>
        {said === null ? null : (
          <span class="zone-remark">
            <Icon name="warning" /> {said.short}
          </span>
        )}
        <Icon name="unfold" />
      </button>
      {open ? <ZonePanel note={said?.full ?? null} onClose={close} /> : null}
    </div>
  )
}

interface PanelProps {
  readonly note: string | null
  readonly onClose: () => void
}

function ZonePanel({ note, onClose }: PanelProps) {
  const when = plan.value?.spot.when
  const id = useId()
  const [typed, setTyped] = useState('')
  const [chosen, setChosen] = useState(0)
  const input = useRef<HTMLInputElement>(null)
  const list = useRef<HTMLDivElement>(null)
  useEffect(() => input.current?.focus(), [])
  useEffect(() => list.current?.children[chosen]?.scrollIntoView({ block: 'nearest' }), [chosen])
  const { offers, more } = zoneOffers(zonesOnOffer.value, Intl.supportedValuesOf('timeZone'), typed)
  const take = ({ zone: wanted }: ZoneOffer): void => {
    chooseZone(wanted)
    onClose()
  }
  const onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') onClose()
    else if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      const step = event.key === 'ArrowDown' ? 1 : -1
      if (offers.length > 0) setChosen((chosen + step + offers.length) % offers.length)
    } else if (event.key === 'Enter' && !event.isComposing) {
      const offer = offers[chosen]
      if (offer !== undefined) take(offer)
    } else return
    event.preventDefault()
    event.stopPropagation()
  }
  if (when === undefined) return null
  return (
    <div class="zone-panel" role="dialog" aria-label={stripWords.zoneTitle}>
      <h3>{stripWords.zoneTitle}</h3>
      {note === null ? null : <p class="hint">{note}</p>}
      <input
        ref={input}
        type="text"
        role="combobox"
        autocomplete="off"
        spellcheck={false}
        aria-label={stripWords.zoneFind}
        placeholder={stripWords.zoneFind}
        aria-expanded={offers.length > 0}
        aria-controls={id}
        aria-autocomplete="list"
        aria-activedescendant={offers.length > 0 ? `${id}-${chosen}` : undefined}
        value={typed}
        onInput={(event) => {
          setTyped(event.currentTarget.value)
          setChosen(0)
        }}
        onKeyDown={onKey}
      />
      <div ref={list} class="zone-list" role="listbox" id={id} aria-label={stripWords.zoneTitle} tabIndex={-1}>
        {offers.map((offer, index) => (
          <OfferLine
            key={offer.zone ?? ''}
            id={`${id}-${index}`}
            offer={offer}
            when={when}
            selected={index === chosen}
            onTake={take}
          />
        ))}
      </div>
      <p class="hint" role="status">
        {offers.length === 0 ? stripWords.zoneNone(typed) : more > 0 ? stripWords.zoneMore(more) : ''}
      </p>
      <p class="hint">{stripWords.zoneSource}</p>
    </div>
  )
}

interface OfferProps {
  readonly id: string
  readonly offer: ZoneOffer
  readonly when: number
  readonly selected: boolean
  readonly onTake: (offer: ZoneOffer) => void
}

function OfferLine({ id, offer, when, selected, onTake }: OfferProps) {
  const here = zonesHere()
  const own = shoot.value?.zone ?? null
  const [usual] = here ?? []
  const found = usual === undefined ? stripWords.zoneLooking : stripWords.zoneAsFound(zoneName(usual))
  const means = offer.zone ?? usual
  const offset = means === undefined ? '' : formatOffset(when, means)
  // A zone of the open sea has it in its name.
  const saysOffset = means !== undefined && zoneName(means).startsWith(offset)
  const inUse = offer.inUse && here?.includes(offer.zone ?? '') === true
  return (
    <div
      id={id}
      role="option"
      aria-selected={selected}
      aria-current={offer.zone === own}
      tabIndex={-1}
      onMouseDown={(event) => event.preventDefault()}
      onClick={() => onTake(offer)}
    >
      <span>{offer.zone === null ? found : zoneName(offer.zone)}</span>
      <small>
        {[inUse ? stripWords.zoneHere : '', saysOffset ? '' : offset].filter((part) => part !== '').join(', ')}
      </small>
    </div>
  )
}
