/** One line of the list of drawn ground: its sign, name, size and kind; chosen, it shows its fields and its points on the map. */
import type { ComponentChildren } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { boundsHold } from '#core/geo/bounds.ts'
import { type Drawn, type DrawnSort } from '#core/record/drawn-ground.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { fitPlaces, mapBounds } from '#renderer/state/session/map-window.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { chooseDrawn, isChosen } from '#renderer/state/session/drawn-ground.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { stoppingWords as say } from '#renderer/words/en-stopping.ts'
import { removeDrawn } from '#renderer/state/act/drawn-acts.ts'
import { PointActs } from './point-acts.tsx'
import { drawnName, keepOutText, sizeText, stoppingText } from '#renderer/text/drawn-text.ts'

interface RowProps {
  readonly shoot: Shoot
  readonly sort: DrawnSort
  readonly index: number
  readonly drawn: Drawn
  readonly children: ComponentChildren
}

export function DrawnRow({ shoot, sort, index, drawn, children }: RowProps) {
  const { units } = settings.value
  const row = useRef<HTMLLIElement>(null)
  const chosen = isChosen(sort, drawn.id)
  // Chosen on the map, it may lie far down the list.
  useEffect(() => {
    if (chosen) row.current?.scrollIntoView({ block: 'nearest' })
  }, [chosen])
  const name = drawnName(shoot, sort, index)
  const text = 'kind' in drawn ? keepOutText(drawn, units) : stoppingText(drawn)
  return (
    <li ref={row} class={chosen ? 'drawn-row chosen' : 'drawn-row'}>
      <button
        type="button"
        class="drawn-head"
        aria-expanded={chosen}
        onClick={() => {
          chooseDrawn(chosen ? null : { sort, id: drawn.id })
          if (!chosen) bringInSight(drawn)
        }}
      >
        <Sign sort={sort} form={drawn.form} />
        <span class="drawn-name">{name}</span>
        <span class="drawn-size">{sizeText(drawn, units)}</span>
        <span class="drawn-text">{text}</span>
      </button>
      {chosen ? (
        <fieldset class="drawn-fields">
          <legend class="unseen">{name}</legend>
          {children}
          <p class="hint">{say.pointsHint}</p>
          <PointActs shoot={shoot} sort={sort} drawn={drawn} />
          <span class="drawn-acts">
            <button
              type="button"
              class="button button-small"
              aria-label={say.show(name)}
              onClick={() => fitPlaces(drawn.points)}
            >
              <Icon name="map" /> {say.showShort}
            </button>
            <button
              type="button"
              class="button button-small"
              aria-label={say.remove(name)}
              onClick={() => removeDrawn(shoot, sort, drawn, name)}
            >
              <Icon name="remove" /> {say.removeShort}
            </button>
          </span>
        </fieldset>
      ) : null}
    </li>
  )
}

/** The map stays where it looks when some of it can be seen already. */
function bringInSight({ points }: Drawn): void {
  const bounds = mapBounds.peek()
  if (bounds !== null && !points.some((at) => boundsHold(bounds, at))) fitPlaces(points)
}

/** As it is drawn on the map: a ladder or an edge with ticks, a hatched band or field. */
function Sign({ sort, form }: { readonly sort: DrawnSort; readonly form: Drawn['form'] }) {
  const paths = {
    stopping: {
      line: 'M1 5.5h20M1 10.5h20M4 5.5v5M8.5 5.5v5M13 5.5v5M17.5 5.5v5',
      area: 'M2 2h18v12H2zM6 2v3M11 2v3M16 2v3M6 14v-3M11 14v-3M16 14v-3M2 8h3M20 8h-3',
    },
    'keep-out': {
      line: 'M1 5h20M1 11h20M1 10l5-5M5 11l6-6M10 11l6-6M15 11l6-6',
      area: 'M2 2h18v12H2zM2 8l6-6M2 14 14 2M8 14 20 2M14 14l6-6',
    },
  } as const
  return (
    <svg class="drawn-sign" viewBox="0 0 22 16" width="22" height="16" aria-hidden="true">
      <path d={paths[sort][form]} />
    </svg>
  )
}
