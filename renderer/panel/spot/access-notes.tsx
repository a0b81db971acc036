/** How does one get there? The parking place, the walk from it, the ground underfoot. */
import type { Access, Spot } from '#core/record/spot.ts'
import { placeOnMap } from '#renderer/state/act/place-on-map.ts'
import { CoordinateField } from '#renderer/part/coordinate-field.tsx'
import { FigureField } from '#renderer/part/figure-field.tsx'
import { TextField } from '#renderer/part/text-field.tsx'
import { changeSpot } from '#renderer/state/library/history.ts'
import { words } from '#renderer/words/en.ts'

const WALKS = { least: 0, most: 100_000 } as const
const SURFACE_MOST = 1_000

export function AccessNotes({ spot }: { spot: Spot }) {
  const { edit } = words.spot
  const { access } = spot
  const change = (label: string, part: Partial<Access>): void =>
    void changeSpot(label, { ...spot, access: { ...access, ...part } })
  return (
    <>
      <CoordinateField
        label={words.spot.parking}
        value={access.parking}
        near={spot.stop.at}
        onTake={(parking) => change(edit.parking, { parking })}
        onPlace={() => placeOnMap('parking')}
      />
      {access.parking === null ? (
        <p class="hint">{words.spot.parkingNone}</p>
      ) : (
        <button type="button" class="button button-small" onClick={() => change(edit.parking, { parking: null })}>
          {words.spot.parkingRemove}
        </button>
      )}
      <FigureField
        label={words.spot.walk}
        decimals={0}
        value={access.walkMinutes}
        limits={WALKS}
        hint={words.answers.where.unknownHint}
        onTakeUnknown={(walkMinutes) => change(edit.access, { walkMinutes })}
      />
      <TextField
        label={words.spot.surface}
        value={access.surface}
        most={SURFACE_MOST}
        hint={words.spot.surfaceHint}
        onTake={(surface) => change(edit.access, { surface })}
      />
    </>
  )
}
