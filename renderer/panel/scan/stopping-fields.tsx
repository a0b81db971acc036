/** The fields of a stopping ground: its name and, of a line, how the subject stands on it. */
import { DRAWN_NAME_MOST } from '#core/record/record-limits.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { type StoppingGround, TURNS, type Turn } from '#core/record/stopping-ground.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { Icon } from '#renderer/part/icon.tsx'
import { TextField } from '#renderer/part/text-field.tsx'
import { stoppingWords as say } from '#renderer/words/en-stopping.ts'
import { changeStopping } from '#renderer/state/act/drawn-acts.ts'

interface StoppingProps {
  readonly shoot: Shoot
  readonly ground: StoppingGround
  readonly name: string
}

export function StoppingFields({ shoot, ground, name }: StoppingProps) {
  const change = (label: string, part: Partial<StoppingGround>): void =>
    changeStopping(label, shoot, { ...ground, ...part })
  return (
    <>
      <TextField
        label={say.name}
        value={ground.name}
        most={DRAWN_NAME_MOST}
        placeholder={name}
        onTake={(text) => change(say.edit.rename.stopping, { name: text })}
      />
      {ground.form === 'area' ? null : (
        <div class="drawn-turn">
          <Choice
            label={say.turn}
            value={ground.turn}
            options={TURNS.map((turn) => [turn, say.turns[turn]] as const)}
            onChoose={(turn: Turn) => change(say.edit.change.stopping, { turn })}
          />
          {ground.turn === 'along' ? (
            <button
              type="button"
              class="button button-small"
              aria-label={say.reverseSpoken(name)}
              onClick={() => change(say.edit.reverse, { points: ground.points.toReversed() })}
            >
              <Icon name="swap" /> {say.reverse}
            </button>
          ) : null}
        </div>
      )}
    </>
  )
}
