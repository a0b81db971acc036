/** Which crops? The usual proportions to tick, and own ones. */
import { useState } from 'preact/hooks'
import { type Crop, USUAL_CROPS } from '#core/frame/crop.ts'
import { RECORD_LIMITS } from '#core/record/record-limits.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { FigureField } from '#renderer/part/figure-field.tsx'
import { Icon } from '#renderer/part/icon.tsx'
import { Question } from '#renderer/part/question.tsx'
import { changeShoot } from '#renderer/state/library/history.ts'
import { cropName } from '#renderer/text/names.ts'
import { words } from '#renderer/words/en.ts'
import { hasCrop, ownCrops, toggledCrop } from './typed-changes.ts'

const MOST_CROPS = 30

export function CropForm({ shoot }: { shoot: Shoot }) {
  const say = words.shoot
  const { crops } = shoot
  const put = (next: readonly Crop[]): void => void changeShoot(say.edit.crops, { ...shoot, crops: next })
  const has = (crop: Crop): boolean => hasCrop(crops, crop)
  const own = ownCrops(crops)
  return (
    <Question title={say.crops}>
      <fieldset class="checks">
        <legend class="unseen">{say.usualCrops}</legend>
        {USUAL_CROPS.map((crop) => (
          <label key={cropName(crop)}>
            <input type="checkbox" checked={has(crop)} onChange={() => put(toggledCrop(crops, crop))} />
            {cropName(crop)}
          </label>
        ))}
      </fieldset>
      <OwnCrops
        own={own}
        full={crops.length >= MOST_CROPS}
        has={has}
        onPut={(next) => put([...crops.filter((crop) => !own.includes(crop)), ...next])}
      />
    </Question>
  )
}

interface OwnCropsProps {
  readonly own: readonly Crop[]
  readonly full: boolean
  readonly has: (crop: Crop) => boolean
  readonly onPut: (own: readonly Crop[]) => void
}

function OwnCrops({ own, full, has, onPut }: OwnCropsProps) {
  const say = words.shoot
  const [crop, setCrop] = useState<Crop>({ wide: 5, high: 4 })
  return (
    <fieldset class="sub-list">
      <legend>{say.ownCrops}</legend>
      {own.map((each) => (
        <span class="chip" key={cropName(each)}>
          {cropName(each)}
          <button
            type="button"
            class="icon-button"
            aria-label={say.removeCrop(cropName(each))}
            onClick={() => onPut(own.filter((other) => other !== each))}
          >
            <Icon name="close" />
          </button>
        </span>
      ))}
      <div class="field-row">
        <FigureField
          label={say.cropWide}
          value={crop.wide}
          limits={RECORD_LIMITS.cropSide}
          onTake={(wide) => setCrop({ ...crop, wide })}
        />
        <FigureField
          label={say.cropHigh}
          value={crop.high}
          limits={RECORD_LIMITS.cropSide}
          onTake={(high) => setCrop({ ...crop, high })}
        />
        <button
          type="button"
          class="button"
          disabled={full || has(crop)}
          title={has(crop) ? say.cropThere : say.addCrop}
          onClick={() => onPut([...own, crop])}
        >
          <Icon name="add" /> {say.addCrop}
        </button>
      </div>
    </fieldset>
  )
}
