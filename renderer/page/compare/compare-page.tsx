/** Two to four spots side by side: their frames, their maps, every figure in a row, and from here one is chosen or dropped. */
import { MOST_COMPARED } from '#core/plan/compare.ts'
import { backToBoard } from '#renderer/state/session/navigation.ts'
import { Fragment } from 'preact'
import { planOf } from '#core/plan/plan.ts'
import type { Spot, SpotStatus } from '#core/record/spot.ts'
import { LensDrawing } from '#renderer/view/lens-picture/lens-drawing.tsx'
import { PageFrame } from '#renderer/part/page-frame.tsx'
import type { BaseMap } from '#renderer/view/still-map/base-map.ts'
import { SmallMap } from '#renderer/view/still-map/small-map.tsx'
import { stillCredits } from '#renderer/view/still-map/still-credits.ts'
import { useBaseMap } from '#renderer/view/still-map/use-base-map.ts'
import { assessmentOf, daylightOf, groundLineOf } from '#renderer/state/plan/assessments.ts'
import { changeSpot } from '#renderer/state/library/history.ts'
import { shoot, spots } from '#renderer/state/library/library.ts'
import { spotName } from '#renderer/text/names.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { pickedOnShelf, unpickSpot } from '#renderer/state/session/picked.ts'
import { tolerancesAtLeisure } from '#renderer/state/plan/shelf-tolerances.ts'
import { pinPlaces, pinsFor } from '#renderer/state/plan/pin-heights.ts'
import { dark, settings } from '#renderer/state/library/settings.ts'
import { groundFor } from '#renderer/state/plan/terrain.ts'
import { putOnBoard } from '#renderer/state/act/try-out.ts'
import { zoneFor } from '#renderer/state/plan/zone.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { spotWords } from '#renderer/words/en-spot.ts'
import type { Column, CompareRow } from './compare-row.ts'
import { compareRows } from './compare-rows.ts'
import './compare.css'

const words = sheetWords.compare

/** Pixels of the maps. */
const MAP_SIZE = { width: 300, height: 170 } as const

export function ComparePage() {
  const base = useBaseMap(settings.value, dark.value)
  const open = shoot.value
  const chosen = pickedOnShelf.value
    .map((id) => spots.value.find((spot) => spot.id === id))
    .filter((spot) => spot !== undefined)
    .slice(0, MOST_COMPARED)
  const columns =
    open === null
      ? []
      : chosen.map((spot) => {
          const flat = planOf(open, spot)
          const ground = groundFor(spot.stop.at, flat.landmark)
          const plan = { ...flat, terrain: ground.grid, pins: pinsFor(pinPlaces(open, spot)).pins }
          const zone = zoneFor(open, spot.stop.at)
          return {
            plan,
            assessment: assessmentOf(plan),
            daylight: daylightOf(plan, zone),
            tolerances: tolerancesAtLeisure(plan, zone),
            line: groundLineOf(plan),
          }
        })
  return (
    <PageFrame title={words.title}>
      {columns.length < 2 ? <p class="compare-empty">{words.needTwo}</p> : <Comparison columns={columns} base={base} />}
    </PageFrame>
  )
}

function Comparison({ columns, base }: { readonly columns: readonly Column[]; readonly base: BaseMap | null }) {
  const rows = compareRows(columns, settings.value.units)
  return (
    <div class="compare-desk" tabIndex={0} role="region" aria-label={words.title}>
      <table class="compare">
        <thead>
          <tr>
            <td class="compare-names" />
            {columns.map(({ plan }) => (
              <th scope="col" key={plan.spot.id}>
                <Head spot={plan.spot} />
              </th>
            ))}
          </tr>
          <tr>
            <td />
            {columns.map((column) => (
              <td key={column.plan.spot.id}>
                <Pictures column={column} base={base} />
              </td>
            ))}
          </tr>
        </thead>
        <tbody>
          {(['lens', 'sharp', 'light', 'ground', 'off', 'access'] as const).map((group) => (
            <Fragment key={group}>
              <tr class="compare-group">
                <th scope="rowgroup" colSpan={columns.length + 1}>
                  {words.groups[group]}
                </th>
              </tr>
              {rows
                .filter((row) => row.group === group)
                .map((row) => (
                  <Row key={row.name} row={row} columns={columns} />
                ))}
            </Fragment>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function Row({ row, columns }: { readonly row: CompareRow; readonly columns: readonly Column[] }) {
  return (
    <tr class={row.compared.alike ? 'compare-alike' : 'compare-differs'}>
      <th scope="row">{row.name}</th>
      {row.values.map((value, index) => (
        <td key={columns[index]?.plan.spot.id} class={row.compared.best[index] ? 'compare-best' : ''}>
          {value}
          {row.compared.best[index] ? <small> {words.best}</small> : null}
        </td>
      ))}
    </tr>
  )
}

function Head({ spot }: { readonly spot: Spot }) {
  const name = spotName(spot)
  const mark = (status: SpotStatus, said: string): void => {
    void changeSpot(spotWords.edit.status, { ...spot, status })
    tell('done', said)
  }
  return (
    <div class="compare-head">
      <span class="compare-name">{name}</span>
      <span class="compare-status">{spotWords.statuses[spot.status]}</span>
      <span class="compare-acts">
        <button
          type="button"
          class="button"
          disabled={spot.status === 'chosen'}
          onClick={() => mark('chosen', words.chosen(name))}
        >
          {words.choose}
        </button>
        <button
          type="button"
          class="button"
          disabled={spot.status === 'dropped'}
          onClick={() => mark('dropped', words.dropped(name))}
        >
          {words.drop}
        </button>
        <button
          type="button"
          class="button"
          onClick={() => {
            putOnBoard(spot.id)
            backToBoard()
          }}
        >
          {words.open}
        </button>
        <button
          type="button"
          class="button button-quiet"
          aria-label={words.remove(name)}
          onClick={() => unpickSpot(spot.id)}
        >
          ×
        </button>
      </span>
    </div>
  )
}

function Pictures({ column, base }: { readonly column: Column; readonly base: BaseMap | null }) {
  const { plan, assessment } = column
  const upright = plan.spot.shot.orientation === 'upright'
  return (
    <div class="compare-pictures">
      <div class={upright ? 'compare-frame compare-frame-upright' : 'compare-frame'}>
        {assessment.view === null ? (
          <p>{sheetWords.notFramed}</p>
        ) : (
          <LensDrawing plan={plan} assessment={assessment} width={upright ? 160 : 300} />
        )}
      </div>
      {base === null ? null : (
        <>
          <SmallMap
            plan={plan}
            assessment={assessment}
            {...MAP_SIZE}
            base={base}
            units={settings.value.units}
            label={sheetWords.mapLabel(spotName(plan.spot))}
          />
          <p class="compare-credit">{stillCredits(base.source, plan, MAP_SIZE.width, MAP_SIZE.height).join(' · ')}</p>
        </>
      )}
    </div>
  )
}
