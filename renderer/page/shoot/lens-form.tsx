/** What comes along? The lenses in the bag, zoom or fixed, and how far each opens and how near it focuses. */
import { NAME_MOST } from '#core/record/record-limits.ts'
import type { ComponentChildren } from 'preact'
import { useRef } from 'preact/hooks'
import { LENS_LIMITS, type Lens, isPrime } from '#core/optics/lens.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { FigureField, LengthField } from '#renderer/part/figure-field.tsx'
import { Icon } from '#renderer/part/icon.tsx'
import { Question } from '#renderer/part/question.tsx'
import { Segment } from '#renderer/part/segment.tsx'
import { TextField } from '#renderer/part/text-field.tsx'
import { changeShoot, undoOffer } from '#renderer/state/library/history.ts'
import { shoot as openShoot } from '#renderer/state/library/library.ts'
import { lensName, lensRange } from '#renderer/text/names.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { formWords } from '#renderer/words/en-forms.ts'
import { words } from '#renderer/words/en.ts'
import { LensEntry } from './lens-entry.tsx'

const CLOSEST = { least: 0, most: 1_000 } as const
const GRAMS = { least: 0, most: 100_000 } as const
const MOST_LENSES = 100

export function LensForm({ shoot }: { shoot: Shoot }) {
  const say = words.shoot
  const { lenses } = shoot.bag
  const put = (label: string, next: readonly Lens[]): void =>
    void changeShoot(label, { ...shoot, bag: { ...shoot.bag, lenses: next } })
  const remove = (gone: Lens): void => {
    put(
      say.edit.removeLens,
      lenses.filter((lens) => lens.id !== gone.id),
    )
    tell('done', say.removedLens(lensName(gone)), undoOffer())
  }
  return (
    <Question title={say.lenses}>
      <LensEntry
        shootId={shoot.id}
        full={lenses.length < MOST_LENSES ? null : formWords.lens.full(MOST_LENSES)}
        onAdd={addLens}
      />
      {lenses.length === 0 ? <p class="hint">{say.emptyBag}</p> : null}
      {lenses.map((lens) => (
        <LensCard
          key={lens.id}
          lens={lens}
          onChange={(part) => changeLens(lens.id, part)}
          onRemove={() => remove(lens)}
        />
      ))}
    </Question>
  )
}

/** Adds a lens to the bag as it is by now. */
function addLens(lens: Lens): void {
  const now = openShoot.peek()
  if (now === null) return
  void changeShoot(words.shoot.edit.addLens, { ...now, bag: { ...now.bag, lenses: [...now.bag.lenses, lens] } })
}

/** Changes a lens as it is by now: entries that waited for one another are taken in one go. */
function changeLens(id: string, part: Partial<Lens>): void {
  const now = openShoot.peek()
  if (now === null) return
  const lenses = now.bag.lenses.map((lens) => (lens.id === id ? { ...lens, ...part } : lens))
  void changeShoot(words.shoot.edit.lens, { ...now, bag: { ...now.bag, lenses } })
}

type Change = (part: Partial<Lens>) => void
type Ends = Pick<Lens, 'focalMax' | 'widestAtMax'>

/** The long end of a lens that was a prime so far: twice the focal length, as a beginning to be changed. */
function firstEnds({ focalMin, widestAtMax }: Lens): Partial<Lens> {
  const twice = Math.min(LENS_LIMITS.focal.most, focalMin * 2)
  return twice > focalMin ? { focalMax: twice, widestAtMax } : { focalMin: focalMin / 2 }
}

interface LensCardProps {
  readonly lens: Lens
  readonly onChange: Change
  readonly onRemove: () => void
}

function LensCard({ lens, onChange, onRemove }: LensCardProps) {
  const say = words.shoot
  const prime = isPrime(lens)
  // Called a prime by mistake and zoom again, it has its long end back.
  const endsRef = useRef<Ends | null>(null)
  const setKind = (kind: 'zoom' | 'prime'): void => {
    const { focalMin, focalMax, widestAtMin, widestAtMax } = lens
    if (kind === 'prime') {
      endsRef.current = { focalMax, widestAtMax }
      return onChange({ focalMax: focalMin, widestAtMax: widestAtMin })
    }
    const before = endsRef.current
    const fits = before !== null && before.focalMax > focalMin && before.widestAtMax <= lens.smallest
    onChange(fits ? before : firstEnds(lens))
  }
  return (
    <fieldset class="card">
      <legend>{lensRange(lens)}</legend>
      <div class="field-row">
        <TextField
          label={say.lensName}
          value={lens.name}
          most={NAME_MOST}
          placeholder={lensRange(lens)}
          onTake={(name) => onChange({ name })}
        />
        <Segment
          label={say.lensKind}
          showLabel
          value={prime ? 'prime' : 'zoom'}
          options={[
            ['zoom', say.zoom],
            ['prime', say.prime],
          ]}
          onChoose={setKind}
        />
      </div>
      <div class="field-row">{prime ? primeFields(lens, onChange) : zoomFields(lens, onChange)}</div>
      <LastFields lens={lens} onChange={onChange} />
      <button type="button" class="button button-small" onClick={onRemove}>
        <Icon name="remove" /> {say.removeLens(lensName(lens).slice(0, 100))}
      </button>
    </fieldset>
  )
}

const F_SIGN = /^\s*f\s*\/?/iu

function opening(label: string, value: number, lens: Lens, take: (value: number) => void): ComponentChildren {
  return (
    <FigureField
      key={label}
      label={label}
      decimals={1}
      sign="f/"
      strip={F_SIGN}
      value={value}
      limits={LENS_LIMITS.fNumber}
      refuse={(mark) => (mark > lens.smallest ? words.shoot.field.widestAboveSmallest : null)}
      judged={{ by: String(lens.smallest), field: `${lens.id} ${label}` }}
      onTake={take}
    />
  )
}

function primeFields(lens: Lens, onChange: Change): ComponentChildren {
  const say = words.shoot
  return [
    <FigureField
      key="focal"
      label={say.focalLength}
      unit="mm"
      decimals={1}
      value={lens.focalMin}
      limits={LENS_LIMITS.focal}
      onTake={(focal) => onChange({ focalMin: focal, focalMax: focal })}
    />,
    opening(say.widest, lens.widestAtMin, lens, (widest) => onChange({ widestAtMin: widest, widestAtMax: widest })),
  ]
}

/** Each end with its own opening: where the row breaks, the two stay together. */
function zoomFields(lens: Lens, onChange: Change): ComponentChildren {
  const say = words.shoot
  return [
    <div class="field-pair" key="short">
      <FigureField
        label={say.focalMin}
        unit="mm"
        decimals={1}
        value={lens.focalMin}
        limits={LENS_LIMITS.focal}
        refuse={(focal) => (focal < lens.focalMax ? null : say.field.shortAboveLong)}
        judged={{ by: String(lens.focalMax), field: `${lens.id} short` }}
        onTake={(focalMin) => onChange({ focalMin })}
      />
      {opening(say.widestAtMin, lens.widestAtMin, lens, (widestAtMin) => onChange({ widestAtMin }))}
    </div>,
    <div class="field-pair" key="long">
      <FigureField
        label={say.focalMax}
        unit="mm"
        decimals={1}
        value={lens.focalMax}
        limits={LENS_LIMITS.focal}
        refuse={(focal) => (focal > lens.focalMin ? null : say.field.longBelowShort)}
        judged={{ by: String(lens.focalMin), field: `${lens.id} long` }}
        onTake={(focalMax) => onChange({ focalMax })}
      />
      {opening(say.widestAtMax, lens.widestAtMax, lens, (widestAtMax) => onChange({ widestAtMax }))}
    </div>,
  ]
}

function LastFields({ lens, onChange }: { lens: Lens; onChange: Change }) {
  const say = words.shoot
  const widest = Math.max(lens.widestAtMin, lens.widestAtMax)
  return (
    <div class="field-row">
      <FigureField
        label={say.smallest}
        decimals={1}
        sign="f/"
        strip={F_SIGN}
        value={lens.smallest}
        limits={LENS_LIMITS.fNumber}
        refuse={(mark) => (mark < widest ? say.field.smallestBelowWidest : null)}
        judged={{ by: String(widest), field: `${lens.id} smallest` }}
        onTake={(smallest) => onChange({ smallest })}
      />
      <LengthField
        label={say.closestFocus}
        value={lens.closestFocus}
        limits={CLOSEST}
        onTake={(closestFocus) => onChange({ closestFocus })}
      />
      <FigureField
        label={say.weight}
        unit="g"
        decimals={0}
        value={lens.weight}
        limits={GRAMS}
        hint={say.unknownHint}
        onTakeUnknown={(weight) => onChange({ weight })}
      />
    </div>
  )
}
